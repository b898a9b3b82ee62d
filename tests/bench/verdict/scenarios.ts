import type { ExerciseChoice, Form, Hands } from '../../../src/engine/exercise/index.ts';
import type { HomeKnobs, StudentKnobs } from '../../support/render.ts';
import { NO_MISTAKES } from '../../support/render.ts';
import type { Random } from '../../support/random.ts';
import type { Kind } from './kinds.ts';
import type { Shape } from './shaping.ts';
import {
  accents,
  crescendo,
  hesitates,
  limps,
  longLast,
  partlyDetached,
  ritardando,
  rubato,
  stopsAt,
  swell,
  wandering,
  weakInner,
} from './shaping.ts';

/** How a simulated player differs from one who plays evenly and as written. */
export interface Playing {
  readonly student?: Partial<StudentKnobs>;
  readonly shape?: Shape;
  readonly home?: Partial<HomeKnobs>;
  /** the exercise really played, where it is not the one chosen */
  readonly plays?: Partial<ExerciseChoice>;
  /** times the tempo */
  readonly faster?: number;
}

/** A player with an intention, a known fault or none, and what may be said of it. */
export interface Scenario {
  readonly name: string;
  readonly forms: readonly Form[];
  readonly hands: readonly Hands[];
  /** minor keys only */
  readonly minor?: true;
  /** notes a second, from … to */
  readonly speed?: readonly [number, number];
  /** so many attempts one after the other, of which the last is judged; left out: one */
  readonly series?: number;
  /** told are the usual time between steps, ms, and which attempt of a series it is */
  readonly playing: (random: Random, ioiMs: number, attempt: number) => Playing;
  /** what must be named before all else; null: nothing is wrong, and nothing may be said to be */
  readonly gravest: Kind | null;
  /** what may be said besides, since it is true as well */
  readonly also: readonly Kind[];
  /** codes that may not be said even where their kind may */
  readonly never?: readonly string[];
  /** how many attempts of each round */
  readonly weight: number;
}

const LINES: readonly Form[] = ['scale', 'arpeggio', 'broken-triads'];
const CROSSED: readonly Form[] = ['scale', 'arpeggio'];
const CHORDS: readonly Form[] = ['triads', 'progression'];
const ONE: readonly Hands[] = ['left', 'right'];
const BOTH: readonly Hands[] = ['together'];
const ANY: readonly Hands[] = ['left', 'right', 'together'];

const nothing = { gravest: null, also: [] } as const;
const mistakes = (counts: Partial<typeof NO_MISTAKES>): Partial<StudentKnobs> => ({
  mistakes: { ...NO_MISTAKES, ...counts },
});

