import { clickSamples } from '../../../src/io/pulse/click.ts';
import { GROUP_BEATS } from '../../../src/io/pulse/grid.ts';

/** A recording with our own click on every beat, as the device's loudspeaker would add it; `peakDb`: of a plain click. */
export function withClicks(
  sound: { readonly channels: readonly Float32Array[]; readonly sampleRateHz: number },
  clicks: { readonly bpm: number; readonly fromSec: number; readonly peakDb: number },
): { readonly channels: readonly Float32Array[]; readonly sampleRateHz: number } {
  const { sampleRateHz } = sound;
  const out = sound.channels[0]!.slice();
  const shapes = [true, false].map((first) => clickSamples(sampleRateHz, first));
  const peak = shapes[1]!.reduce((most, value) => Math.max(most, Math.abs(value)), 0);
  const gain = 10 ** (clicks.peakDb / 20) / peak;
  const everySec = 60 / clicks.bpm;
  for (let beat = 0; ; beat += 1) {
    const at = Math.round((clicks.fromSec + beat * everySec) * sampleRateHz);
    if (at >= out.length) return { channels: [out], sampleRateHz };
    const shape = shapes[beat % GROUP_BEATS === 0 ? 0 : 1]!;
    for (let i = 0; i < shape.length && at + i < out.length; i++) out[at + i]! += gain * shape[i]!;
  }
}
