import { buildExercise, displayName, exerciseTitle, tellWords } from '../../engine/index.ts';
import type { Exercise, Language, Report } from '../../engine/index.ts';
import type { Assigned, Correction, RemarkPlace, Review, SentAttempt } from '../../io/review/index.ts';
import { STRINGS, localeOf } from '../language/index.ts';
import { toPlain } from './plain.ts';
import { wrapText } from './wrap.ts';

interface Width {
  readonly columns: number;
  readonly unicode: boolean;
}

/** Text → its lines, wrapped and set in by so many columns. */
type Indented = (text: string, indent: number) => string[];

const VERDICTS: Readonly<Record<Correction['verdict'], string>> = {
  correct: 'it was right',
  wrong: 'it was wrong',
  missed: 'it was missed',
  'not-played': 'it was not played',
  mistaken: 'that is mistaken',
};

/** Review → the lines that are read in a terminal. Pure; all text in it was made plain when it was read. */
export function drawReview(review: Review, { columns, unicode }: Width, language: Language = 'en'): string[] {
  const { kind, student, teacher, madeMs, words, attempts, assignment } = review;
  const whose = kind === 'review' ? ['A review', 'for'] : ['Attempts', 'of'];
  const head = [
    student === '' ? whose[0]! : `${whose.join(' ')} ${student}`,
    ...(teacher === '' ? [] : [`${kind === 'review' ? 'from' : 'to'} ${teacher}`]),
    `${dayOf(madeMs)}`,
  ];
  // What a mark begins goes on under its words.
  const indented: Indented = (text, indent) =>
    text.split('\n').flatMap((line) => {
      const hang = /^(?:-|\d+\.) /.exec(line)?.[0].length ?? 0;
      return wrapText(line, columns - indent - hang).map((one, at) =>
        (' '.repeat(indent + (at === 0 ? 0 : hang)) + one).trimEnd(),
      );
    });
  return [
    ...indented(head.join(', '), 0),
    ...(words === '' ? [] : ['', ...indented(words, 0)]),
    ...attempts.flatMap((attempt, at) => ['', ...drawAttempt(attempt, at + 1, indented, language)]),
    ...(assignment.length === 0 ? [] : ['', 'To practise']),
    ...assignment.flatMap((asked, at) => [
      ...indented(
        `${at + 1}. ${exerciseTitle(buildExercise(asked.exercise).choice)}: ${askedWords(asked)}`,
        2,
      ),
      ...(asked.note === '' ? [] : indented(asked.note, 5)),
    ]),
  ].map((line) => (unicode ? line : toPlain(line)));
}

function drawAttempt(attempt: SentAttempt, number: number, indented: Indented, language: Language): string[] {
  const words = tellWords(attempt.report.words, localeOf(language));
  const { report, name, whenMs, sound, recognisedAs, remarks, corrections } = attempt;
  const exercise = exerciseOf(report);
  const facts = [
    ...(name === '' ? [] : [name]),
    ...(whenMs === null ? [] : [`played ${dayOf(whenMs)}`]),
    sound === null ? 'without its sound' : 'with its sound',
  ];
  return [
    ...indented(`${number}. ${exercise.title}`, 0),
    ...indented(facts.join(', '), 3),
    ...indented(words.verdict, 3),
    ...(recognisedAs === null
      ? []
      : indented(`Taken for: ${exerciseTitle(recognisedAs)}; the teacher chose the exercise.`, 3)),
    ...corrections.flatMap(({ place, verdict, why }) =>
      indented(
        `The teacher says of ${placeWords(place, exercise)}: ${VERDICTS[verdict]}. ${why}`.trimEnd(),
        3,
      ),
    ),
    ...remarks.flatMap(({ place, text, voice }) =>
      indented(
        `- ${placeWords(place, exercise)}: ${[text, voice === null ? '' : '(spoken)'].filter((part) => part !== '').join(' ')}`,
        3,
      ),
    ),
    ...indented(`${STRINGS[language].next}: ${words.nextStep}`, 3),
  ];
}

function exerciseOf({ exercise: told }: Report): Exercise {
  const { key, form, hands, octaves, minorScale } = told;
  return buildExercise({ key, form, hands, octaves, ...(minorScale !== undefined && { minorScale }) });
}

/** "the attempt", "note 5 (C6)", "notes 7 to 10 (A♭6 to A♭5)". */
function placeWords(place: RemarkPlace, { steps }: Exercise): string {
  const nameOf = (step: number, midi?: number): string => {
    const notes = steps[step]?.notes ?? [];
    const own = notes.find((note) => midi !== undefined && (note.midi - midi) % 12 === 0) ?? notes[0];
    return displayName(own?.name ?? '');
  };
  switch (place.kind) {
    case 'attempt':
      return 'the attempt';
    case 'stretch':
      return `notes ${place.fromStep + 1} to ${place.toStep + 1} (${nameOf(place.fromStep)} to ${nameOf(place.toStep)})`;
    case 'note':
      return place.step === null
        ? `an extra note${place.timeSec === null ? '' : ` at ${place.timeSec.toFixed(1)} s`}`
        : `note ${place.step + 1} (${nameOf(place.step, place.midi)})`;
  }
}

function askedWords({ targetBpm, inARow, evennessPercent }: Assigned): string {
  const parts = [
    ...(targetBpm === null ? [] : [`at ${targetBpm} beats a minute`]),
    ...(inARow === null ? [] : [inARow === 1 ? 'once' : `${inARow} times in a row`]),
    ...(evennessPercent === null ? [] : [`evenness ${evennessPercent} % at most`]),
  ];
  return parts.length === 0 ? 'as usual' : parts.join(', ');
}

function dayOf(whenMs: number): string {
  return new Intl.DateTimeFormat('en-GB', { day: 'numeric', month: 'long', year: 'numeric' }).format(whenMs);
}
