import { SoundGatherer } from './gather.ts';
import { DECODE_DEFAULTS, DecodeError, decodeFile } from './index.ts';
import type { DecodedAudio } from './types.ts';

/** Rates to decode at where the file does not say its own, Hz: what nearly all recordings have. */
const FALLBACK_RATE_HZ = 48_000;

/**
 * The same as decodeFile, and what it does not know (AAC, for one) goes to the browser's own decoder. The browser gives
 * every file at the rate of its context, so the context is opened at the file's own rate where that can be found.
 */
export async function decodeInBrowser(bytes: ArrayBuffer, name: string): Promise<DecodedAudio> {
  try {
    return await decodeFile(bytes, name);
  } catch (error) {
    if (!(error instanceof DecodeError) || error.kind === 'empty') throw error;
    const decoded = await decodeByBrowser(bytes);
    if (decoded === null) throw error;
    return decoded;
  }
}

/** The browser's own decoder, which only a page has (workers have none); null where it cannot read the file either. */
export async function decodeByBrowser(bytes: ArrayBuffer): Promise<DecodedAudio | null> {
  const { rateOfTrack } = await import('./tracks.ts');
  const sampleRateHz = (await rateOfTrack(new Uint8Array(bytes))) ?? FALLBACK_RATE_HZ;
  try {
    const context = new OfflineAudioContext({ length: 1, sampleRate: sampleRateHz });
    // The browser takes the bytes away; the caller keeps its own.
    const buffer = await context.decodeAudioData(bytes.slice(0));
    const gatherer = new SoundGatherer(DECODE_DEFAULTS);
    const channels = Array.from({ length: buffer.numberOfChannels }, (_, i) => buffer.getChannelData(i));
    gatherer.push(channels, buffer.sampleRate);
    return gatherer.finish('browser');
  } catch {
    return null;
  }
}

/** Whether this browser reads AAC, most M4A files: the one kind that is left to it. */
export const readsAac = (): boolean =>
  document.createElement('audio').canPlayType('audio/mp4; codecs="mp4a.40.2"') !== '';
