import { describe, expect, it } from 'vitest';
import { RATE_HZ, SampleHistory } from '../../../../src/engine/listen/audio/index.ts';
import { createAudioStream } from '../../../../src/engine/listen/audio/index.ts';
import { SecondOpinion } from '../../../../src/engine/listen/transcribe/second-opinion.ts';
import { settle } from '../../../../src/engine/listen/transcribe/settle.ts';
import { Transcriber } from '../../../../src/engine/listen/transcribe/transcriber.ts';
import type { OnsetCandidate } from '../../../../src/engine/listen/transcribe/onset-candidate.ts';
import { otherSound } from '../../../support/other-sounds.ts';
import { createRandom } from '../../../support/random.ts';
import { render } from '../../../support/render.ts';

const LENGTH = 4096;
function opinionOn(sample: (index: number) => number): SecondOpinion {
  const history = new SampleHistory(2 * LENGTH);
  history.append(
    Float64Array.from({ length: 2 * LENGTH }, (_, index) => sample(index)),
    0,
    2 * LENGTH,
  );
  return new SecondOpinion(history);
}
const sine = (freqHz: number) => (index: number) => 0.3 * Math.sin((2 * Math.PI * freqHz * index) / RATE_HZ);

describe('a second opinion', () => {
  it('has a flatness of next to nothing for a tone', () => {
    expect(opinionOn(sine(440)).flatness(0)).toBeLessThan(0.01);
  });

  // Magnitudes of white noise are Rayleigh distributed: geometric over arithmetic mean = 2 · e^(−γ/2) / √π, γ Euler's constant.
  it('has that of Rayleigh distributed magnitudes for white noise, whatever its level', () => {
    const expected = (2 * Math.exp(-0.5772156649 / 2)) / Math.sqrt(Math.PI);
    for (const level of [0.3, 0.003]) {
      const random = createRandom(3);
      const opinion = opinionOn(() => random.normal(level));
      const all = Array.from({ length: 100 }, (_, at) => opinion.flatness(70 * at));
      expect(all.reduce((sum, one) => sum + one, 0) / all.length).toBeCloseTo(expected, 1);
    }
  });

  it('agrees with the key whose pitch sounds, and with no other', () => {
    const opinion = opinionOn(sine(440));
    expect(opinion.agreement(0, 69)).toBeGreaterThan(0.9);
    expect(opinion.agreement(0, 70)).toBe(0);
    expect(opinion.agreement(0, 57)).toBe(0);
  });
});

function strikesIn(channel: Float32Array, sampleRateHz: number): readonly OnsetCandidate[] {
  const ear = new Transcriber();
  const audio = createAudioStream({ sampleRateHz, channels: 1 }, (block, length) => ear.push(block, length));
  audio.push([channel]);
  audio.finish();
  ear.finish();
  return ear.strikes;
}
/** As they would be settled if nobody looked for noise. */
const settledDeaf = (strikes: readonly OnsetCandidate[]): number =>
  settle(strikes.map((strike) => ({ ...strike, flatness: 0 }))).length;

describe('noise at a doubtful strike', () => {
  it('keeps part of what speech holds from being taken for keys', () => {
    const strikes = [21, 22, 23].map((seed) => {
      const { channels, sampleRateHz } = otherSound('speech', 12, seed);
      return strikesIn(channels[0]!, sampleRateHz);
    });
    const heard = strikes.reduce((sum, one) => sum + settle(one).length, 0);
    const deaf = strikes.reduce((sum, one) => sum + settledDeaf(one), 0);
    expect(deaf).toBeGreaterThan(0);
    // Over six minutes 38 of 59.
    expect(heard).toBeLessThan(0.9 * deaf);
  });

  it.each([
    ['in a quiet room', 50],
    ['in a hiss only ten decibels below it', 10],
  ] as const)('takes nothing from a piano %s', async (_name, belowDb) => {
    const { channels, sampleRateHz, truth } = await render({
      seed: 4,
      piano: 'dev',
      exercise: { key: 'D major', form: 'scale', hands: 'right', octaves: 2 },
      home: { noises: [{ kind: 'pink', belowDb }] },
    });
    const strikes = strikesIn(channels[0]!, sampleRateHz);
    const heard = settle(strikes);
    expect(heard.length).toBe(settledDeaf(strikes));
    expect(heard.length).toBe(truth.notes.length);
  });
});
