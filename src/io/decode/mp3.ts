import { MPEGDecoder } from 'mpg123-decoder';
import { DecodeError } from './errors.ts';
import { SoundGatherer } from './gather.ts';
import { mpegFrameAt } from './mpeg-frames.ts';
import type { DecodedAudio, DecodeLimits } from './types.ts';

/** Bytes handed over at a time: whole frames, so that a long file can be left early. */
const BATCH_BYTES = 32_768;

/**
 * MP3 (MPEG-1/2/2.5 audio) → sound. Only whole, plausible frames reach the decoder: on anything else it can loop for
 * ever. The encoder's own delay is taken off where the file tells it (the tag in its first frame).
 */
export async function decode(bytes: Uint8Array, limits: DecodeLimits): Promise<DecodedAudio> {
  const decoder = new MPEGDecoder();
  await decoder.ready;
  const gatherer = new SoundGatherer(limits);
  const first = firstFrame(bytes);
  try {
    for (const batch of batchesOfFrames(bytes, first.sampleRateHz)) {
      const { channelData, samplesDecoded } = decoder.decode(batch);
      const block = first.channels === 1 ? channelData.slice(0, 1) : channelData;
      const share = (batch.byteOffset + batch.length - bytes.byteOffset) / bytes.length;
      if (samplesDecoded > 0 && !gatherer.push(block, first.sampleRateHz, share)) break;
    }
  } finally {
    decoder.free();
  }
  return gatherer.finish('MP3');
}

function firstFrame(bytes: Uint8Array) {
  for (let at = 0; at < bytes.length; at++) {
    const frame = mpegFrameAt(bytes, at);
    if (frame !== null) return frame;
  }
  throw new DecodeError('damaged', { trouble: 'no-mp3-frame' });
}

/** Runs of whole frames of one sample rate; what lies between (tags, damage) is passed over. */
function* batchesOfFrames(bytes: Uint8Array, sampleRateHz: number): Generator<Uint8Array> {
  let from = 0;
  let at = 0;
  while (at < bytes.length) {
    const frame = mpegFrameAt(bytes, at);
    const fits = frame !== null && frame.sampleRateHz === sampleRateHz && at + frame.bytes <= bytes.length;
    if (fits && at - from < BATCH_BYTES) {
      at += frame.bytes;
      continue;
    }
    if (at > from) yield bytes.subarray(from, at);
    if (!fits) at++;
    from = at;
  }
  if (at > from) yield bytes.subarray(from, at);
}
