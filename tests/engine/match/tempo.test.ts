import { describe, expect, it } from 'vitest';
import { buildExercise } from '../../../src/engine/exercise/index.ts';
import type { IndexedNote } from '../../../src/engine/match/align/notes.ts';
import {
  beatsPerStep,
  guessBeatSec,
  localBeatSec,
  spanBeatSec,
} from '../../../src/engine/match/align/tempo.ts';
import type { Anchor } from '../../../src/engine/match/align/tempo.ts';

// The beat, worked out by hand from the times that stand in each test.

const SCALE = buildExercise({ key: 'C major', form: 'scale', hands: 'right', octaves: 1 });
const TRIADS = buildExercise({ key: 'C major', form: 'triads', hands: 'right', octaves: 1 });
const LEFT_SCALE = buildExercise({ key: 'C major', form: 'scale', hands: 'left', octaves: 1 });
const BOTH_SCALES = buildExercise({ key: 'C major', form: 'scale', hands: 'together', octaves: 1 });
const LEFT_TRIADS = buildExercise({ key: 'C major', form: 'triads', hands: 'left', octaves: 1 });

const struckAt = (...timesSec: readonly number[]): IndexedNote[] =>
  timesSec.map((timeSec, played) => ({ played, timeSec, midi: 60, confidence: 1, levelDb: -20 }));

describe('the first guess at the beat', () => {
  it('is the median from stroke to stroke, a step’s beats taken into account', () => {
    expect(guessBeatSec(struckAt(1, 1.4, 1.8, 3, 3.4), SCALE)).toBeCloseTo(0.4 / beatsPerStep(SCALE), 9);
    expect(guessBeatSec(struckAt(1, 2, 3), TRIADS)).toBeCloseTo(1 / beatsPerStep(TRIADS), 9);
  });

  it('takes single notes for one stroke under 60 ms, chords under 150 ms, in either hand', () => {
    expect(guessBeatSec(struckAt(1, 1.05, 1.5, 1.55, 2), SCALE)).toBeCloseTo(0.5 / beatsPerStep(SCALE), 9);
    for (const line of [SCALE, LEFT_SCALE, BOTH_SCALES])
      expect(guessBeatSec(struckAt(1, 1.1, 1.2, 1.3, 1.4), line)).toBeCloseTo(0.1 / beatsPerStep(line), 9);
    for (const chords of [TRIADS, LEFT_TRIADS])
      expect(guessBeatSec(struckAt(1, 1.1, 2, 2.14, 3), chords)).toBeCloseTo(1 / beatsPerStep(chords), 9);
    expect(guessBeatSec(struckAt(1, 1.2, 2, 2.2, 3), TRIADS)).toBeLessThan(0.6 / beatsPerStep(TRIADS));
  });

  it('is half a second where there are no two strokes', () => {
    expect(guessBeatSec([], SCALE)).toBe(0.5);
    expect(guessBeatSec(struckAt(2), SCALE)).toBe(0.5);
  });
});

describe('a step', () => {
  it('lasts as most steps of the exercise do, one beat where there is only one', () => {
    expect(
      beatsPerStep({ ...SCALE, steps: [0, 1, 2, 5].map((beat) => ({ ...SCALE.steps[0]!, beat })) }),
    ).toBe(1);
    expect(beatsPerStep({ ...SCALE, steps: [0, 2, 4].map((beat) => ({ ...SCALE.steps[0]!, beat })) })).toBe(
      2,
    );
    expect(beatsPerStep({ ...SCALE, steps: SCALE.steps.slice(0, 1) })).toBe(1);
  });
});

describe('the beat of the whole', () => {
  it('is the time from the first note to the last over the beats of the exercise', () => {
    const beats = SCALE.steps.at(-1)!.beat - SCALE.steps[0]!.beat;
    expect(spanBeatSec(struckAt(2, 5, 9), SCALE)).toBeCloseTo(7 / beats, 9);
    expect(spanBeatSec(struckAt(2), SCALE)).toBe(0.5);
    expect(spanBeatSec([], SCALE)).toBe(0.5);
  });
});

describe('the local beat', () => {
  /** Anchors a beat apart, so many seconds each. */
  const anchorsOf = (fromSec: number, ...secs: readonly number[]): Anchor[] => {
    let timeSec = fromSec;
    return [{ timeSec, beat: 0 }, ...secs.map((sec, at) => ({ timeSec: (timeSec += sec), beat: at + 1 }))];
  };

  it('is the median of the nearest interval and three on each side', () => {
    // Seven quick, seven slow beats: the middle of the fourth interval lies at 1 + 3.5 · 0.4, of the eleventh at 3.8 + 3.5 · 0.6.
    const beat = localBeatSec([anchorsOf(1, ...quick, ...slow)], 9);
    expect(beat(2.4)).toBeCloseTo(0.4, 9);
    expect(beat(5.9)).toBeCloseTo(0.6, 9);
    expect(beat(0)).toBeCloseTo(0.4, 9);
    expect(beat(99)).toBeCloseTo(0.6, 9);
    // The seventh quick interval has four quick neighbours in its seven, the first slow one four slow.
    expect(beat(1 + 6.5 * 0.4)).toBeCloseTo(0.4, 9);
    expect(beat(3.8 + 0.3)).toBeCloseTo(0.6, 9);
    // Between the two middles it is that of the nearer one.
    expect(beat(3.8 + 0.01)).toBeCloseTo(0.4, 9);
    expect(beat(3.8 + 0.09)).toBeCloseTo(0.6, 9);
  });

  it('does not bend at one stop, and counts beats, not anchors', () => {
    const stopped = anchorsOf(1, 0.4, 0.4, 0.4, 5, 0.4, 0.4, 0.4);
    expect(localBeatSec([stopped], 9)(4)).toBeCloseTo(0.4, 9);
    const apart = [0, 2, 4, 6].map((beat) => ({ timeSec: 1 + 0.4 * beat, beat }));
    expect(localBeatSec([apart], 9)(2)).toBeCloseTo(0.4, 9);
  });

  it('stays within half and double the median of all', () => {
    const seven = (sec: number): number[] => Array.from({ length: 7 }, () => sec);
    const beat = localBeatSec([anchorsOf(1, ...seven(2), ...seven(0.4), ...seven(0.1), 0.4, 0.4)], 9);
    expect(beat(1)).toBeCloseTo(0.8, 9);
    expect(beat(1 + 14 + 2.8 + 0.35)).toBeCloseTo(0.2, 9);
  });

  it('is measured within a playing, not from one to the next', () => {
    const first = anchorsOf(1, 0.4, 0.4);
    const second = anchorsOf(8, 0.5, 0.5, 0.5, 0.5, 0.5);
    expect(localBeatSec([first, second], 9)(8)).toBeCloseTo(0.5, 9);
    expect(localBeatSec([second, first], 9)(0)).toBeCloseTo(0.5, 9);
  });

  it('is the first guess where fewer than three intervals are known, or none that goes forward', () => {
    expect(localBeatSec([anchorsOf(1, 0.4, 0.4)], 9)(1)).toBe(9);
    expect(localBeatSec([], 9)(1)).toBe(9);
    expect(localBeatSec([anchorsOf(1, 0.4, 0.4, 0.4)], 9)(1)).toBeCloseTo(0.4, 9);
    const still = [0, 0, 0, 0].map((beat, at) => ({ timeSec: 1 + at, beat }));
    expect(localBeatSec([still], 9)(1)).toBe(9);
  });
});

const quick = Array.from({ length: 7 }, () => 0.4);
const slow = Array.from({ length: 7 }, () => 0.6);
