import type { FileBytes } from './file-bytes.ts';
import { SoundGatherer } from './gather.ts';
import type { Container, DecodedAudio, DecodeLimits } from './types.ts';

/** Bytes at a time: small enough that even silence, which packs a thousandfold, unpacks to little. */
const PIECE_BYTES = 32_768;
/** … of so many that are read at once. */
const READ_BYTES = 64 * PIECE_BYTES;

interface Piece {
  readonly channelData: Float32Array[];
  readonly samplesDecoded: number;
  readonly sampleRate: number;
}

/** What the FLAC and Vorbis decoders have in common. */
interface StreamDecoder {
  readonly ready: Promise<void>;
  decode(bytes: Uint8Array): Promise<Piece>;
  flush(): Promise<Piece>;
  free(): void;
}

/** Feeds a decoder piece by piece, so that a long file can be left early and a broken one keeps what came before. */
export async function decodeStream(
  decoder: StreamDecoder,
  file: FileBytes,
  limits: DecodeLimits,
  container: Container,
  beforeEnd: (gatherer: SoundGatherer) => void = () => undefined,
): Promise<DecodedAudio> {
  await decoder.ready;
  const gatherer = new SoundGatherer(limits);
  const take = ({ channelData, samplesDecoded, sampleRate }: Piece, share: number): boolean =>
    samplesDecoded === 0 || gatherer.push(channelData, sampleRate, share);
  try {
    let wanted = true;
    for (let from = 0; wanted && from < file.size; from += READ_BYTES) {
      const bytes = await file.read(from, from + READ_BYTES);
      for (let at = 0; wanted && at < bytes.length; at += PIECE_BYTES) {
        wanted = take(await decoder.decode(bytes.subarray(at, at + PIECE_BYTES)), (from + at) / file.size);
      }
    }
    if (wanted) take(await decoder.flush(), 1);
  } catch (error) {
    if (gatherer.frames === 0) throw error;
    gatherer.remark({ notice: 'damaged-after' });
  } finally {
    decoder.free();
  }
  if (gatherer.frames > 0) beforeEnd(gatherer);
  return gatherer.finish(container);
}
