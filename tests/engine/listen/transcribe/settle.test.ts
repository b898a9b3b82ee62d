import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { RATE_HZ } from '../../../../src/engine/listen/audio/index.ts';
import { evidenceFor, settle } from '../../../../src/engine/listen/transcribe/settle.ts';
import type { OnsetCandidate } from '../../../../src/engine/listen/transcribe/onset-candidate.ts';

const strike = (timeSec: number, midi: number, more: Partial<OnsetCandidate> = {}): OnsetCandidate => ({
  onsetSample: Math.round(timeSec * RATE_HZ),
  midi,
  probability: 0.98,
  loudness: 0,
  sounding: 1,
  levelDb: -20,
  pitch: midi,
  pitchRead: true,
  stiffness: 3e-4,
  flatness: 0.02,
  agreement: null,
  releaseSample: null,
  ...more,
});

describe('settling what was struck', () => {
  const run = [60, 62, 64, 65].map((midi, i) => strike(0.5 + 0.3 * i, midi));

  it('keeps a plain run, in order', () => {
    expect(settle(run).map(({ strike: { midi } }) => midi)).toEqual([60, 62, 64, 65]);
  });

  it.each([12, 19, 24, 28, 31, 36])(
    'drops a faint doubtful ghost %i semitones above a struck key',
    (above) => {
      const ghost = strike(0.5, 60 + above, { probability: 0.5, loudness: -12, sounding: 0.4 });
      expect(settle([run[0]!, ghost, ...run.slice(1)]).map(({ strike: { midi } }) => midi)).toEqual([
        60, 62, 64, 65,
      ]);
    },
  );

  it('keeps an octave that was struck as surely as the key below it', () => {
    const pair = [strike(0.5, 60), strike(0.505, 72)];
    expect(settle(pair).map(({ strike: { midi } }) => midi)).toEqual([60, 72]);
  });

  it('believes a surer strike more, all else alike', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0.05, max: 0.9, noNaN: true }),
        fc.double({ min: 0.01, max: 0.09, noNaN: true }),
        (low, more) => {
          const belief = (probability: number): number =>
            evidenceFor(strike(2, 62, { probability }), run).belief;
          expect(belief(low + more)).toBeGreaterThan(belief(low));
        },
      ),
    );
  });

  it('drops a doubtful strike that is noisier than what was surely struck, unless all of it is so noisy', () => {
    const breath = strike(0.8, 64, { probability: 0.6, flatness: 0.3, agreement: 0 });
    const drawn = [run[0]!, run[1]!, breath, run[3]!];
    const hissing = drawn.map((one) => ({ ...one, flatness: 0.3 }));
    expect(settle(drawn).map(({ strike: { midi } }) => midi)).toEqual([60, 62, 65]);
    expect(settle(hissing).map(({ strike: { midi } }) => midi)).toEqual([60, 62, 64, 65]);
  });

  it('gives chances above a half and at most one, in order of time', () => {
    const times = fc.array(
      fc.tuple(
        fc.double({ min: 0, max: 20, noNaN: true }),
        fc.integer({ min: 21, max: 108 }),
        fc.double({ min: 0, max: 1, noNaN: true }),
      ),
      { maxLength: 30 },
    );
    fc.assert(
      fc.property(times, (drawn) => {
        const strikes = drawn
          .map(([timeSec, midi, probability]) => strike(timeSec, midi, { probability }))
          .sort((a, b) => a.onsetSample - b.onsetSample);
        const found = settle(strikes);
        found.forEach(({ chance, strike: { onsetSample } }, i) => {
          expect(chance).toBeGreaterThan(0.5);
          expect(chance).toBeLessThanOrEqual(1);
          if (i > 0) expect(onsetSample).toBeGreaterThanOrEqual(found[i - 1]!.strike.onsetSample);
        });
      }),
    );
  });
});
