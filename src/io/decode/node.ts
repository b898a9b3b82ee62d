import { handOn } from './hand-on.ts';
import { DECODE_DEFAULTS, DecodeError, decodeBlocks, decodeFile } from './index.ts';
import type { AacTrack } from './aac-track.ts';
import type { DecodedAudio, DecodedFacts, TakeSound } from './types.ts';

/**
 * The same as decodeFile, and AAC (.m4a, most videos) by a Web Audio implementation for Node where that is installed.
 * AAC is not in decodeFile because no decoder with a permissive licence can be bundled; browsers bring their own.
 */
export async function decodeInNode(bytes: ArrayBuffer, name: string): Promise<DecodedAudio> {
  try {
    return await decodeFile(bytes, name);
  } catch (error) {
    return aacOr(error, bytes);
  }
}

/** The same, block by block; `open` gives a taker for each decoder that is tried. */
export async function decodeBlocksInNode(
  bytes: ArrayBuffer,
  name: string,
  open: () => TakeSound,
): Promise<DecodedFacts> {
  try {
    return await decodeBlocks(bytes, name, open());
  } catch (error) {
    const audio = await aacOr(error, bytes);
    handOn(audio, open());
    return audio;
  }
}

/** AAC that nothing else here could decode; all else is refused with the error that there was. */
async function aacOr(error: unknown, bytes: ArrayBuffer): Promise<DecodedAudio> {
  if (!(error instanceof DecodeError) || error.kind !== 'unsupported') throw error;
  const { readAacTrack } = await import('./aac-track.ts');
  const track = await readAacTrack(new Uint8Array(bytes), DECODE_DEFAULTS.maxFrames);
  const decoded = track === null ? null : await decodeAac(track);
  if (decoded !== null) return decoded;
  const page = 'The browser page can open it too.';
  throw new DecodeError('unsupported', track === null ? error.message : `${error.message} ${page}`);
}

async function decodeAac(track: AacTrack): Promise<DecodedAudio | null> {
  try {
    const { OfflineAudioContext } = await import('node-web-audio-api');
    const context = new OfflineAudioContext({ length: 1, sampleRate: track.sampleRateHz });
    const buffer = await context.decodeAudioData(track.adts);
    const end = Math.min(track.skip + (track.frames ?? Infinity), buffer.getChannelData(0).length);
    const channels = Array.from({ length: Math.min(buffer.numberOfChannels, 2) }, (_, channel) =>
      buffer.getChannelData(channel).slice(track.skip, end),
    );
    if (channels[0] === undefined || channels[0].length === 0) return null;
    return { channels, sampleRateHz: buffer.sampleRate, container: track.container, remarks: track.remarks };
  } catch {
    return null;
  }
}
