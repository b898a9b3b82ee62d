import { describe, expect, it } from 'vitest';
import type { ExerciseChoice } from '../../../../src/engine/exercise/index.ts';
import { buildExercise } from '../../../../src/engine/exercise/index.ts';
import type { PianoProfile } from '../../../../src/engine/listen/index.ts';
import { createRandom } from '../../../support/random.ts';
import { played } from '../../match/simulated.ts';
import { ARPEGGIO, plusMinus, reportOf, value, withIntervals } from './series.ts';

const fingers = buildExercise(ARPEGGIO).steps.map((step) => step.notes[0]!.finger);
const keys = buildExercise(ARPEGGIO).steps.map((step) => step.notes[0]!.midi);
const TRIADS: ExerciseChoice = { key: 'C major', form: 'triads', hands: 'right', octaves: 1 };

describe('evenness of loudness', () => {
  it('is 0 where the level follows a line over pitch, which is the piano’s doing', () => {
    const notes = withIntervals([400], (step) => ({ levelDb: -20 - 0.3 * (keys[step]! - 60) }));
    expect(value(reportOf(notes).measures.loudnessEvennessDb)).toBeCloseTo(0, 6);
  });

  it('is about the SD of the level otherwise, on the average of 200 attempts', () => {
    const random = createRandom(4);
    let sum = 0;
    for (let attempt = 0; attempt < 200; attempt++) {
      const notes = withIntervals([400], () => ({ levelDb: -20 + random.normal(2) }));
      sum += value(reportOf(notes).measures.loudnessEvennessDb) ** 2;
    }
    expect(Math.sqrt(sum / 200)).toBeCloseTo(2, 0.7);
  });

  it('tells the thumb’s accent against the other fingers', () => {
    const notes = withIntervals([400], (step) => ({
      levelDb: (fingers[step] === 1 ? -17 : -20) - 0.2 * keys[step]!,
    }));
    expect(value(reportOf(notes).measures.thumbAccentDb)).toBeCloseTo(3, 6);
  });

  it('tells which end fades, and by how much', () => {
    const notes = withIntervals([400], (step) => ({ levelDb: step >= 5 && step <= 7 ? -28 : -20 }));
    expect(value(reportOf(notes).measures.endsFadeDb)).toBeCloseTo(-8, 6);
    // The first two steps belong to no side, all others do: here the middle is 2, 3, 4, 8, 9 and 10.
    const loudAt = (step: number) =>
      withIntervals([400], (one) => ({ levelDb: one === step ? -14 : one >= 5 && one <= 7 ? -28 : -20 }));
    expect(value(reportOf(loudAt(1)).measures.endsFadeDb)).toBeCloseTo(-8, 6);
    expect(value(reportOf(loudAt(2)).measures.endsFadeDb)).toBeCloseTo(-9, 6);
    expect(value(reportOf(loudAt(10)).measures.endsFadeDb)).toBeCloseTo(-9, 6);
    expect(value(reportOf(loudAt(11)).measures.endsFadeDb)).toBeCloseTo(-8, 6);
  });
});

describe('loudness on a piano whose keys are known', () => {
  /** keys that differ among themselves, as a piano's do */
  const ownDb = (midi: number): number => 3 * Math.sin(7 * midi);
  const profile = (plusMinus = 0.5, of = ownDb): PianoProfile => ({
    version: 1,
    tuningCents: { value: 0, plusMinus: 1, count: 100 },
    keys: Object.fromEntries(
      [...new Set(keys)].map((midi) => [midi, { levelDb: { value: of(midi), plusMinus, count: 9 } }]),
    ),
  });
  const notes = withIntervals([400], (step) => ({
    levelDb: -20 + ownDb(keys[step]!) + (fingers[step] === 1 ? 2 : 0) + (step % 2 === 0 ? 0.4 : -0.4),
  }));
  const measuresWith = (piano: PianoProfile | null) => reportOf(notes, {}, ARPEGGIO, { piano }).measures;

  it('is the player’s: the keys’ own differences are no part of it', () => {
    const measures = measuresWith(profile());
    expect(measures.keysKnown).toBe(true);
    expect(measures.thumbAccentDb).toEqual(measuresWith(null).thumbAccentDb);
    expect(value(measures.loudnessEvennessDb)).toBeLessThan(1.2);
  });

  it('is as it sounds here where a key is not known, or too little of it', () => {
    const { [keys[3]!]: _, ...others } = profile().keys;
    for (const piano of [null, { ...profile(), keys: others }, profile(1.2)]) {
      expect(measuresWith(piano).keysKnown).toBeUndefined();
      expect(measuresWith(piano)).toEqual(measuresWith(null));
    }
    expect(value(measuresWith(null).loudnessEvennessDb)).toBeGreaterThan(1.8);
  });

  it('is as it sounds here where the levels known explain less than nothing: it is another piano', () => {
    expect(measuresWith(profile(0.5, (midi) => 3 * Math.cos(5 * midi + 1)))).toEqual(measuresWith(null));
  });
});

