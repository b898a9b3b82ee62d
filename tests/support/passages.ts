import { keyFacts } from '../../src/engine/exercise/index.ts';
import type { ExerciseChoice, Hand, OwnPassage, WrittenNote } from '../../src/engine/exercise/index.ts';
import { createRandom } from './random.ts';
import type { Random } from './random.ts';

/** A bar of the upper hand: lengths in quarter notes, a negative one a rest. */
type Rhythm = readonly number[];

const third = 1 / 3;
const METERS = [
  {
    count: 4,
    unit: 4,
    beats: 4,
    upper: [
      [0.5, 0.5, 0.5, 0.5, 0.5, 0.5, 0.5, 0.5],
      [1.5, 0.5, 1, 1],
      [0.75, 0.25, 0.75, 0.25, 1, 1],
      [0.5, 1, 0.5, 1, 1],
      [0.25, 0.25, 0.25, 0.25, 0.5, 0.5, 1, -1],
      [third, third, third, 1, third, third, third, 1],
    ],
  },
  {
    count: 3,
    unit: 4,
    beats: 3,
    upper: [
      [1, 1, 1],
      [0.5, 0.5, 0.5, 0.5, 1],
      [1.5, 0.5, 1],
      [1, 0.5, 0.5, -0.5, 0.5],
      [0.75, 0.25, 1, 1],
    ],
  },
  {
    count: 2,
    unit: 4,
    beats: 2,
    upper: [
      [0.5, 0.25, 0.25, 0.5, 0.5],
      [0.25, 0.25, 0.25, 0.25, 0.5, 0.5],
      [1, 0.5, 0.5],
      [0.75, 0.25, 1],
    ],
  },
  {
    count: 6,
    unit: 8,
    beats: 3,
    upper: [
      [0.5, 0.5, 0.5, 0.5, 0.5, 0.5],
      [1, 0.5, 1, 0.5],
      [1.5, 0.5, 0.5, 0.5],
      [0.75, 0.25, 0.5, 1, 0.5],
    ],
  },
] as const satisfies readonly {
  readonly count: number;
  readonly unit: 4 | 8;
  readonly beats: number;
  readonly upper: readonly Rhythm[];
}[];
const KEYS = [
  'C major',
  'G major',
  'D minor',
  'F major',
  'A minor',
  'Bb major',
  'E minor',
  'A major',
  'Eb major',
];
const HANDS = ['right', 'together', 'left'] as const;
/** degrees of the chords that go by, from 0 */
const ROOTS = [0, 3, 4, 0, 5, 3, 4, 0];

/**
 * Passages of our own invention, always the same: 4 to 16 bars, one hand or both, in four metres; a line that steps and leaps with
 * dotted notes, triplets, syncopations and rests over chords, broken chords or octaves.
 */
export function inventedPassages(count: number): readonly ExerciseChoice[] {
  return Array.from({ length: count }, (_, index) => inventedPassage(index));
}

export function inventedPassage(index: number): ExerciseChoice {
  const random = createRandom(7100 + index);
  const meter = METERS[index % METERS.length]!;
  const hands = HANDS[index % HANDS.length]!;
  const key = KEYS[index % KEYS.length]!;
  const bars = 4 + ((5 * index) % 13);
  const notes = Array.from({ length: bars }, (_, bar) => {
    const last = bar === bars - 1;
    const upper =
      hands === 'left'
        ? []
        : lineIn(
            random,
            key,
            bar * meter.beats,
            last ? [meter.beats] : random.pick<Rhythm>(meter.upper),
            bar,
          );
    const lower =
      hands === 'right'
        ? []
        : hands === 'left'
          ? lineIn(
              random,
              key,
              bar * meter.beats,
              last ? [meter.beats] : random.pick<Rhythm>(meter.upper),
              bar,
              -12,
            ).map((note) => ({ ...note, hand: 'left' as const }))
          : accompaniment(index, key, bar, meter.beats, last);
    return [...upper, ...lower];
  }).flat();
  const passage: OwnPassage = {
    title: `Passage ${index + 1}`,
    bpm: 60 + ((7 * index) % 41),
    bars: Array.from({ length: bars }, () => ({ beats: meter.beats, count: meter.count, unit: meter.unit })),
    notes,
  };
  return { key, form: 'passage', hands, octaves: 1, passage };
}

/** One voice of a bar; the first note of every other bar is a third or a sixth. */
function lineIn(
  random: Random,
  key: string,
  from: number,
  rhythm: Rhythm,
  bar: number,
  down = 0,
): readonly WrittenNote[] {
  const hand: Hand = 'right';
  let beat = from;
  let degree = ROOTS[bar % ROOTS.length]! + random.integer(3) - 1 + (down < 0 ? -7 : 0);
  return rhythm.flatMap((length, at) => {
    const begins = rounded(beat);
    beat += Math.abs(length);
    if (length < 0) return [];
    degree += random.pick([-2, -1, -1, 1, 1, 2]);
    degree = Math.max(-7 + (down < 0 ? -4 : 4), Math.min(degree, down < 0 ? 2 : 12));
    const beats = rounded(length);
    const below =
      at === 0 && bar % 2 === 1 ? [{ name: nameAt(key, degree - 2), hand, beat: begins, beats }] : [];
    return [...below, { name: nameAt(key, degree), hand, beat: begins, beats }];
  });
}

function accompaniment(
  index: number,
  key: string,
  bar: number,
  beats: number,
  last: boolean,
): readonly WrittenNote[] {
  const root = ROOTS[bar % ROOTS.length]! - 14 + (ROOTS[bar % ROOTS.length]! > 3 ? -7 : 0) + 7;
  const from = bar * beats;
  const hand: Hand = 'left';
  const at = (degree: number, beat: number, length: number): WrittenNote => ({
    name: nameAt(key, degree - 7),
    hand,
    beat: rounded(from + beat),
    beats: length,
  });
  if (last) return [at(root, 0, beats), at(root + 4, 0, beats)];
  switch (Math.floor(index / HANDS.length) % 3) {
    case 0:
      return [0, 2, 4].map((degree) => at(root + degree, 0, beats));
    case 1:
      return Array.from({ length: beats * 2 }, (_, half) =>
        at(root + [0, 4, 2, 4][half % 4]!, half / 2, 0.5),
      );
    default:
      return Array.from({ length: beats }, (_, beat) => at(root + (beat % 2 === 0 ? 0 : 4), beat, 1));
  }
}

/** A degree of the key (0: the tonic about middle C) → its name with octave. */
function nameAt(key: string, degree: number): string {
  const { scale } = keyFacts(key);
  const name = scale[((degree % 7) + 7) % 7]!;
  const letters = 'CDEFGAB';
  const steps = letters.indexOf(scale[0]![0]!) + degree;
  return `${name}${4 + Math.floor(steps / 7)}`;
}

const rounded = (beats: number): number => Math.round(beats * 1e4) / 1e4;
