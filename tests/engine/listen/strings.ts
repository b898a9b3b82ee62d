import { midiToHz } from '../../../src/engine/base/units.ts';

/** One struck string of our own making. */
export interface StringStroke {
  readonly timeSec: number;
  readonly midi: number;
  readonly amplitude?: number;
  readonly cents?: number;
  readonly stiffness?: number;
}

/**
 * Strokes → sound by formula: partials f_n = n f0 sqrt(1 + B n²) (Fletcher 1964) that rise in 2 ms and die away, weaker and
 * faster with n. Its truth is exact because nothing in it is recorded. A soft seeded noise lies 60 dB below.
 */
export function playStrings(
  strokes: readonly StringStroke[],
  options: { readonly seconds: number; readonly rateHz?: number; readonly gain?: number },
): Float32Array {
  const rateHz = options.rateHz ?? 22050;
  const out = new Float64Array(Math.round(options.seconds * rateHz));
  for (const { timeSec, midi, amplitude = 0.2, cents = 0, stiffness = 3e-4 } of strokes) {
    const f0 = midiToHz(midi + cents / 100) / Math.sqrt(1 + stiffness);
    for (let n = 1; n <= 14; n++) {
      const freqHz = n * f0 * Math.sqrt(1 + stiffness * n * n);
      if (freqHz > 0.42 * Math.min(rateHz, 22050)) break;
      const level = amplitude * n ** -1.1;
      const decay = 2.5 + 0.6 * n;
      for (let i = Math.ceil(timeSec * rateHz); i < out.length; i++) {
        const t = i / rateHz - timeSec;
        const rise = t < 0.002 ? t / 0.002 : 1;
        out[i]! += level * rise * Math.exp(-decay * t) * Math.sin(2 * Math.PI * freqHz * t + n);
      }
    }
  }
  let seed = 12345;
  return Float32Array.from(out, (sample) => {
    seed = (Math.imul(seed, 1664525) + 1013904223) >>> 0;
    return (options.gain ?? 1) * (sample + 0.0002 * (seed / 2 ** 31 - 1));
  });
}
