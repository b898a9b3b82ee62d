import { highPass, lowPass, peaking } from '../biquad.ts';
import type { Biquad } from '../biquad.ts';

/** A phone's microphone: band-pass 120 Hz – 12 kHz with a peak near 3 kHz (common practice, no source). */
export function phoneSections(sampleRateHz: number): readonly Biquad[] {
  return [highPass(120, sampleRateHz), lowPass(12_000, sampleRateHz), peaking(3000, 6, sampleRateHz, 1.2)];
}

const CONTROL = { targetRms: 0.1, attackSec: 0.05, releaseSec: 1.5, mostGainDb: 24 } as const;

/** Automatic level control of a phone: the gain follows a target level, down fast and up slowly. */
export function levelControlled(signal: Float64Array, sampleRateHz: number): Float64Array {
  const most = 10 ** (CONTROL.mostGainDb / 20);
  const follow = (sec: number): number => 1 - Math.exp(-1 / (sec * sampleRateHz));
  const measure = follow(0.02);
  const attack = follow(CONTROL.attackSec);
  const release = follow(CONTROL.releaseSec);
  let power = CONTROL.targetRms ** 2;
  let gain = 1;
  return signal.map((value) => {
    power += measure * (value * value - power);
    const wanted = Math.min(CONTROL.targetRms / Math.sqrt(power + 1e-12), most);
    gain += (wanted < gain ? attack : release) * (wanted - gain);
    return value * gain;
  });
}
