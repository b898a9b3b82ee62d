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
      // A point that turns and comes nearer the middle, sample by sample: e^(−decay t) · e^(i(2π f t + n)).
      const first = Math.ceil(timeSec * rateHz);
      const angle = (2 * Math.PI * freqHz) / rateHz;
      const nearer = Math.exp(-decay / rateHz);
      const [turnX, turnY] = [nearer * Math.cos(angle), nearer * Math.sin(angle)];
      const sinceSec = first / rateHz - timeSec;
      const atFirst = level * Math.exp(-decay * sinceSec);
      let x = atFirst * Math.cos(2 * Math.PI * freqHz * sinceSec + n);
      let y = atFirst * Math.sin(2 * Math.PI * freqHz * sinceSec + n);
      for (let i = first; i < out.length; i++) {
        out[i]! += Math.min((i / rateHz - timeSec) / 0.002, 1) * y;
        const before = x;
        x = before * turnX - y * turnY;
        y = before * turnY + y * turnX;
      }
    }
  }
  let seed = 12345;
  return Float32Array.from(out, (sample) => {
    seed = (Math.imul(seed, 1664525) + 1013904223) >>> 0;
    return (options.gain ?? 1) * (sample + 0.0002 * (seed / 2 ** 31 - 1));
  });
}
