import { EvenfallError } from '../troubles/index.ts';
import {
  AudioSample,
  AudioSampleSource,
  BufferTarget,
  canEncodeAudio,
  Output,
  WebMOutputFormat,
} from 'mediabunny';

/** Rates that Opus takes as they are (RFC 6716, 2.1.3); any other is brought to 48 kHz by the encoder of the browser. */
const OPUS_RATE_HZ = 48_000;

/** Whether this browser can write Opus. */
export function canEncodeOpus(bitsPerSec: number): Promise<boolean> {
  return canEncodeAudio('opus', { numberOfChannels: 1, sampleRate: OPUS_RATE_HZ, bitrate: bitsPerSec });
}

/** How much is given to the encoder at a time, so that it is never far behind, seconds. */
const PIECE_SEC = 1;

/** One channel → Opus in WebM; throws where the browser's encoder fails. */
export async function encodeOpus(
  channel: Float32Array,
  sampleRateHz: number,
  bitsPerSec: number,
): Promise<Uint8Array<ArrayBuffer>> {
  const target = new BufferTarget();
  const output = new Output({ format: new WebMOutputFormat(), target });
  const source = new AudioSampleSource({ codec: 'opus', bitrate: bitsPerSec });
  output.addAudioTrack(source);
  try {
    await output.start();
    const piece = Math.round(PIECE_SEC * sampleRateHz);
    for (let from = 0; from < channel.length; from += piece) {
      const data = channel.slice(from, from + piece);
      const sample = new AudioSample({
        data,
        format: 'f32',
        numberOfChannels: 1,
        sampleRate: sampleRateHz,
        timestamp: from / sampleRateHz,
      });
      try {
        await source.add(sample);
      } finally {
        sample.close();
      }
    }
    await output.finalize();
  } catch (cause) {
    await output.cancel().catch(() => undefined);
    throw cause;
  }
  if (target.buffer === null) throw new EvenfallError({ trouble: 'not-encoded' });
  return new Uint8Array(target.buffer);
}
