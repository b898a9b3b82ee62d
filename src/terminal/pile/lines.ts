import type { Language } from '../../engine/index.ts';
import { toPlain, wrapText } from '../drawing/index.ts';
import type { Paper } from '../drawing/index.ts';
import { MESSAGES } from '../language/index.ts';
import { leftOut } from './left-out.ts';
import type { Pile, PileAttempt } from './types.ts';
import { changedWords, exerciseOf, fastestWords, placeOf, tempoOf, verdictOf } from './words.ts';

/** A pile → the lines that a teacher reads in a terminal, student by student. Pure but for the time zone. */
export function drawPile(pile: Pile, paper: Paper, language: Language = 'en'): readonly string[] {
  const quiet = (text: string): string => (paper.colour ? `\x1b[2m${text}\x1b[0m` : text);
  const strong = (text: string): string => (paper.colour ? `\x1b[1m${text}\x1b[0m` : text);
  const indented = (text: string, indent: number): readonly string[] =>
    wrapText(text, paper.columns - indent).map((line) => ' '.repeat(indent) + line);
  const attemptLines = (attempt: PileAttempt): readonly string[] => {
    const tempo = tempoOf(attempt);
    const head = [
      exerciseOf(attempt, language),
      ...(tempo === null ? [] : [MESSAGES[language].beatsAMinute(tempo.toFixed(0))]),
    ].join(' · ');
    const changed = changedWords(attempt, language);
    return [
      ...indented(head, 2),
      ...indented(verdictOf(attempt, language), 4),
      ...(changed === '' ? [] : indented(changed, 4)),
      ...indented(placeOf(attempt, language), 4).map(quiet),
    ];
  };
  const students = pile.students.flatMap(({ name, attempts }, index) => [
    ...(index === 0 ? [] : ['']),
    strong(name === '' ? MESSAGES[language].desk.noName : name),
    ...attempts.flatMap(attemptLines),
    ...fastestWords(attempts, language).flatMap((line) => indented(line, 2)),
  ]);
  const without = leftOut(pile, language).flatMap(({ file, reason }) => indented(`${file}: ${reason}`, 2));
  const apart = without.length === 0 ? [] : ['', strong(MESSAGES[language].desk.notListed), ...without];
  return [...students, ...apart, '', ...indented(summary(pile, language), 0)].map((line) =>
    paper.unicode ? line : toPlain(line),
  );
}

/** How many of what, in one sentence. */
export function summary({ students, silent, unread }: Pile, language: Language): string {
  const t = MESSAGES[language].desk;
  const attempts = students.flatMap((student) => student.attempts);
  const files = new Set(attempts.map(({ recording }) => recording.name)).size + silent.length + unread.length;
  const recognised = attempts.filter(({ found }) => found.report !== null).length;
  const named = students.filter(({ name }) => name !== '').length;
  const other = attempts.length - recognised;
  const parts = [
    t.sum(files, recognised, named),
    ...(other === 0 ? [] : [t.notRecognised(other)]),
    ...(silent.length === 0 ? [] : [t.withoutPlaying(silent.length)]),
    ...(unread.length === 0 ? [] : [t.unread(unread.length)]),
  ];
  return `${parts.join('; ')}.`;
}
