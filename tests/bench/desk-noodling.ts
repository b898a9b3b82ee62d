import { buildExercise } from '../../src/engine/exercise/index.ts';
import type { ExerciseChoice } from '../../src/engine/exercise/index.ts';
import type { Random } from '../support/random.ts';
import type { Keystroke, Performance } from '../support/render.ts';

/** Playing that is none of the exercises. */
export const NOODLING = [
  'keys at random',
  'five fingers',
  'another figure',
  'seventh arpeggio',
  'chromatic scale',
  'tune with chords',
  'loop of chords',
  'hunting for a note',
  'wrong starts',
] as const;
/** A scale with one note of the signature forgotten both ways is told as just that, so church modes are counted apart. */
export const ALL_NOODLING = [...NOODLING, 'church mode'] as const;
export type Noodling = (typeof ALL_NOODLING)[number];

/** Keys struck together, and for how many of the usual intervals. */
type Strike = readonly [keys: readonly number[], lasts?: number];

const MODES = {
  dorian: [0, 2, 3, 5, 7, 9, 10, 12],
  phrygian: [0, 1, 3, 5, 7, 8, 10, 12],
  lydian: [0, 2, 4, 6, 7, 9, 11, 12],
  mixolydian: [0, 2, 4, 5, 7, 9, 10, 12],
};
const FIVE = [
  [0, 2, 4, 5, 7],
  [0, 2, 3, 5, 7],
];
const SEVENTHS = [
  [0, 4, 7, 10],
  [0, 4, 7, 11],
  [0, 3, 7, 10],
  [0, 3, 6, 9],
  [0, 4, 8],
];
/** Up and down patterns within an octave, of no exercise of the set: broken accompaniments and turns. */
const FIGURES = [
  [0, 7, 4, 7, 0, 7, 4, 7, -1, 7, 5, 7, 0, 7, 4, 7],
  [0, 4, 2, 5, 4, 7, 5, 9, 7, 11, 9, 12, 11, 14, 12],
  [0, 4, 5, 7, 9, 7, 5, 4, 2, 5, 7, 9, 11, 9, 7, 5],
  [0, 12, 7, 12, 4, 12, 7, 12, 0, 12, 7, 12, 5, 12, 9, 12],
];
/** Chords that songs go round in, by the roots of the key's triads: two or three times, each over its root. */
const LOOPS = [
  [0, 4, 5, 3],
  [0, 5, 3, 4],
  [5, 3, 0, 4],
  [0, 3, 0, 4],
  [1, 4, 0, 0],
  [0, 3, 4, 3],
];
const MAJOR = [0, 2, 4, 5, 7, 9, 11];

/** Kind and chance → a few seconds of it. `near`: the exercise of the attempt it stands beside, whose wrong starts they are. */
export function noodle(kind: Noodling, near: ExerciseChoice, random: Random): Performance {
  const tonic = 45 + random.integer(30);
  const intervalSec = random.uniform(0.15, 0.55);
  return performed(strikesOf(kind, near, tonic, random), intervalSec, random);
}

function strikesOf(kind: Noodling, near: ExerciseChoice, tonic: number, random: Random): readonly Strike[] {
  const line = (keys: readonly number[]): Strike[] => keys.map((key) => [[tonic + key]]);
  const upAndDown = (keys: readonly number[]): number[] => [...keys, ...[...keys].reverse().slice(1)];
  switch (kind) {
    case 'keys at random':
      return Array.from({ length: 6 + random.integer(20) }, () => [
        [tonic - 12 + random.integer(25)],
        random.uniform(0.5, 2),
      ]);
    case 'five fingers':
      return line(upAndDown(random.pick(FIVE)));
    case 'another figure':
      return line(random.pick(FIGURES));
    case 'seventh arpeggio': {
      const chord = random.pick(SEVENTHS);
      const octaves = 1 + random.integer(2);
      const up = Array.from({ length: octaves }, (_, octave) => chord.map((key) => key + 12 * octave)).flat();
      return line(upAndDown([...up, 12 * octaves]));
    }
    case 'chromatic scale':
      return line(upAndDown(Array.from({ length: 8 + random.integer(8) }, (_, key) => key)));
    case 'tune with chords':
      return tune(tonic, random);
    case 'loop of chords':
      return loop(tonic, random);
    case 'hunting for a note': {
      const key = random.integer(12);
      return line(Array.from({ length: 3 + random.integer(5) }, () => key + random.integer(5) - 2));
    }
    case 'wrong starts':
      return wrongStarts(near, random);
    case 'church mode':
      return line(upAndDown(random.pick(Object.values(MODES))));
  }
}

/** Four bars of a tune over three chords, melody notes of one to three to the beat. */
function tune(tonic: number, random: Random): readonly Strike[] {
  const chords = [
    [0, 4, 7],
    [0, 5, 9],
    [-1, 5, 7],
    [0, 4, 7],
  ];
  let degree = random.integer(7);
  return chords.flatMap((chord) =>
    Array.from({ length: 3 + random.integer(3) }, (_, at): Strike => {
      degree = Math.min(Math.max(degree + random.integer(5) - 2, 0), 11);
      const note = tonic + 12 + 12 * Math.floor(degree / 7) + MAJOR[degree % 7]!;
      const under = at === 0 ? chord.map((key) => tonic + key) : [];
      return [[...under, note], random.pick([1, 1, 1, 2])];
    }),
  );
}

/** Triads in close position about the tonic, over their roots two octaves below. */
function loop(tonic: number, random: Random): readonly Strike[] {
  const key = (degree: number): number => MAJOR[degree % 7]! + 12 * Math.floor(degree / 7);
  const near = (semitones: number): number => tonic + ((semitones + 4) % 12) - 4;
  const round = random.pick(LOOPS).map((root): Strike => {
    const chord = [0, 2, 4].map((above) => near(key(root + above))).sort((a, b) => a - b);
    return [[near(key(root)) - 24, ...chord]];
  });
  return Array.from({ length: 2 + random.integer(2) }, () => round).flat();
}

/** The first notes of the exercise, two or three times, each time given up after a fifth of it at most. */
function wrongStarts(near: ExerciseChoice, random: Random): readonly Strike[] {
  const { steps } = buildExercise(near);
  const longest = Math.max(2, Math.floor(steps.length / 5));
  return Array.from({ length: 2 + random.integer(2) }, () => {
    const count = Math.min(2 + random.integer(longest - 1), 7);
    return steps.slice(0, count).map(({ notes }, at): Strike => {
      return [notes.map(({ midi }) => midi), at === count - 1 ? random.uniform(3, 6) : 1];
    });
  }).flat();
}

function performed(strikes: readonly Strike[], intervalSec: number, random: Random): Performance {
  let clockSec = 0.3;
  const strokes: Keystroke[] = [];
  for (const [keys, lasts = 1] of strikes) {
    for (const midi of keys) {
      const timeSec = clockSec + random.uniform(0, 0.02);
      const releaseSec = timeSec + Math.min(1.2, 0.95 * lasts * intervalSec);
      const velocity = random.uniform(50, 80);
      strokes.push({ timeSec, midi, velocity, releaseSec, hand: 'right', step: null, verdict: 'extra' });
    }
    clockSec += lasts * intervalSec;
  }
  strokes.sort((a, b) => a.timeSec - b.timeSec);
  return { strokes, missed: [], durationSec: strokes.at(-1)!.timeSec + 2, pedal: 'none' };
}
