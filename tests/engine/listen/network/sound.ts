import { createRandom } from '../../../support/random.ts';
import type { SampleSource } from '../../../../src/engine/listen/network/index.ts';

export const RATE_HZ = 22_050;

/** A tone of falling partials 1/k: struck at `onsetSec`, damped never. */
export interface Tone {
  readonly onsetSec: number;
  readonly hz: number;
  readonly level: number;
}

/** Tones by formula: Σ level/k · e^(−3kt) · sin(2πkt·hz), eight partials each. */
export function tones(lengthSamples: number, list: readonly Tone[]): Float64Array {
  const samples = new Float64Array(lengthSamples);
  for (const { onsetSec, hz, level } of list)
    for (let i = Math.ceil(onsetSec * RATE_HZ); i < lengthSamples; i++) {
      const since = i / RATE_HZ - onsetSec;
      for (let k = 1; k <= 8; k++)
        samples[i]! += (level / k) * Math.exp(-3 * k * since) * Math.sin(2 * Math.PI * hz * k * since);
    }
  return samples;
}

/** The sound of `test_sound` in src/training/listener/export.py: three tones and a hiss from a linear congruential generator. */
export function referenceSound(): Float64Array {
  const samples = tones(33_075, [
    { onsetSec: 0.55, hz: 220, level: 0.1 },
    { onsetSec: 0.57, hz: 277.2, level: 0.06 },
    { onsetSec: 0.8, hz: 1318.5, level: 0.05 },
  ]);
  let state = 1;
  for (let i = 0; i < samples.length; i++) {
    state = (Math.imul(1_664_525, state) + 1_013_904_223) >>> 0;
    samples[i]! += 0.0005 * (state / 2 ** 31 - 1);
  }
  return samples;
}

/** Three tones a while after each other in a soft hiss, 2.2 s: something that the network hears notes in. */
export function playing(seed: number): Float64Array {
  const random = createRandom(seed);
  const midi = [48, 55, 60, 64, 72].map((key) => key + random.integer(6));
  const samples = tones(
    Math.round(2.2 * RATE_HZ),
    midi.slice(0, 3).map((key, index) => ({
      onsetSec: 0.5 + 0.4 * index + random.uniform(0, 0.1),
      hz: 440 * 2 ** ((key - 69) / 12),
      level: 0.2,
    })),
  );
  return samples.map((sample) => sample + 0.0005 * random.normal(1));
}

/** Samples → source; silence around them. */
export function sourceOf(samples: Float64Array): SampleSource {
  return {
    read(start, out, length = out.length) {
      for (let i = 0; i < length; i++) out[i] = samples[start + i] ?? 0;
      return out;
    },
  };
}
