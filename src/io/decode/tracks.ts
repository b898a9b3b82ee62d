import {
  AdtsInputFormat,
  EncodedPacketSink,
  Input,
  Logging,
  LogLevel,
  MatroskaInputFormat,
  Mp4InputFormat,
  QuickTimeInputFormat,
  WebMInputFormat,
} from 'mediabunny';
import type { InputAudioTrack } from 'mediabunny';
import { DecodeError } from './errors.ts';
import { SoundGatherer } from './gather.ts';
import { isCutShort } from './mp4-boxes.ts';
import { openPackets } from './packets.ts';
import type { Container, DecodedAudio, DecodeLimits } from './types.ts';
import { watchedSource } from './watched-source.ts';

/** A hole in a recording longer than this is filled with silence, so that what follows keeps its time. */
const SMALLEST_GAP_SEC = 0.03;
/** … up to this: a damaged file may tell of any time. */
const LARGEST_GAP_SEC = 60;

/** The first sound track of a container (WebM, Matroska, MP4, QuickTime, ADTS) → sound, its packets placed in time. */
export async function decodeTrack(
  bytes: Uint8Array,
  limits: DecodeLimits,
  container: Container,
): Promise<DecodedAudio> {
  const track = await openTrack(bytes);
  const codec = await openPackets(track);
  const shareAt = await shareOf(track);
  const gatherer = new SoundGatherer(limits);
  let firstSec: number | null = null;
  let endSec = 0;
  try {
    for await (const packet of new EncodedPacketSink(track).packets()) {
      if (firstSec === null) {
        firstSec = packet.timestamp;
        gatherer.leaveOut(Math.max(codec.preSkip, Math.round(-firstSec * codec.sampleRateHz)));
      }
      const block = codec.decode(packet.data);
      const gapSec = packet.timestamp - firstSec - gatherer.frames / codec.sampleRateHz;
      if (gapSec > SMALLEST_GAP_SEC && block.length > 0) {
        const filledSec = Math.min(gapSec, LARGEST_GAP_SEC);
        firstSec += gapSec - filledSec;
        const silence = Math.round(filledSec * codec.sampleRateHz);
        if (
          !gatherer.push(
            block.map(() => new Float32Array(silence)),
            codec.sampleRateHz,
          )
        )
          break;
        gatherer.remark({ notice: 'holes-filled' });
      }
      endSec = packet.timestamp + packet.duration;
      if (!gatherer.push(block, codec.sampleRateHz, shareAt(endSec))) break;
    }
  } catch (error) {
    if (gatherer.frames === 0) throw error;
    gatherer.remark({ notice: 'damaged-after' });
  } finally {
    codec.free();
  }
  // MP4 knows how long its last packet sounds; the others do not say.
  const frames =
    container === 'MP4' ? Math.round((endSec - Math.max(firstSec ?? 0, 0)) * codec.sampleRateHz) : Infinity;
  return gatherer.finish(container, frames > 0 ? frames : Infinity);
}

/** How much of a track lies before a moment, 0..1, by the length that its file tells; 0 where it tells none. */
export async function shareOf(track: InputAudioTrack): Promise<(timeSec: number) => number> {
  const durationSec = (await track.getDurationFromMetadata().catch(() => null)) ?? Infinity;
  return (timeSec) => Math.min(Math.max(timeSec / durationSec, 0), 1);
}

/** The first sound track of a container; throws DecodeError where there is none. */
export async function openTrack(bytes: Uint8Array): Promise<InputAudioTrack> {
  if (isCutShort(bytes)) {
    throw new DecodeError('damaged', { trouble: 'end-cut-off' });
  }
  // What it would print is said in our own words.
  Logging.level = LogLevel.Silent;
  const formats = [
    new WebMInputFormat(),
    new MatroskaInputFormat(),
    new Mp4InputFormat(),
    new QuickTimeInputFormat(),
    new AdtsInputFormat(),
  ];
  const input = new Input({ formats, source: watchedSource(bytes) });
  const track = await input.getPrimaryAudioTrack().catch((cause: unknown) => {
    if (cause instanceof DecodeError) throw cause;
    throw new DecodeError('damaged', { trouble: 'contents-damaged' });
  });
  if (track === null) {
    throw new DecodeError('no-sound-track', { trouble: 'no-sound-track' });
  }
  return track;
}

/** The sample rate of the first sound track; null where there is none or the container is not known. */
export async function rateOfTrack(bytes: Uint8Array): Promise<number | null> {
  try {
    return (await openTrack(bytes)).sampleRate;
  } catch {
    return null;
  }
}
