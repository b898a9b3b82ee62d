import type { ExerciseChoice, Exercise, ExpectedStep } from '../../../../src/engine/exercise/index.ts';
import { allChoices, buildExercise } from '../../../../src/engine/exercise/index.ts';
import type { Report, ReportOptions } from '../../../../src/engine/report/index.ts';
import type { Change, Playing } from './scenes.ts';
import { tell } from './scenes.ts';

/** Something that goes wrong (or well) in any exercise: what is changed in it, or null where the exercise has no place for it. */
export interface Cause {
  readonly name: string;
  readonly playing: (exercise: Exercise) => Way | null;
  readonly options?: Partial<ReportOptions>;
}
type Way = Omit<Playing, 'choice' | 'bpm'>;

const at =
  (steps: readonly number[], change: Change) =>
  (step: number): Change =>
    steps.includes(step) ? change : {};

const isChords = ({ choice: { form } }: Exercise): boolean => form === 'triads' || form === 'progression';
const last = ({ steps }: Exercise): number => steps.length - 1;
const turnOf = ({ steps }: Exercise): number | null => steps.find(({ turn }) => turn)?.step ?? null;
const keyOf = (exercise: Exercise, step: number, note = 0): number => exercise.steps[step]!.notes[note]!.midi;
const crossingsOf = ({ steps }: Exercise, way: 'up' | 'down' | null): readonly number[] =>
  steps
    .filter(({ crossings }) => crossings.some(({ direction }) => way === null || direction === way))
    .map(({ step }) => step);

/** The note lies off a key of the exercise's own, so that it is a wrong key and nothing else. */
const wrongAt =
  (exercise: Exercise, steps: readonly number[], offset: number) =>
  (step: number): Change =>
    steps.includes(step) ? { wrong: { midi: keyOf(exercise, step) + offset } } : {};

const SCATTER = [0, 80, -90, 120, -60, 30, 90, -110, 40, 70, -50, -90, 60];
const scatter =
  (share: number) =>
  (step: number): Change => ({ lateMs: share * SCATTER[step % SCATTER.length]! });

const some = (exercise: Exercise, share: number): number => Math.round(share * last(exercise));
const onlyTogether = ({ choice: { hands } }: Exercise, playing: Way): Way | null =>
  hands === 'together' ? playing : null;
const onlyChords = (exercise: Exercise, playing: Way): Way | null => (isChords(exercise) ? playing : null);
const ifAny = (steps: readonly number[], change: Change) =>
  steps.length === 0 ? null : { change: at(steps, change) };

const alike = (exercise: Exercise, like: ExpectedStep): readonly number[] =>
  exercise.steps
    .filter((one) => one.notes[0]!.name.replace(/\d/, '') === like.notes[0]!.name.replace(/\d/, ''))
    .map(({ step }) => step);

