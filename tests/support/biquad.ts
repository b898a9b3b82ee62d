/** Second-order filter sections from the "Cookbook formulae for audio EQ biquad filter coefficients" (R. Bristow-Johnson). */
export interface Biquad {
  readonly b: readonly [number, number, number];
  readonly a: readonly [number, number];
}

function normalised(b: readonly [number, number, number], a: readonly [number, number, number]): Biquad {
  return { b: [b[0] / a[0], b[1] / a[0], b[2] / a[0]], a: [a[1] / a[0], a[2] / a[0]] };
}

function angles(freqHz: number, quality: number, sampleRateHz: number): { cos: number; alpha: number } {
  const omega = (2 * Math.PI * freqHz) / sampleRateHz;
  return { cos: Math.cos(omega), alpha: Math.sin(omega) / (2 * quality) };
}

export function highPass(freqHz: number, sampleRateHz: number, quality = Math.SQRT1_2): Biquad {
  const { cos, alpha } = angles(freqHz, quality, sampleRateHz);
  return normalised([(1 + cos) / 2, -(1 + cos), (1 + cos) / 2], [1 + alpha, -2 * cos, 1 - alpha]);
}

export function lowPass(freqHz: number, sampleRateHz: number, quality = Math.SQRT1_2): Biquad {
  const { cos, alpha } = angles(freqHz, quality, sampleRateHz);
  return normalised([(1 - cos) / 2, 1 - cos, (1 - cos) / 2], [1 + alpha, -2 * cos, 1 - alpha]);
}

/** Constant 0 dB peak gain. */
export function bandPass(freqHz: number, sampleRateHz: number, quality: number): Biquad {
  const { cos, alpha } = angles(freqHz, quality, sampleRateHz);
  return normalised([alpha, 0, -alpha], [1 + alpha, -2 * cos, 1 - alpha]);
}

export function peaking(freqHz: number, gainDb: number, sampleRateHz: number, quality: number): Biquad {
  const { cos, alpha } = angles(freqHz, quality, sampleRateHz);
  const gain = 10 ** (gainDb / 40);
  return normalised(
    [1 + alpha * gain, -2 * cos, 1 - alpha * gain],
    [1 + alpha / gain, -2 * cos, 1 - alpha / gain],
  );
}

/** Signal → the same through all sections, one after another. */
export function filtered(signal: ArrayLike<number>, sections: readonly Biquad[]): Float64Array {
  const out = new Float64Array(signal);
  for (const { b, a } of sections) {
    let x1 = 0;
    let x2 = 0;
    let y1 = 0;
    let y2 = 0;
    for (let index = 0; index < out.length; index++) {
      const x = out[index]!;
      const y = b[0] * x + b[1] * x1 + b[2] * x2 - a[0] * y1 - a[1] * y2;
      x2 = x1;
      x1 = x;
      y2 = y1;
      y1 = y;
      out[index] = y;
    }
  }
  return out;
}
