import type { Exercise } from '../exercise/index.ts';
import type { Heard } from '../listen/index.ts';
import { alignAt } from './align.ts';
import { withHandMoved } from './hands.ts';
import type { HandShift, Shift } from './struck.ts';
import type { Alignment } from './types.ts';
import { BOUNDS } from './weights.ts';

/**
 * The exercise against the notes at the octave where they lie and, where the piano's tuning makes it likely, a
 * semitone off as the listener read them.
 *
 * Listening without knowing the exercise can place a piano's tuning only within half a semitone either way: a piano 70
 * cents flat reads a semitone low and 30 cents sharp. So if the exercise fits clearly better with every key moved by a
 * semitone, and the tuning then comes out as pianos are tuned (90 cents flat to 40 sharp; neglected pianos are 30–90
 * flat: measures.md, common practice), it was the tuning. Where it does not come out so, another key was played.
 */
export function bestShift(heard: Heard, exercise: Exercise): Alignment {
  const asRead = bestOctave(heard, exercise, 0);
  const moved = [1, -1]
    .filter((semitones) => likelyTuning(heard.tuning.cents - 100 * semitones))
    .map((semitones) => bestOctave(heard, exercise, semitones))
    .find((alignment) => alignment.fit >= asRead.fit + BOUNDS.semitoneFit);
  return moved ?? asRead;
}

function likelyTuning(cents: number): boolean {
  return cents >= BOUNDS.tuningAtLeastCents && cents <= BOUNDS.tuningAtMostCents;
}

function bestOctave(heard: Heard, exercise: Exercise, semitones: number): Alignment {
  let best = alignAt(heard, exercise, { octaves: 0, semitones });
  if (best.fit >= BOUNDS.settledFit) return best;
  for (const octaves of likelyOctaves(heard, exercise, semitones)) {
    const alignment = alignAt(heard, exercise, { octaves, semitones });
    if (alignment.fit > best.fit + BOUNDS.octaveFit) best = alignment;
  }
  if (exercise.choice.hands !== 'together' || best.fit >= BOUNDS.handOctaveUnderFit) return best;
  // With the other hand where it is written, if that will do.
  for (const octaves of new Set([0, best.octaveShift]))
    for (const hand of likelyHands(heard, exercise, { octaves, semitones })) {
      const alignment = alignAt(heard, exercise, { octaves, semitones, hand });
      if (alignment.fit > best.fit + BOUNDS.octaveFit) best = alignment;
    }
  return best;
}

/** The two hands and octaves at which, the other hand staying, the keys played agree best with those of the exercise. */
function likelyHands(heard: Heard, exercise: Exercise, shift: Shift): readonly HandShift[] {
  const away = Array.from({ length: BOUNDS.handOctaves }, (_, index) => index + 1);
  return (['left', 'right'] as const)
    .flatMap((hand) => away.flatMap((by) => [-by, by].map((octaves): HandShift => ({ hand, octaves }))))
    .map((hand) => ({ hand, shared: agreement(heard, withHandMoved(exercise, hand), shift) }))
    .sort((a, b) => b.shared - a.shared)
    .slice(0, 2)
    .map(({ hand }) => hand);
}

/** Σ min(heard, expected) over keys: how many notes could answer, were there no time. */
function agreement(heard: Heard, exercise: Exercise, { octaves, semitones }: Shift): number {
  const expected = new Map<number, number>();
  for (const { midi } of exercise.steps.flatMap((step) => step.notes))
    expected.set(midi, (expected.get(midi) ?? 0) + 1);
  return heard.notes.filter((note) => {
    const midi = note.midi + semitones - 12 * octaves;
    const left = expected.get(midi) ?? 0;
    expected.set(midi, left - 1);
    return left > 0;
  }).length;
}

/** The two octave shifts, other than none, at which most played keys are keys of the exercise; none where written fits all. */
function likelyOctaves(heard: Heard, exercise: Exercise, semitones: number): readonly number[] {
  const keys = new Set(exercise.steps.flatMap((step) => step.notes.map((note) => note.midi)));
  const sharing = ({ octaves }: Shift): number =>
    heard.notes.filter((note) => keys.has(note.midi + semitones - 12 * octaves)).length;
  const shifts: number[] = [];
  for (let octaves = -BOUNDS.octaves; octaves <= BOUNDS.octaves; octaves++)
    if (octaves !== 0 && sharing({ octaves, semitones }) > 0) shifts.push(octaves);
  const asWritten = sharing({ octaves: 0, semitones });
  return shifts
    .map((octaves) => ({ octaves, shared: sharing({ octaves, semitones }) }))
    .filter(({ shared }) => shared >= asWritten)
    .sort((a, b) => b.shared - a.shared || Math.abs(a.octaves) - Math.abs(b.octaves))
    .slice(0, 2)
    .map(({ octaves }) => octaves);
}
