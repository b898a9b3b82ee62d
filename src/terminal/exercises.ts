import {
  ALL_FORMS,
  ALL_HANDS,
  ALL_KEYS,
  ALL_MINOR_SCALES,
  MOST_OCTAVES,
  buildExercise,
  displayName,
  exerciseTitle,
  keyFacts,
  keyName,
  nameWithOctave,
  noteName,
  octaveCounts,
  principlesFor,
  PRINCIPLE,
} from '../engine/index.ts';
import type { ExerciseChoice, ExpectedNote, ExpectedStep, Hand, Language, Locale } from '../engine/index.ts';
import type { Command } from './commands.ts';
import type { Console } from './console.ts';
import { toPlain, wrapText } from './drawing/index.ts';
import { MESSAGES, localeOf } from './language/index.ts';
import type { Messages } from './language/index.ts';
import { EXIT } from './problems.ts';
import type { ExitCode } from './problems.ts';

type Words = Messages['exercises'];
type ExercisesCommand = Extract<Command, { kind: 'exercises' }>;

/** What can be practised: everything; one key; or one exercise, note by note with its fingers. */
export function exercises({ what, language, json }: ExercisesCommand, console: Console): ExitCode {
  const { data, lines } = describe(what, console.paper.columns, language);
  if (json) console.out(JSON.stringify(data));
  else for (const line of lines) console.out(console.paper.unicode ? line : toPlain(line));
  return EXIT.analysed;
}

interface Description {
  readonly data: unknown;
  readonly lines: readonly string[];
}

function describe(what: ExercisesCommand['what'], columns: number, language: Language): Description {
  const t = MESSAGES[language].exercises;
  const locale = localeOf(language);
  if (what === 'all') return everything(columns, t);
  return 'form' in what ? oneExercise(what, t, locale) : oneKey(what.key, t, locale);
}

function everything(columns: number, t: Words): Description {
  const indented = (text: string): string[] => wrapText(text, columns - 2).map((line) => `  ${line}`);
  return {
    data: {
      keys: ALL_KEYS,
      forms: ALL_FORMS,
      hands: ALL_HANDS,
      mostOctaves: MOST_OCTAVES,
      minorScales: ALL_MINOR_SCALES,
    },
    lines: [
      '--key',
      ...indented(ALL_KEYS.map(displayName).join(', ')),
      '--form',
      ...ALL_FORMS.map((form) => `  ${form.padEnd(27)}${t.forms[form](octaveCounts(form).length)}`),
      '--hands',
      `  ${ALL_HANDS.join(', ')}`,
      '--minor-scale',
      `  ${ALL_MINOR_SCALES.join(', ')}`,
      '--fingering',
      ...indented(PRINCIPLE.options.join(', ')),
      '',
      t.noteByNote,
      '  evenfall exercises --key "D major" --form arpeggio --hands right --octaves 2',
    ],
  };
}

function oneKey(key: string, t: Words, locale: Locale): Description {
  const facts = keyFacts(key);
  const names = (pitchClasses: readonly string[]): string =>
    pitchClasses.map((name) => noteName(name, locale.naming)).join(' ');
  const signature = t.accidentals[facts.accidental](facts.signature.length);
  return {
    data: facts,
    lines: [
      keyName(facts.name, locale),
      row(t.signature, facts.signature.length === 0 ? signature : `${signature}: ${names(facts.signature)}`),
      ...(facts.minorScales === undefined
        ? [row(t.scale, names(facts.scale))]
        : ALL_MINOR_SCALES.map((form) => row(t.minorScale(form), names(facts.minorScales![form])))),
      row(t.triad, names(facts.triad)),
      ...facts.primaryChords.map(({ numeral, notes }) => row(numeral, names(notes))),
    ],
  };
}

function row(label: string, text: string): string {
  return `  ${label.padEnd(18)}${text}`;
}

function oneExercise(choice: ExerciseChoice, t: Words, locale: Locale): Description {
  const exercise = buildExercise(choice);
  const hands = choice.hands === 'together' ? (['right', 'left'] as const) : [choice.hands];
  return {
    data: exercise,
    lines: [
      exerciseTitle(exercise.choice, locale),
      '',
      `${t.step.padStart(4)}  ${t.beat.padEnd(7)}${hands.map((hand) => t.hand[hand].padEnd(26)).join('')}`.trimEnd(),
      ...exercise.steps.map((step) => {
        const parts = hands.map((hand) => handAt(step, hand, t, locale).padEnd(26)).join('');
        const beat = String(Number(step.beat.toFixed(2)));
        return `${String(step.step + 1).padStart(4)}  ${beat.padEnd(7)}${parts}${step.label ?? ''}`.trimEnd();
      }),
      ...otherFingers(exercise.choice, hands, t),
    ],
  };
}

/** By which principles else these hands can play it, each with its source. */
function otherFingers(choice: ExerciseChoice, hands: readonly Hand[], t: Words): readonly string[] {
  const rows = hands.flatMap((hand) =>
    principlesFor(choice, hand).map(
      ({ principle, source }) =>
        `  --fingering ${principle.padEnd(16)} ${t.hand[hand]}, ${source === null ? t.noSource : t.tables(source)}`,
    ),
  );
  return rows.length === 0 ? [] : ['', t.otherFingers, ...rows];
}

/** "F♯4:1 thumb under": names with fingers, and the crossing into the step. */
function handAt(
  { notes, crossings }: ExpectedStep,
  hand: ExpectedNote['hand'],
  t: Words,
  { naming }: Locale,
): string {
  const own = notes.filter((note) => note.hand === hand);
  const crossing = crossings.find((other) => other.hand === hand);
  const keys = own
    .map(({ name, finger }) => `${nameWithOctave(name, naming)}${finger === null ? '' : `:${finger}`}`)
    .join(' ');
  return crossing === undefined ? keys : `${keys} ${t.crossings[crossing.kind]}`;
}
