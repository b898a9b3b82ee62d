export type * from './types.ts';
export { DecodeError } from './errors.ts';
export type { DecodeFailure } from './errors.ts';
export { inMemory, onDisk } from './file-bytes.ts';
export type { FileBytes } from './file-bytes.ts';
import { DecodeError } from './errors.ts';
import { inMemory, onDisk, partOf } from './file-bytes.ts';
import type { FileBytes } from './file-bytes.ts';
import { sniff } from './sniff.ts';
import type { Decodable } from './sniff.ts';
import type { Container, DecodedAudio, DecodedFacts, DecodeLimits, TakeSound } from './types.ts';

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

/** Bytes worth holding of a file: a longer one goes beyond the limit of length in any case but the most lavish. */
export const LARGEST_FILE_BYTES = 768 * 1024 * 1024;

/** A file is told by so many of its first bytes. */
const HEAD_BYTES = 70_000;

/**
 * The bytes of a sound or video file → its sound at the file's own sample rate. Told by content, not by name; decoders
 * are loaded when they are first needed. Throws DecodeError; the name serves only for its message.
 */
export async function decodeFile(
  bytes: ArrayBuffer,
  name: string,
  limits: Partial<DecodeLimits> = {},
): Promise<DecodedAudio> {
  return decodeFrom(inMemory(new Uint8Array(bytes)), name, { ...DECODE_DEFAULTS, ...limits });
}

/**
 * The same, handed on block by block as it is decoded: `take` has the samples, and long sound is never held whole. Plain samples,
 * ADPCM and FLAC are read from a file as they are wanted; of all else, which is packed small, the bytes are held.
 */
export async function decodeBlocks(
  file: ArrayBuffer | Blob,
  name: string,
  take: TakeSound,
): Promise<DecodedFacts> {
  const bytes = file instanceof Blob ? onDisk(file) : inMemory(new Uint8Array(file));
  return decodeFrom(bytes, name, { ...BLOCK_DEFAULTS, take });
}

async function decodeFrom(file: FileBytes, name: string, limits: DecodeLimits): Promise<DecodedAudio> {
  try {
    return await decodeKnown(file, limits);
  } catch (cause) {
    if (cause instanceof DecodeError)
      throw new DecodeError(cause.kind, { trouble: 'within', name, of: cause.trouble });
    // What a decoder says of its own insides tells nobody anything.
    throw new DecodeError('damaged', { trouble: 'within', name, of: { trouble: 'file-damaged' } });
  }
}

async function decodeKnown(file: FileBytes, limits: DecodeLimits): Promise<DecodedAudio> {
  if (file.size === 0) {
    throw new DecodeError('empty', { trouble: 'file-empty' });
  }
  const found = sniff(await beginningOf(file));
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
      const decode = await DECODERS[found.format]();
      return decode(partOf(file, found.startByte, Infinity), limits);
    }
  }
}

/** As much as tells what it is: what an MP3 has in front of it (title, pictures) may be of any length. */
async function beginningOf(file: FileBytes): Promise<Uint8Array> {
  const head = await file.read(0, HEAD_BYTES);
  return String.fromCharCode(...head.subarray(0, 3)) === 'ID3' ? whole(file) : head;
}

function whole(file: FileBytes): Promise<Uint8Array> {
  return file.read(0, LARGEST_FILE_BYTES);
}

/** One decoder: the bytes of its own format → sound. Throws DecodeError. */
type Decode<Bytes> = (file: Bytes, limits: DecodeLimits) => Promise<DecodedAudio>;

const ofWhole =
  (decode: Decode<Uint8Array>): Decode<FileBytes> =>
  async (file, limits) =>
    decode(await whole(file), limits);

const ofTrack = (container: Container) => async (): Promise<Decode<FileBytes>> => {
  const { decodeTrack } = await import('./tracks.ts');
  return ofWhole((bytes, limits) => decodeTrack(bytes, limits, container));
};

const DECODERS: Readonly<Record<Decodable, () => Promise<Decode<FileBytes>>>> = {
  wav: async () => (await import('./wav.ts')).decode,
  aiff: async () => (await import('./aiff.ts')).decode,
  caf: async () => (await import('./caf.ts')).decode,
  flac: async () => (await import('./flac.ts')).decode,
  ogg: async () => ofWhole((await import('./ogg.ts')).decode),
  mp3: async () => ofWhole((await import('./mp3.ts')).decode),
  matroska: ofTrack('WebM'),
  mp4: ofTrack('MP4'),
  adts: ofTrack('AAC'),
};

/** Loads every decoder, so that all of them are there when the network is not. */
export async function loadDecoders(): Promise<void> {
  await Promise.all([
    ...Object.values(DECODERS).map((load) => load()),
    import('./opus.ts'),
    import('./vorbis.ts'),
  ]);
}