/** Players of whom nothing is to be said. */
const INNOCENT: readonly Scenario[] = [
  { name: 'one hand, as written', forms: LINES, hands: ONE, weight: 9, ...nothing, playing: () => ({}) },
  { name: 'both hands, as written', forms: LINES, hands: BOTH, weight: 9, ...nothing, playing: () => ({}) },
  { name: 'chords of one hand', forms: CHORDS, hands: ONE, weight: 4, ...nothing, playing: () => ({}) },
  { name: 'chords of both hands', forms: CHORDS, hands: BOTH, weight: 4, ...nothing, playing: () => ({}) },
  {
    name: 'ritardando at the end',
    forms: LINES,
    hands: ANY,
    weight: 3,
    ...nothing,
    playing: (random) => ({ shape: ritardando(random.uniform(1.4, 2.2)) }),
  },
  {
    name: 'long last note',
    forms: LINES,
    hands: ANY,
    weight: 3,
    ...nothing,
    playing: (random) => ({ shape: longLast(random.uniform(1.5, 2.5)) }),
  },
  {
    name: 'swell to the top',
    forms: CROSSED,
    hands: ANY,
    weight: 3,
    ...nothing,
    playing: (random) => ({ shape: swell(random.uniform(4, 9)) }),
  },
  {
    name: 'louder, or softer, to the end',
    forms: CROSSED,
    hands: ANY,
    weight: 2,
    ...nothing,
    playing: (random) => ({ shape: crescendo(random.pick([-1, 1]) * random.uniform(5, 10)) }),
  },
  {
    name: 'accents in groups',
    forms: LINES,
    hands: ANY,
    weight: 3,
    ...nothing,
    playing: (random) => ({ shape: accents(random.pick([3, 4]), random.uniform(3, 6)) }),
  },
  {
    name: 'lasting rubato',
    forms: CROSSED,
    hands: ANY,
    weight: 2,
    ...nothing,
    playing: (random) => ({ shape: rubato(random.uniform(0.08, 0.15), random.uniform(12, 20)) }),
  },
  {
    name: 'legato, overlapping',
    forms: CROSSED,
    hands: ANY,
    weight: 4,
    ...nothing,
    playing: (random) => ({ student: { overlapMs: random.uniform(10, 70) } }),
  },
  {
    name: 'detached throughout',
    forms: CROSSED,
    hands: ANY,
    weight: 2,
    gravest: null,
    also: ['touch'],
    playing: (random, ioiMs) => ({ student: { overlapMs: -ioiMs * random.uniform(0.3, 0.5) } }),
  },
  {
    name: 'partly detached',
    forms: CROSSED,
    hands: ANY,
    weight: 2,
    gravest: null,
    also: ['touch'],
    playing: (random, ioiMs) => ({ shape: partlyDetached(0.4, ioiMs * random.uniform(0.3, 0.5)) }),
  },
  {
    name: 'pedal held',
    forms: CROSSED,
    hands: ONE,
    weight: 2,
    ...nothing,
    playing: () => ({ student: { pedal: 'held' } }),
  },
  {
    name: 'softer upper hand',
    forms: LINES,
    hands: BOTH,
    weight: 3,
    ...nothing,
    playing: (random) => ({ student: { leftHandDb: random.uniform(3, 7) } }),
  },
  {
    name: 'fast and as even as the trained',
    forms: CROSSED,
    hands: ONE,
    speed: [8, 12],
    weight: 3,
    ...nothing,
    playing: () => ({ student: { jitterMs: 4.2 } }),
  },
  {
    name: 'a piano of uneven keys',
    forms: LINES,
    hands: ONE,
    weight: 4,
    ...nothing,
    playing: () => ({ home: { keyLevelSdDb: 3 } }),
  },
];

