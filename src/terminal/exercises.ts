import {
  ALL_FORMS,
  ALL_HANDS,
  ALL_KEYS,
  ALL_MINOR_SCALES,
  MOST_OCTAVES,
  buildExercise,
  displayName,
  displayPitchClass,
  keyFacts,
} from '../engine/index.ts';
import type { Crossing, ExerciseChoice, ExpectedNote, ExpectedStep } from '../engine/index.ts';
import type { Command } from './commands.ts';
import type { Console } from './console.ts';
import { toPlain, wrapText } from './drawing/index.ts';
import { EXIT } from './problems.ts';
import type { ExitCode } from './problems.ts';

type ExercisesCommand = Extract<Command, { kind: 'exercises' }>;

/** What can be practised: everything; one key; or one exercise, note by note with its fingers. */
export function exercises({ what, json }: ExercisesCommand, console: Console): ExitCode {
  const { data, lines } = describe(what, console.paper.columns);
  if (json) console.out(JSON.stringify(data));
  else for (const line of lines) console.out(console.paper.unicode ? line : toPlain(line));
  return EXIT.analysed;
}

interface Description {
  readonly data: unknown;
  readonly lines: readonly string[];
}

function describe(what: ExercisesCommand['what'], columns: number): Description {
  if (what === 'all') return everything(columns);
  return 'form' in what ? oneExercise(what) : oneKey(what.key);
}

/** What each form is, in the trade's words. */
const FORMS = {
  arpeggio: `the tonic triad note by note, up and down, 1 to ${MOST_OCTAVES} octaves`,
  triads: 'the tonic triad and its inversions, solid, up and down an octave',
  'broken-triads': 'the same chords broken, three notes each',
  progression: 'I-IV-I-V7-I (i-iv-i-V7-i) in close position',
  scale: `the scale up and down, 1 to ${MOST_OCTAVES} octaves (minor: see --minor-scale)`,
} as const;

function everything(columns: number): Description {
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
      ...ALL_FORMS.map((form) => `  ${form.padEnd(15)}${FORMS[form]}`),
      '--hands',
      `  ${ALL_HANDS.join(', ')}`,
      '--minor-scale',
      `  ${ALL_MINOR_SCALES.join(', ')}`,
      '',
      'Note by note, with fingers:',
      '  evenfall exercises --key "D major" --form arpeggio --hands right --octaves 2',
    ],
  };
}

function oneKey(key: string): Description {
  const facts = keyFacts(key);
  const names = (pitchClasses: readonly string[]): string => pitchClasses.map(displayPitchClass).join(' ');
  const signature =
    facts.accidental === 'none' ? 'no sharps or flats' : `${facts.signature.length} ${facts.accidental}`;
  return {
    data: facts,
    lines: [
      displayName(facts.name),
      row('Signature', facts.signature.length === 0 ? signature : `${signature}: ${names(facts.signature)}`),
      ...(facts.minorScales === undefined
        ? [row('Scale', names(facts.scale))]
        : ALL_MINOR_SCALES.map((form) => row(`Scale, ${form}`, names(facts.minorScales![form])))),
      row('Tonic triad', names(facts.triad)),
      ...facts.primaryChords.map(({ numeral, notes }) => row(numeral, names(notes))),
    ],
  };
}

function row(label: string, text: string): string {
  return `  ${label.padEnd(18)}${text}`;
}

function oneExercise(choice: ExerciseChoice): Description {
  const exercise = buildExercise(choice);
  const hands = choice.hands === 'together' ? (['right', 'left'] as const) : [choice.hands];
  return {
    data: exercise,
    lines: [
      exercise.title,
      '',
      `${'step'.padStart(4)}  ${'beat'.padEnd(7)}${hands.map((hand) => `${hand} hand`.padEnd(26)).join('')}`.trimEnd(),
      ...exercise.steps.map((step) => {
        const parts = hands.map((hand) => handAt(step, hand).padEnd(26)).join('');
        const beat = String(Number(step.beat.toFixed(2)));
        return `${String(step.step + 1).padStart(4)}  ${beat.padEnd(7)}${parts}${step.label ?? ''}`.trimEnd();
      }),
    ],
  };
}

const CROSSINGS: Readonly<Record<Crossing['kind'], string>> = {
  'thumb-under': 'thumb under',
  'over-thumb': 'over the thumb',
};

/** "F♯4:1 thumb under": names with fingers, and the crossing into the step. */
function handAt({ notes, crossings }: ExpectedStep, hand: ExpectedNote['hand']): string {
  const own = notes.filter((note) => note.hand === hand);
  const crossing = crossings.find((other) => other.hand === hand);
  const keys = own.map(({ name, finger }) => `${displayName(name)}:${finger}`).join(' ');
  return crossing === undefined ? keys : `${keys} ${CROSSINGS[crossing.kind]}`;
}