describe('touch', () => {
  it.each([
    ['an overlap of 40 ms', 0.44, 40],
    ['a gap of 100 ms', 0.3, -100],
  ])('is %s', (_, heldSec, ms) => {
    const notes = withIntervals([400]).map((note) => ({ ...note, releaseSec: note.timeSec + heldSec }));
    expect(value(reportOf(notes).measures.touchMs)).toBeCloseTo(ms, 6);
  });

  it('is not measured where the damping of most notes is not heard, and says so', () => {
    const notes = withIntervals([400], (step) => (step % 3 === 0 ? {} : { releaseSec: null }));
    expect(reportOf(notes).measures.touchMs).toMatchObject({
      notMeasured: 'the damping of most notes cannot be heard',
    });
  });
});

describe('chords', () => {
  const chords = (apartMs: number, gapMs: readonly number[] = [800]) => {
    let timeSec = 1;
    return buildExercise(TRIADS).steps.flatMap(({ notes, step }) => {
      if (step > 0) timeSec += (gapMs[step - 1] ?? gapMs.at(-1)!) / 1000;
      return notes.map((note, index) => played(timeSec + (apartMs * index) / 2000, note.midi));
    });
  };

  it('have the time from first to last onset as their spread', () => {
    expect(value(reportOf(chords(50), {}, TRIADS).measures.chordSpreadMs)).toBeCloseTo(50, 6);
  });

  it('struck as one have no spread within twice its ±, in 92 of 100 hearings, however the listener errs', () => {
    const random = createRandom(5);
    const heard = Array.from({ length: 100 }, () => {
      const notes = chords(0).map((note) => ({ ...note, timeSec: note.timeSec + random.normal(3) / 1000 }));
      return reportOf(notes, { onsetSdMs: 3 }, TRIADS).measures.chordSpreadMs;
    });
    expect(heard.filter((spread) => value(spread) <= 2 * plusMinus(spread)).length).toBeGreaterThanOrEqual(
      92,
    );
  });

  it('one a beat and 750 ms apart go at 80 beats a minute', () => {
    expect(value(reportOf(chords(20, [750]), {}, TRIADS).measures.tempoBpm)).toBeCloseTo(80, 6);
  });

  it('have the slowest change told against the others', () => {
    const measures = reportOf(chords(0, [800, 800, 1600, 800]), {}, TRIADS).measures;
    expect(value(measures.changeHesitationRatio)).toBeCloseTo(2, 6);
  });

  it('single notes have neither, and say why', () => {
    const { measures } = reportOf(withIntervals([400]));
    expect(measures.chordSpreadMs).toMatchObject({ notMeasured: 'needs two chords of one hand' });
    expect(measures.changeHesitationRatio).toMatchObject({ notMeasured: 'needs three changes of chord' });
  });
});

describe('note accuracy', () => {
  it('is right notes of expected ones, per cent', () => {
    const notes = withIntervals([400]).filter((_, step) => step !== 4);
    expect(value(reportOf(notes).measures.noteAccuracyPercent)).toBeCloseTo((100 * 12) / 13, 6);
  });
});
