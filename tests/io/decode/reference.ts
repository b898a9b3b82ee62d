import { readFileSync } from 'node:fs';
import { resolve } from 'node:path';

const SAMPLES = resolve(import.meta.dirname, 'samples');

/** The bytes of a committed sample. */
export function sample(file: string): ArrayBuffer {
  const bytes = readFileSync(resolve(SAMPLES, file));
  return bytes.buffer.slice(bytes.byteOffset, bytes.byteOffset + bytes.byteLength);
}

/** Length of every sample's sound, seconds (SOURCE.md). */
export const LENGTH_SEC = 0.35;

const ONSET_SEC = 0.1;
const OFFSET_SEC = 0.3;
const AMPLITUDE = 0.5;
const FREQS_HZ = [440, 660];

/** The closed form that every sample was encoded from: silence, a tone from 0.1 s to 0.3 s, silence. */
export function closedForm(channel: number, sampleRateHz: number, frames: number): Float32Array {
  return Float32Array.from({ length: frames }, (_, i) => {
    const timeSec = i / sampleRateHz;
    if (timeSec < ONSET_SEC - 1e-9 || timeSec > OFFSET_SEC - 1e-7) return 0;
    return AMPLITUDE * Math.sin(2 * Math.PI * FREQS_HZ[channel]! * (timeSec - ONSET_SEC));
  });
}

export interface Fit {
  /** samples by which the decoded sound is late */
  readonly lag: number;
  /** decoded against closed form at that lag, dB */
  readonly gainDb: number;
  /** what the closed form leaves unexplained, dB below the tone */
  readonly residualDb: number;
}

/** Least-squares fit of a decoded channel to the closed form over lags within ±maxLag samples. */
export function fit(decoded: Float32Array, channel: number, sampleRateHz: number, maxLag: number): Fit {
  const reference = closedForm(channel, sampleRateHz, Math.round(LENGTH_SEC * sampleRateHz));
  const energy = reference.reduce((sum, value) => sum + value * value, 0);
  const total = decoded.reduce((sum, value) => sum + value * value, 0);
  let best = { lag: 0, product: -Infinity };
  for (let lag = -maxLag; lag <= maxLag; lag++) {
    let product = 0;
    const to = Math.min(reference.length, decoded.length - lag);
    for (let i = Math.max(0, -lag); i < to; i++) product += reference[i]! * decoded[i + lag]!;
    if (product > best.product) best = { lag, product };
  }
  const gain = best.product / energy;
  const residual = Math.max(total - gain * best.product, 1e-30);
  return {
    lag: best.lag,
    gainDb: 20 * Math.log10(gain),
    residualDb: 10 * Math.log10(residual / (gain * gain * energy)),
  };
}