export const CAUSES: readonly Cause[] = [
  { name: 'nothing', playing: () => ({}) },
  ...[0.1, 0.3, 0.5, 0.7, 0.95].flatMap((share): readonly Cause[] => [
    { name: `one wrong at ${share}`, playing: (one) => ({ change: wrongAt(one, [some(one, share)], 1) }) },
    {
      name: `one missed at ${share}`,
      playing: (one) => ({ change: at([some(one, share)], { missed: {} }) }),
    },
    {
      name: `inner missed at ${share}`,
      playing: (one) => onlyChords(one, { change: at([some(one, share)], { missed: { note: 1 } }) }),
    },
    { name: `stop at ${share}`, playing: (one) => ({ change: at([some(one, share)], { lateMs: 6000 }) }) },
    { name: `broken off at ${share}`, playing: (one) => ({ until: some(one, share) }) },
    {
      name: `caught at ${share}`,
      playing: (one) => ({
        change: at([some(one, share)], { caught: keyOf(one, some(one, share)) - 1 }),
      }),
    },
    { name: `twice at ${share}`, playing: (one) => ({ change: at([some(one, share)], { twice: true }) }) },
    {
      name: `late note at ${share}`,
      playing: (one) => ({ change: at([some(one, share)], { lateMs: 260 }) }),
    },
    {
      name: `change hesitates at ${share}`,
      playing: (one) => onlyChords(one, { change: at([some(one, share)], { lateMs: 1500 }) }),
    },
    {
      name: `landed off at ${share}`,
      playing: (one) => {
        const step = crossingsOf(one, null)[Math.floor(share * crossingsOf(one, null).length)];
        return step === undefined ? null : { change: wrongAt(one, [step, step + 1], 1) };
      },
    },
  ]),
  {
    name: 'several wrong',
    playing: (one) => ({
      change: (step) => (step % 5 === 2 ? { wrong: { midi: keyOf(one, step) + 1 } } : {}),
    }),
  },
  {
    name: 'each of a note wrong',
    playing: (one) => ({ change: wrongAt(one, alike(one, one.steps[2]!), -1) }),
  },
  {
    name: 'each leading note natural',
    playing: (one) => {
      const steps = one.steps.filter(({ notes }) => notes.some(({ name }) => /^[A-G]#/.test(name)));
      return steps.length === 0 || !one.choice.key.endsWith('minor')
        ? null
        : {
            change: (step) => {
              const note = one.steps[step]!.notes.findIndex(({ name }) => /^[A-G]#/.test(name));
              return note < 0 ? {} : { wrong: { note, midi: keyOf(one, step, note) - 1 } };
            },
          };
    },
  },
  { name: 'crossings late up', playing: (one) => ifAny(crossingsOf(one, 'up'), { lateMs: 120 }) },
  { name: 'crossings late down', playing: (one) => ifAny(crossingsOf(one, 'down'), { lateMs: 120 }) },
  { name: 'crossings late both ways', playing: (one) => ifAny(crossingsOf(one, null), { lateMs: 120 }) },
  {
    name: 'first crossing late',
    playing: (one) => ifAny(crossingsOf(one, null).slice(0, 1), { lateMs: 150 }),
  },
  { name: 'last crossing late', playing: (one) => ifAny(crossingsOf(one, null).slice(-1), { lateMs: 150 }) },
  {
    name: 'late at the turn',
    playing: (one) => ifAny(turnOf(one) === null ? [] : [turnOf(one)! + 1], { lateMs: 400 }),
  },
  { name: 'limping', playing: () => ({ change: (step) => ({ lateMs: step % 2 === 0 ? -55 : 55 }) }) },
  { name: 'uneven', playing: () => ({ change: scatter(1) }) },
  { name: 'very uneven', playing: () => ({ change: scatter(2) }) },
  { name: 'nearly even', playing: () => ({ change: scatter(0.25) }) },
  { name: 'slower', playing: () => ({ change: (step) => ({ lateMs: 9 * step }) }) },
  { name: 'faster', playing: () => ({ change: (step) => ({ lateMs: -4 * step }) }) },
  {
    name: 'left first',
    playing: (one) => onlyTogether(one, { handMs: (_step, hand) => (hand === 'left' ? -50 : 0) }),
  },
  {
    name: 'right first',
    playing: (one) => onlyTogether(one, { handMs: (_step, hand) => (hand === 'left' ? 50 : 0) }),
  },
  {
    name: 'hands apart',
    playing: (one) =>
      onlyTogether(one, {
        handMs: (step, hand) => ((hand === 'left') === (step % 2 === 0) ? -30 : 30),
      }),
  },
  ...[0, 1, 2].map((note): Cause => ({
    name: `chords spread, note ${note} last`,
    playing: (one) => onlyChords(one, { spreadMs: (index) => (index === note ? 70 : 0) }),
  })),
  {
    name: 'inner notes soft',
    playing: (one) => onlyChords(one, { noteDb: (note) => (note === 1 || note === 4 ? -15 : 0) }),
  },
  {
    name: 'slows into the end',
    playing: (one) => ({
      change: (step) => ({ lateMs: step > 0.65 * last(one) ? 40 * (step - 0.65 * last(one)) : 0 }),
    }),
  },
  { name: 'broad last note', playing: (one) => ({ change: at([last(one)], { lateMs: 300 }) }) },
  { name: 'in a rhythm', playing: () => ({ change: (step) => ({ lateMs: step % 2 === 0 ? -125 : 125 }) }) },
  { name: 'sound lost', playing: () => ({}), options: { soundLostSec: 0.5 } },
  { name: 'slower than aimed at', playing: () => ({}), options: { targetBpm: 160 } },
  { name: 'nobody said which hand', playing: () => ({ handKnown: false }) },
];

/** What the program says after a playing. */
export interface Told {
  readonly cause: string;
  readonly choice: ExerciseChoice;
  readonly bpm: number;
  readonly report: Report;
}

/** Every cause in these exercises at these tempi, where it can be. */
export function* everyNextStep(
  choices: readonly ExerciseChoice[],
  bpms: readonly number[],
  options: Partial<ReportOptions> = {},
): Generator<Told> {
  for (const choice of choices) {
    const exercise = buildExercise(choice);
    for (const bpm of bpms)
      for (const { name, playing, options: own } of CAUSES) {
        const one = playing(exercise);
        if (one !== null)
          yield { cause: name, choice, bpm, report: tell({ choice, bpm, ...one }, { ...options, ...own }) };
      }
  }
}

/** Every form, hand and number of octaves (to two) once, each in another key. */
export function oneOfEach(): readonly ExerciseChoice[] {
  const alike = new Map<string, ExerciseChoice[]>();
  for (const choice of allChoices()) {
    const { form, hands, octaves } = choice;
    if (octaves <= 2)
      alike.set(`${form} ${hands} ${octaves}`, [...(alike.get(`${form} ${hands} ${octaves}`) ?? []), choice]);
  }
  return [...alike.values()].map((choices, at) => choices[(5 * at) % choices.length]!);
}
