import type { Language } from '../../engine/index.ts';
import { toPlain, wrapText } from '../drawing/index.ts';
import type { Paper } from '../drawing/index.ts';
import type { Pile, PileAttempt } from './types.ts';
import { changedWords, exerciseOf, NO_NAME, placeOf, tempoOf, verdictOf } from './words.ts';

/** A pile → the lines that a teacher reads in a terminal, student by student. Pure but for the time zone. */
export function drawPile(pile: Pile, paper: Paper, language: Language = 'en'): readonly string[] {
  const quiet = (text: string): string => (paper.colour ? `\x1b[2m${text}\x1b[0m` : text);
  const strong = (text: string): string => (paper.colour ? `\x1b[1m${text}\x1b[0m` : text);
  const indented = (text: string, indent: number): readonly string[] =>
    wrapText(text, paper.columns - indent).map((line) => ' '.repeat(indent) + line);
  const attemptLines = (attempt: PileAttempt): readonly string[] => {
    const tempo = tempoOf(attempt);
    const head = [
      exerciseOf(attempt),
      ...(tempo === null ? [] : [`${tempo.toFixed(0)} beats a minute`]),
    ].join(' · ');
    const changed = changedWords(attempt);
    return [
      ...indented(head, 2),
      ...indented(verdictOf(attempt, language), 4),
      ...(changed === '' ? [] : indented(changed, 4)),
      ...indented(placeOf(attempt), 4).map(quiet),
    ];
  };
  const students = pile.students.flatMap(({ name, attempts }, index) => [
    ...(index === 0 ? [] : ['']),
    strong(name === '' ? NO_NAME : name),
    ...attempts.flatMap(attemptLines),
  ]);
  return [...students, '', ...indented(summary(pile), 0)].map((line) =>
    paper.unicode ? line : toPlain(line),
  );
}

/** How many of what, in one sentence. */
export function summary({ students, silent, unread }: Pile): string {
  const attempts = students.flatMap((student) => student.attempts);
  const files = new Set(attempts.map(({ recording }) => recording.name)).size + silent.length + unread.length;
  const recognised = attempts.filter(({ found }) => found.report !== null).length;
  const named = students.filter(({ name }) => name !== '').length;
  const other = attempts.length - recognised;
  const parts = [
    `${many(files, 'recording')}, ${many(recognised, 'attempt')}${named === 0 ? '' : ` of ${many(named, 'student')}`}`,
    ...(other === 0 ? [] : [`${many(other, 'stretch', 'stretches')} of playing not recognised`]),
    ...(silent.length === 0 ? [] : [`${silent.length} without playing`]),
    ...(unread.length === 0 ? [] : [`${unread.length} that could not be read`]),
  ];
  return `${parts.join('; ')}.`;
}

function many(count: number, one: string, more = `${one}s`): string {
  return `${count} ${count === 1 ? one : more}`;
}
