export type * from './types.ts';
export { DecodeError } from './errors.ts';
export type { DecodeFailure } from './errors.ts';
import { DecodeError } from './errors.ts';
import { sniff } from './sniff.ts';
import type { Decodable } from './sniff.ts';
import type { DecodedAudio, DecodedFacts, DecodeLimits, TakeSound } from './types.ts';

/**
 * Half an hour at 48 kHz, two channels: 691 MB of samples, which a browser tab and a small machine can hold. A longer
 * file is read up to there, with a remark.
 */
export const DECODE_DEFAULTS: DecodeLimits = { maxFrames: 30 * 60 * 48_000, maxChannels: 2 };

/**
 * The same for sound that is handed on as it comes and never held: twelve hours at 48 kHz, longer than anybody plays and short
 * enough that a damaged file, which may tell of any length, comes to an end.
 */
export const BLOCK_DEFAULTS: DecodeLimits = { ...DECODE_DEFAULTS, maxFrames: 12 * 3600 * 48_000 };

/** Bytes worth reading of a file: a longer one goes beyond the limit of length in any case but the most lavish. */
export const LARGEST_FILE_BYTES = 768 * 1024 * 1024;

/**
 * The bytes of a sound or video file → its sound at the file's own sample rate. Told by content, not by name; decoders
 * are loaded when they are first needed. Throws DecodeError; the name serves only for its message.
 */
export async function decodeFile(
  bytes: ArrayBuffer,
  name: string,
  limits: Partial<DecodeLimits> = {},
): Promise<DecodedAudio> {
  try {
    return await decodeBytes(new Uint8Array(bytes), { ...DECODE_DEFAULTS, ...limits });
  } catch (cause) {
    if (cause instanceof DecodeError)
      throw new DecodeError(cause.kind, { trouble: 'within', name, of: cause.trouble });
    // What a decoder says of its own insides tells nobody anything.
    throw new DecodeError('damaged', { trouble: 'within', name, of: { trouble: 'file-damaged' } });
  }
}

/** The same, handed on block by block as it is decoded: `take` has the samples, and a long file is never held whole. */
export async function decodeBlocks(bytes: ArrayBuffer, name: string, take: TakeSound): Promise<DecodedFacts> {
  return decodeFile(bytes, name, { ...BLOCK_DEFAULTS, take });
}

async function decodeBytes(bytes: Uint8Array, limits: DecodeLimits): Promise<DecodedAudio> {
  if (bytes.length === 0) {
    throw new DecodeError('empty', { trouble: 'file-empty' });
  }
  const found = sniff(bytes);
  switch (found.format) {
    case 'unknown':
      throw new DecodeError('not-sound', { trouble: 'file-unknown' });
    case 'other': {
      throw new DecodeError(found.isSound ? 'unsupported' : 'not-sound', {
        trouble: 'file-other',
        what: found.what,
      });
    }
    default: {
      const { decode } = await load(found.format);
      return decode(bytes.subarray(found.startByte), limits);
    }
  }
}

/** Loads every decoder, so that all of them are there when the network is not. */
export async function loadDecoders(): Promise<void> {
  await Promise.all([
    ...(['wav', 'aiff', 'caf', 'flac', 'ogg', 'mp3', 'mp4'] as const).map(load),
    import('./opus.ts'),
    import('./vorbis.ts'),
  ]);
}

async function load(format: Decodable) {
  switch (format) {
    case 'wav':
      return import('./wav.ts');
    case 'aiff':
      return import('./aiff.ts');
    case 'caf':
      return import('./caf.ts');
    case 'flac':
      return import('./flac.ts');
    case 'ogg':
      return import('./ogg.ts');
    case 'mp3':
      return import('./mp3.ts');
    case 'matroska':
    case 'mp4':
    case 'adts': {
      const { decodeTrack } = await import('./tracks.ts');
      const container = ({ matroska: 'WebM', mp4: 'MP4', adts: 'AAC' } as const)[format];
      return { decode: (bytes: Uint8Array, limits: DecodeLimits) => decodeTrack(bytes, limits, container) };
    }
  }
}