/** Players with one fault, or several. */
const AT_FAULT: readonly Scenario[] = [
  {
    name: 'one wrong note',
    forms: LINES,
    hands: ANY,
    weight: 4,
    gravest: 'notes',
    also: [],
    never: ['signature', 'landed-off'],
    playing: () => ({ student: mistakes({ wrong: 1 }) }),
  },
  {
    name: 'two or three wrong notes',
    forms: LINES,
    hands: ANY,
    weight: 3,
    gravest: 'notes',
    also: [],
    playing: (random) => ({ student: mistakes({ wrong: 2 + random.integer(2) }) }),
  },
  {
    name: 'one note left out',
    forms: LINES,
    hands: ANY,
    weight: 3,
    gravest: 'notes',
    also: ['evenness'],
    playing: () => ({ student: mistakes({ missed: 1 }) }),
  },
  {
    name: 'a neighbour caught',
    forms: LINES,
    hands: ANY,
    weight: 2,
    gravest: 'notes',
    also: [],
    playing: () => ({ student: mistakes({ slips: 1 }) }),
  },
  {
    name: 'a key struck twice',
    forms: CROSSED,
    hands: ONE,
    weight: 2,
    gravest: 'notes',
    also: [],
    playing: () => ({ student: mistakes({ repeats: 1 }) }),
  },
  {
    name: 'wrong, left out and caught',
    forms: LINES,
    hands: ANY,
    weight: 3,
    gravest: 'notes',
    also: ['evenness'],
    playing: () => ({ student: mistakes({ wrong: 1, missed: 1, slips: 1 }) }),
  },
  {
    name: 'wrong notes and a late thumb',
    forms: CROSSED,
    hands: ONE,
    weight: 2,
    gravest: 'notes',
    also: ['crossing', 'evenness'],
    playing: (random, ioiMs) => ({
      student: { ...mistakes({ wrong: 2 }), lateCrossing: { ms: ioiMs * random.uniform(0.4, 0.7) } },
    }),
  },
  {
    name: 'thumb late going one way',
    forms: CROSSED,
    hands: ONE,
    weight: 3,
    gravest: 'crossing',
    also: ['evenness'],
    playing: (random, ioiMs) => ({
      student: {
        lateCrossing: {
          ms: ioiMs * random.uniform(0.4, 0.7),
          direction: random.pick(['up', 'down'] as const),
        },
      },
    }),
  },
  {
    name: 'crossings late both ways',
    forms: CROSSED,
    hands: ANY,
    weight: 2,
    gravest: 'crossing',
    also: ['evenness'],
    playing: (random, ioiMs) => ({ student: { lateCrossing: { ms: ioiMs * random.uniform(0.4, 0.7) } } }),
  },
  {
    name: 'a weak inner note',
    forms: CHORDS,
    hands: ONE,
    weight: 2,
    gravest: 'inner',
    also: [],
    playing: (random) => ({ shape: weakInner(random.uniform(14, 18)) }),
  },
  {
    name: 'one hand leads',
    forms: LINES,
    hands: BOTH,
    weight: 2,
    gravest: 'hands',
    also: [],
    playing: (random) => ({
      student: { handsApartMs: { mean: random.pick([-1, 1]) * random.uniform(50, 75), sd: 10 } },
    }),
  },
  {
    name: 'hands apart, now one now the other',
    forms: LINES,
    hands: BOTH,
    speed: [1.5, 3],
    weight: 2,
    gravest: 'hands',
    also: ['evenness'],
    playing: (random) => ({ student: { handsApartMs: { mean: 0, sd: random.uniform(55, 70) } } }),
  },
  {
    name: 'drift',
    forms: LINES,
    hands: ANY,
    weight: 3,
    gravest: 'tempo',
    also: ['evenness'],
    playing: (random) => ({ student: { driftPercent: random.pick([-1, 1]) * random.uniform(16, 25) } }),
  },
  {
    name: 'a stop',
    forms: LINES,
    hands: ANY,
    speed: [2.5, 6],
    weight: 3,
    gravest: 'course',
    also: ['evenness'],
    playing: (random) => ({ shape: stopsAt(random.uniform(3.5, 5)) }),
  },
  {
    name: 'back and again',
    forms: CROSSED,
    hands: ONE,
    weight: 2,
    gravest: 'course',
    also: ['notes'],
    playing: () => ({ student: mistakes({ restarts: 1 }) }),
  },
  {
    name: 'broken off',
    forms: CROSSED,
    hands: ANY,
    weight: 2,
    gravest: 'course',
    also: [],
    playing: (random) => ({ student: { stopAfter: random.uniform(0.5, 0.8) } }),
  },
  {
    name: 'uneven throughout',
    forms: LINES,
    hands: ONE,
    weight: 3,
    gravest: 'evenness',
    also: [],
    playing: (random) => ({ shape: wandering(random.uniform(0.17, 0.25)) }),
  },
  {
    name: 'limping',
    forms: CROSSED,
    hands: ONE,
    weight: 2,
    gravest: 'evenness',
    also: [],
    playing: (random) => ({ shape: limps(random.uniform(0.15, 0.25)) }),
  },
  {
    name: 'a change that hesitates',
    forms: CHORDS,
    hands: ANY,
    weight: 2,
    gravest: 'change',
    also: ['evenness'],
    playing: (random) => ({ shape: hesitates(random.uniform(2, 2.8)) }),
  },
  {
    name: 'chords not struck as one',
    forms: CHORDS,
    hands: ONE,
    weight: 2,
    gravest: 'spread',
    also: [],
    playing: (random) => ({ student: { chordSpreadMs: random.uniform(65, 110) } }),
  },
  {
    name: 'melodic for harmonic minor',
    forms: ['scale'],
    hands: ONE,
    minor: true,
    weight: 2,
    gravest: 'exercise',
    also: [],
    playing: () => ({ plays: { minorScale: 'melodic' } }),
  },
];

export const SCENARIOS: readonly Scenario[] = [...INNOCENT, ...AT_FAULT];
