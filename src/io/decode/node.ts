import type { AacTrack } from './aac-track.ts';
import { SoundGatherer } from './gather.ts';
import {
  BLOCK_DEFAULTS,
  DECODE_DEFAULTS,
  DecodeError,
  LARGEST_FILE_BYTES,
  decodeBlocks,
  decodeFile,
} from './index.ts';
import type { DecodedAudio, DecodedFacts, DecodeLimits, TakeSound } from './types.ts';

/**
 * The same as decodeFile, and AAC (.m4a, most videos) by a Web Audio implementation for Node where that is installed.
 * AAC is not in decodeFile because no decoder with a permissive licence can be bundled; browsers bring their own.
 */
export async function decodeInNode(bytes: ArrayBuffer, name: string): Promise<DecodedAudio> {
  try {
    return await decodeFile(bytes, name);
  } catch (error) {
    if (!isUnsupported(error)) throw error;
    return aacOr(error, bytes, DECODE_DEFAULTS);
  }
}

/** The same, block by block; `open` gives a taker for each decoder that is tried. */
export async function decodeBlocksInNode(
  file: ArrayBuffer | Blob,
  name: string,
  open: () => TakeSound,
): Promise<DecodedFacts> {
  try {
    return await decodeBlocks(file, name, open());
  } catch (error) {
    if (!isUnsupported(error)) throw error;
    const bytes = file instanceof Blob ? await file.slice(0, LARGEST_FILE_BYTES).arrayBuffer() : file;
    return aacOr(error, bytes, { ...BLOCK_DEFAULTS, take: open() });
  }
}

function isUnsupported(error: unknown): error is DecodeError {
  return error instanceof DecodeError && error.kind === 'unsupported';
}

/** AAC that nothing else here could decode; all else is refused with the error that there was. */
async function aacOr(error: DecodeError, bytes: ArrayBuffer, limits: DecodeLimits): Promise<DecodedAudio> {
  const { readAacTrack } = await import('./aac-track.ts');
  // What is no such container is not for these decoders, and stays refused as it was.
  const track = await readAacTrack(new Uint8Array(bytes), limits.maxFrames).catch(() => null);
  const decoded = track === null ? null : await decodeAac(track, limits);
  if (decoded !== null) return decoded;
  const { trouble } = error;
  throw new DecodeError('unsupported', track === null ? trouble : { trouble: 'page-opens-it', of: trouble });
}

/** Null: no such decoder is installed, or it makes nothing of it. What it made before it broke off is kept. */
async function decodeAac(track: AacTrack, limits: DecodeLimits): Promise<DecodedAudio | null> {
  const { pieces, sampleRateHz, container, skip, frames, remarks } = track;
  const gatherer = new SoundGatherer(limits, skip);
  for (const remark of remarks) gatherer.remark(remark);
  try {
    const { OfflineAudioContext } = await import('node-web-audio-api');
    for (const [index, { adts, drop }] of pieces.entries()) {
      const context = new OfflineAudioContext({ length: 1, sampleRate: sampleRateHz });
      const buffer = await context.decodeAudioData(adts);
      const block = Array.from({ length: buffer.numberOfChannels }, (_, channel) =>
        buffer.getChannelData(channel).slice(drop),
      );
      if (!gatherer.push(block, buffer.sampleRate, (index + 1) / pieces.length)) break;
    }
  } catch {
    if (gatherer.frames <= skip) return null;
    gatherer.remark({ notice: 'damaged-after' });
  }
  return gatherer.finish(container, frames ?? Infinity);
}
