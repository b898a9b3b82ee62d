import type { KeySample } from './index.ts';

const TAPS = 24;
const PHASES = 4096;

/** Windowed-sinc kernels (Hann) for PHASES positions between two samples. */
const KERNELS = ((): Float32Array => {
  const table = new Float32Array((PHASES + 1) * TAPS);
  for (let phase = 0; phase <= PHASES; phase++)
    for (let tap = 0; tap < TAPS; tap++) {
      const x = tap - (TAPS / 2 - 1) - phase / PHASES;
      const sinc = x === 0 ? 1 : Math.sin(Math.PI * x) / (Math.PI * x);
      const edge = Math.abs(x) / (TAPS / 2);
      table[phase * TAPS + tap] = edge >= 1 ? 0 : sinc * (0.5 + 0.5 * Math.cos(Math.PI * edge));
    }
  return table;
})();

/** Where and how one recorded key is put. */
export interface Placement {
  /** moment of the attack in the output */
  readonly timeSec: number;
  /** sounding pitch against the recorded one, cents */
  readonly shiftCents: number;
  readonly gain: number;
  /** the damper falls; null: never */
  readonly damped: { readonly atSec: number; readonly lengthSec: number } | null;
}

/** The recording begins so long before the attack: the key's and the hammer's noise belong to it. */
const PREROLL_SEC = 0.035;
const FADE_IN_SEC = 0.003;
/** Fall of amplitude while the damper takes hold, and where the rest is given up. */
const DAMPED_BY_DB = 40;
const GIVEN_UP_DB = 80;
/** … the fall as an exponent of e */
const DAMPED_BY = (-DAMPED_BY_DB / 20) * Math.LN10;

/** Adds one struck key to `out`: resampled by a windowed sinc, its attack exactly at `timeSec`. */
export function addStrike(
  out: Float64Array,
  sampleRateHz: number,
  key: KeySample,
  placement: Placement,
): void {
  const { timeSec, shiftCents, gain, damped } = placement;
  const ratio = 2 ** (shiftCents / 1200);
  const prerollSec = Math.min(PREROLL_SEC, key.attackSec / ratio);
  const first = Math.max(Math.ceil((timeSec - prerollSec) * sampleRateHz), 0);
  const endSec = damped ? damped.atSec + (damped.lengthSec * GIVEN_UP_DB) / DAMPED_BY_DB : Infinity;
  const last = Math.min(out.length, Math.floor(Math.min(endSec, 1e6) * sampleRateHz));
  const step = (ratio * key.sampleRateHz) / sampleRateHz;
  const origin = (key.attackSec - timeSec * ratio) * key.sampleRateHz;
  const { samples } = key;
  const tailFrom = samples.length - 0.1 * key.sampleRateHz;
  for (let index = first; index < last; index++) {
    const position = origin + index * step;
    const whole = Math.floor(position);
    const start = whole - (TAPS / 2 - 1);
    if (start + TAPS > samples.length) break;
    if (start < 0) continue;
    const kernel = Math.round((position - whole) * PHASES) * TAPS;
    // Four sums side by side: in one each waits for the one before.
    let [a, b, c, d] = [0, 0, 0, 0];
    for (let tap = 0; tap < TAPS; tap += 4) {
      a += samples[start + tap]! * KERNELS[kernel + tap]!;
      b += samples[start + tap + 1]! * KERNELS[kernel + tap + 1]!;
      c += samples[start + tap + 2]! * KERNELS[kernel + tap + 2]!;
      d += samples[start + tap + 3]! * KERNELS[kernel + tap + 3]!;
    }
    const sec = index / sampleRateHz;
    let envelope = gain * Math.min((sec - timeSec + prerollSec) / FADE_IN_SEC, 1);
    if (damped && sec > damped.atSec)
      envelope *= Math.exp(DAMPED_BY * ((sec - damped.atSec) / damped.lengthSec));
    if (position > tailFrom)
      envelope *= Math.max(samples.length - TAPS - position, 0) / (samples.length - tailFrom);
    out[index]! += (a + b + c + d) * envelope;
  }
}
