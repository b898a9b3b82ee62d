export { alignAt } from './align.ts';
export { crossesFingers } from './substitutes.ts';
import type { Exercise, ExpectedNote, Hand, Hands } from '../../exercise/index.ts';
import type { Heard } from '../../listen/index.ts';
import { alignAt } from './align.ts';
import { AS_WRITTEN } from './notes.ts';
import type { Shift } from './notes.ts';
import type { Alignment } from '../types.ts';
import { BOUNDS } from '../costs/index.ts';

/**
 * The exercise against the notes at the octave where they lie, each hand in its own, and, where the piano's tuning makes it likely, a
 * semitone off as the listener read them.
 *
 * Listening without knowing the exercise can place a piano's tuning only within half a semitone either way: a piano 70
 * cents flat reads a semitone low and 30 cents sharp. So if the exercise fits clearly better with every key moved by a
 * semitone, and the tuning then comes out as pianos are tuned (90 cents flat to 40 sharp; neglected pianos are 30–90
 * flat: common practice, no source), it was the tuning. Where it does not come out so, another key was played. A chromatic scale
 * fits nearly as well a semitone off: where the moved one fits well, it is enough that it fits better.
 */
export function bestShift(heard: Heard, exercise: Exercise): Alignment {
  const asRead = bestOctaves(heard, exercise, 0);
  if (asRead.fit >= BOUNDS.nothingUnexplained) return asRead;
  const moved = [1, -1]
    .filter((semitones) => likelyTuning(heard.tuning.cents - 100 * semitones))
    .map((semitones) => bestOctaves(heard, exercise, semitones))
    .find(({ fit }) => fit > asRead.fit && fit >= Math.min(asRead.fit + BOUNDS.semitoneFit, BOUNDS.fitsWell));
  return moved ?? asRead;
}

function likelyTuning(cents: number): boolean {
  return cents >= BOUNDS.tuningAtLeastCents && cents <= BOUNDS.tuningAtMostCents;
}

/** The best of the places that the keys struck make likely; as written unless another explains clearly more. */
function bestOctaves(heard: Heard, exercise: Exercise, semitones: number): Alignment {
  const [first, ...others] = likelyShifts(heard, exercise, semitones);
  let best = alignAt(heard, exercise, first!);
  for (const shift of others) {
    const alignment = alignAt(heard, exercise, shift);
    if (alignment.fit > best.fit + BOUNDS.octaveFit) best = alignment;
  }
  return best;
}

/** The same exercise with both hands an octave higher than an alignment has them: what answered the upper hand may answer the lower. */
export function octaveHigher(heard: Heard, { exercise, matched, semitoneShift }: Alignment): Alignment {
  const lowest = (hand: Hand, notes: readonly ExpectedNote[]): number =>
    Math.min(...notes.flatMap((note) => (note.hand === hand ? [note.midi] : [])));
  const written = exercise.steps.flatMap(({ notes }) => notes);
  const aligned = matched.map(({ expected }) => expected);
  const above = (hand: Hand): number => (lowest(hand, aligned) - lowest(hand, written)) / 12 + 1;
  return alignAt(heard, exercise, { left: above('left'), right: above('right'), semitones: semitoneShift });
}

/** Other places than the written one that are aligned at most. */
const MOST_TRIED = 2;

/**
 * As written, then the places that have clearly more notes in common with what was struck, the most first. It knows no order in time:
 * it counts keys, and since each stroke answers one note only, a hand that lies elsewhere is missed in any number of octaves. Of places
 * that sound alike, as those of one hand where the other is silent do, hands an octave apart come first, then the nearest.
 */
function likelyShifts(heard: Heard, exercise: Exercise, semitones: number): readonly Shift[] {
  const struck = new Int16Array(KEYS);
  for (const { midi } of heard.notes) struck[midi + semitones]! += 1;
  const written = { left: keysOf(exercise, 'left'), right: keysOf(exercise, 'right') };
  const size = exercise.steps.reduce((sum, { notes }) => sum + notes.length, 0);
  const asWritten = { ...AS_WRITTEN, semitones };
  const least = inCommon(struck, written, asWritten) + BOUNDS.octaveShare * size;
  const others = placesToTry(exercise.choice.hands)
    .map((octaves) => ({ ...octaves, semitones }))
    .map((shift) => ({ shift, shared: inCommon(struck, written, shift) }))
    .filter(({ shared }) => shared > least)
    .sort((a, b) => b.shared - a.shared || oddness(a.shift) - oddness(b.shift))
    .slice(0, MOST_TRIED);
  return [asWritten, ...others.map(({ shift }) => shift)];
}

/** MIDI numbers, and as many beyond as an exercise may be moved. */
const KEYS = 256;

/** How often each key is written for a hand. */
function keysOf({ steps }: Exercise, hand: 'left' | 'right'): Int16Array {
  const keys = new Int16Array(KEYS);
  for (const { notes } of steps) for (const note of notes) if (note.hand === hand) keys[note.midi]! += 1;
  return keys;
}

/** Σ min(struck, written) over keys: how many notes could answer, were there no time. */
function inCommon(
  struck: Int16Array,
  written: Readonly<Record<'left' | 'right', Int16Array>>,
  { left, right }: Shift,
): number {
  let shared = 0;
  struck.forEach((count, key) => {
    if (count === 0) return;
    shared += Math.min(count, (written.left[key - 12 * left] ?? 0) + (written.right[key - 12 * right] ?? 0));
  });
  return shared;
}

/** Octaves at which hands are looked for; the left never above the right, which would sound like hands in their places. */
function placesToTry(hands: Hands): readonly Omit<Shift, 'semitones'>[] {
  const octaves = Array.from({ length: 2 * BOUNDS.octaves + 1 }, (_, index) => index - BOUNDS.octaves);
  if (hands !== 'together') return octaves.map((by) => ({ left: by, right: by }));
  return octaves.flatMap((left) =>
    octaves.filter((right) => left <= right + 1).map((right) => ({ left, right })),
  );
}

/** Of places that sound alike the least odd is meant. */
function oddness({ left, right }: Shift): number {
  return 10 * Math.abs(left - right) + Math.abs(left) + Math.abs(right);
}
