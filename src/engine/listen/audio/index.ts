import { UsageError } from '../../base/errors.ts';
import { ChannelChooser } from './channels.ts';
import type { ChannelFacts } from './channels.ts';
import { RailWatch } from './rail.ts';
import type { RailFacts } from './rail.ts';
import { RATE_HZ } from './rate.ts';
import { Resampler } from './resample.ts';

export { ChannelChooser } from './channels.ts';
export type { ChannelFacts } from './channels.ts';
export { levelsAreCut } from './cut.ts';
export type { RailFacts } from './rail.ts';
export { Anchor } from './anchor.ts';
export { SampleHistory } from './history.ts';
export { KeptSamples } from './kept.ts';
export { LoudnessWatch } from './loudness.ts';
export { RATE_HZ } from './rate.ts';

/** What the samples themselves tell of the recording. */
export interface AudioFacts {
  readonly durationSec: number;
  readonly channels: ChannelFacts;
  readonly rail: RailFacts;
  /** samples that were no numbers, counted as silence */
  readonly badSamples: number;
  /** samples a channel */
  readonly samples: number;
}

export interface AudioStream {
  push(block: readonly Float32Array[]): void;
  finish(): AudioFacts;
}

/**
 * Sound as it came → one channel at `RATE_HZ`, stretch by stretch to `emit`: its samples, reused, and how many of them count.
 * Zero delay: sample k lies at k / RATE_HZ s.
 * Throws a UsageError on an impossible rate or number of channels, never on bad sound.
 */
export function createAudioStream(
  format: { readonly sampleRateHz: number; readonly channels: number },
  emit: (block: Float64Array, length: number) => void,
): AudioStream {
  const { sampleRateHz, channels } = format;
  if (!(sampleRateHz >= 4000 && sampleRateHz <= 768_000))
    throw new UsageError(`sampleRateHz=${sampleRateHz} is outside 4000..768000; decode the sound first`);
  if (!Number.isInteger(channels) || channels < 1 || channels > 64)
    throw new UsageError(`channels=${channels} is outside 1..64; hand over at least one channel`);
  const resampler = new Resampler(sampleRateHz, RATE_HZ, emit);
  const rail = new RailWatch();
  const chooser = new ChannelChooser(channels, (block, length) => {
    rail.push(block, length);
    resampler.push(block, length);
  });
  let samples = 0;
  return {
    push(block) {
      if (block.length !== channels)
        throw new UsageError(`block has ${block.length} channels where ${channels} were announced`);
      const length = block[0]!.length;
      if (block.some((channel) => channel.length !== length))
        throw new UsageError('the channels of a block differ in length; cut them to one');
      samples += length;
      chooser.push(block);
    },
    finish() {
      chooser.finish();
      resampler.finish();
      return {
        durationSec: samples / sampleRateHz,
        channels: chooser.facts(),
        rail: rail.facts(),
        badSamples: chooser.badSamples,
        samples,
      };
    },
  };
}
