import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { RATE_HZ, SampleHistory } from '../../../../src/engine/listen/audio/index.ts';
import { RoughTuning } from '../../../../src/engine/listen/transcribe/rough-tuning.ts';
import type { Settled } from '../../../../src/engine/listen/transcribe/settle.ts';
import { stretchCents } from '../../../../src/engine/listen/transcribe/stretch.ts';
import { measureTuning } from '../../../../src/engine/listen/transcribe/string-tuning.ts';
import { playStrings } from '../strings.ts';

const settled = (midi: number, cents: number, pitchRead = true): Settled => ({
  chance: 1,
  strike: {
    onsetSample: 0,
    midi,
    probability: 1,
    loudness: 0,
    sounding: 1,
    levelDb: -20,
    pitch: midi + (cents + stretchCents(midi)) / 100,
    pitchRead,
    stiffness: 3e-4,
    flatness: 0.02,
    agreement: null,
    releaseSample: null,
  },
});
const octave = [60, 62, 64, 65, 67, 69, 71, 72];

describe('the tuning of a piano', () => {
  it('is A4 = 440 Hz (ISO 16) where nothing was read', () => {
    expect(measureTuning([])).toMatchObject({ cents: 0, a4Hz: 440 });
    expect(measureTuning([settled(60, 30, false)])).toMatchObject({ cents: 0, a4Hz: 440 });
  });

  it('is the offset that all strings share, whatever it is', () => {
    fc.assert(
      fc.property(fc.double({ min: -49, max: 49, noNaN: true }), (cents) => {
        const tuning = measureTuning(octave.map((midi) => settled(midi, cents)));
        expect(tuning.cents).toBeCloseTo(cents, 6);
        expect(tuning.a4Hz).toBeCloseTo(440 * 2 ** (cents / 1200), 6);
        expect(tuning.strays).toEqual([]);
      }),
    );
  });

  it('is not pulled by one string 20 cents astray, which is named', () => {
    const tuning = measureTuning(octave.map((midi) => settled(midi, midi === 67 ? -10 : -30)));
    expect(tuning.cents).toBeCloseTo(-30, 6);
    expect(tuning.strays).toHaveLength(1);
    expect(tuning.strays[0]!.midi).toBe(67);
    expect(tuning.strays[0]!.cents).toBeCloseTo(20, 6);
  });

  it.each([-50, -25, 0, 20, 35])('is read roughly from the sound alone: %i cents to 5', (cents) => {
    const history = new SampleHistory(4 * RATE_HZ);
    const tune = octave.map((midi, i) => ({ timeSec: 0.1 + 0.4 * i, midi, cents }));
    const samples = Float64Array.from(playStrings(tune, { seconds: 3.6 }));
    history.append(samples, 0, samples.length);
    const rough = new RoughTuning(history);
    rough.advance();
    expect(Math.abs(rough.cents() - cents)).toBeLessThan(5);
  });

  // A voice glides through all pitches: here a string that sinks, read all the while, before a piano in tune.
  it.each([null, 0])('is not a semitone off after sound that glides (tuning known before: %s)', (known) => {
    const glide = Array.from({ length: 25 }, (_, i) => ({
      timeSec: 0.1 + 0.4 * i,
      midi: 57,
      cents: i < 3 ? 0 : i < 9 ? -35 : -70,
    }));
    const piano = Array.from({ length: 160 }, (_, i) => ({
      timeSec: 10.2 + 0.2 * i,
      midi: octave[i % 8]!,
      cents: 0,
    }));
    const history = new SampleHistory(60 * RATE_HZ);
    const samples = Float64Array.from(playStrings([...glide, ...piano], { seconds: 42 }));
    const rough = new RoughTuning(history, known);
    const said: number[] = [];
    for (let from = 0; from < samples.length; from += RATE_HZ) {
      history.append(samples, from, Math.min(from + RATE_HZ, samples.length));
      rough.advance();
      said.push(rough.cents());
    }
    expect(Math.max(...said.map(Math.abs))).toBeGreaterThan(25);
    expect(Math.abs(said.at(-1)!)).toBeLessThan(5);
  });
});
