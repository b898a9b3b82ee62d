import { AudioSampleSink } from 'mediabunny';
import { SoundGatherer } from './gather.ts';
import { openTrack, shareOf } from './tracks.ts';
import type { Container, DecodedFacts, DecodeLimits } from './types.ts';

/** The browser's decoders as workers have them (WebCodecs): AAC, for one; null where there is none for this file. */
export async function decodeByWebCodecs(
  bytes: Uint8Array,
  limits: DecodeLimits,
  container: Container,
): Promise<DecodedFacts | null> {
  if (!('AudioDecoder' in globalThis)) return null;
  const track = await openTrack(bytes);
  if (!(await track.canDecode())) return null;
  const shareAt = await shareOf(track);
  const gatherer = new SoundGatherer(limits);
  let begun = false;
  for await (const sample of new AudioSampleSink(track).samples()) {
    const { timestamp, sampleRate, numberOfFrames, numberOfChannels } = sample;
    // What lies before time 0 is the encoder's own start and no part of the recording (the edit list of the file says so).
    if (!begun) gatherer.leaveOut(Math.max(0, Math.round(-timestamp * sampleRate)));
    begun = true;
    const block = Array.from({ length: numberOfChannels }, (_, planeIndex) => {
      const channel = new Float32Array(numberOfFrames);
      sample.copyTo(channel, { planeIndex, format: 'f32-planar' });
      return channel;
    });
    sample.close();
    if (!gatherer.push(block, sampleRate, shareAt(timestamp))) break;
  }
  return gatherer.finish(container);
}
