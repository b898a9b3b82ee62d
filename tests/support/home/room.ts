import type { Random } from '../random.ts';

const EARLY_COUNT = 8;
/** The tail's highs die sooner: decay at 8 kHz against decay at low frequencies (common practice, no source). */
const HIGH_DECAY_SHARE = 0.5;

/**
 * A room as an impulse response: the direct sound at time 0 (so that no onset moves), eight reflections in the first
 * 45 ms, and a noise tail that falls by 60 dB in `decaySec`. Everything after the direct sound together has `directDb`
 * less power than it.
 */
export function roomResponse(
  room: { readonly decaySec: number; readonly directDb: number },
  sampleRateHz: number,
  random: Random,
): Float64Array {
  const response = new Float64Array(Math.round(room.decaySec * 1.1 * sampleRateHz));
  let smooth = 0;
  const tailFrom = Math.round(0.012 * sampleRateHz);
  for (let index = tailFrom; index < response.length; index++) {
    const sec = index / sampleRateHz;
    const fade = Math.min((index - tailFrom) / (0.02 * sampleRateHz), 1);
    const white = random.normal(1);
    smooth += 0.25 * (white - smooth);
    const low = smooth * 10 ** ((-3 * sec) / room.decaySec);
    const high = (white - smooth) * 10 ** ((-3 * sec) / (room.decaySec * HIGH_DECAY_SHARE));
    response[index] = fade * (low * 1.6 + high * 0.5);
  }
  const tailPower = response.reduce((sum, value) => sum + value * value, 0);
  const early = Array.from({ length: EARLY_COUNT }, () => random.uniform(0.003, 0.045));
  for (const sec of early) {
    const strength =
      Math.sqrt(tailPower / EARLY_COUNT) * Math.exp(-sec / 0.03) * (random.chance(0.5) ? 1 : -1);
    response[Math.round(sec * sampleRateHz)]! += strength * 1.2;
  }
  const power = response.reduce((sum, value) => sum + value * value, 0);
  const scale = Math.sqrt(10 ** (-room.directDb / 10) / power);
  for (let index = 0; index < response.length; index++) response[index] = response[index]! * scale;
  response[0] = 1;
  return response;
}
