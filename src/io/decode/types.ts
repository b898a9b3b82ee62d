import type { Notice } from '../../engine/index.ts';

/** What the bytes turned out to be, whatever the file was called. */
export type Container = 'WAV' | 'AIFF' | 'CAF' | 'FLAC' | 'Ogg' | 'WebM' | 'MP4' | 'MP3' | 'AAC' | 'browser';

/** Sound out of a file. */
export interface DecodedAudio {
  /** one or two channels of one length, −1..1 (floating-point files may reach beyond) */
  readonly channels: readonly Float32Array[];
  readonly sampleRateHz: number;
  readonly container: Container;
  /** what could not be read or was left out; empty when all is there */
  readonly remarks: readonly Notice[];
}

/**
 * Takes sound as it is decoded, so that it is never held whole: one array a channel, the taker's to keep, and the share of the
 * file that has been read, 0..1 (0 where that is not known).
 */
export type TakeSound = (block: readonly Float32Array[], sampleRateHz: number, share: number) => void;

/** What is known of a file besides its samples. */
export type DecodedFacts = Omit<DecodedAudio, 'channels'>;

/** How much of a file is read. */
export interface DecodeLimits {
  /** samples a channel; what comes after is left out, with a remark */
  readonly maxFrames: number;
  /** of more channels (a film's surround, a studio's tracks) the one that sounds is taken alone, with a remark */
  readonly maxChannels: number;
  /** gets all samples instead of the result, which then has none */
  readonly take?: TakeSound;
}
