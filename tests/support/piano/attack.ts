import { filtered, highPass } from '../biquad.ts';

/** How an attack is found; the renderer, the truth and the tests of the renderer share this one definition. */
export const ATTACK = {
  /** length of the RMS window */
  windowSec: 0.001,
  /** below the greatest level of the search range */
  thresholdDb: -30,
  searchSec: 0.3,
  /** a piano's cabinet rumbles below these: C3 and above, and below C3 */
  highPassHz: { fromC3: 200, belowC3: 60 },
} as const;

/**
 * Samples of one struck key → the moment of its attack, seconds from the first sample: the 1 ms RMS envelope (window
 * centred), high-passed, first above −30 dB of its greatest value in the first 300 ms; between two samples by linear
 * interpolation in dB.
 */
export function findAttackSec(samples: ArrayLike<number>, sampleRateHz: number, midi: number): number {
  const range = Math.min(samples.length, Math.round(ATTACK.searchSec * sampleRateHz));
  const start = Float64Array.from({ length: range }, (_, index) => samples[index]!);
  const cutHz = midi >= 48 ? ATTACK.highPassHz.fromC3 : ATTACK.highPassHz.belowC3;
  const power = filtered(start, [highPass(cutHz, sampleRateHz)]).map((value) => value * value);
  const half = Math.max(1, Math.round((ATTACK.windowSec * sampleRateHz) / 2));
  const envelope = new Float64Array(range);
  let sum = 0;
  for (let index = 0; index < range + half; index++) {
    if (index < range) sum += power[index]!;
    if (index >= 2 * half + 1) sum -= power[index - 2 * half - 1]!;
    if (index >= half) envelope[index - half] = Math.max(sum, 0);
  }
  const threshold = envelope.reduce((a, b) => Math.max(a, b), 0) * 10 ** (ATTACK.thresholdDb / 10);
  const above = envelope.findIndex((value) => value > threshold);
  if (above <= 0) return 0;
  const before = Math.log(envelope[above - 1]! + 1e-30);
  const after = Math.log(envelope[above]! + 1e-30);
  return (above - 1 + (Math.log(threshold) - before) / (after - before)) / sampleRateHz;
}
