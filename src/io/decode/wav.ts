import { CONVERT, DecodeError } from './errors.ts';
import { SoundGatherer } from './gather.ts';
import { isReadable, readPcm } from './pcm.ts';
import type { PcmLayout } from './pcm.ts';
import type { DecodedAudio, DecodeLimits } from './types.ts';

/** wFormatTag values (Multimedia Programming Interface 1991; WAVE_FORMAT_EXTENSIBLE of 1998). */
const FORMAT_PCM = 1;
const FORMAT_FLOAT = 3;
const FORMAT_EXTENSIBLE = 0xfffe;

/** Chunk sizes that say "not known": a recorder that never came to finish its header, or a 64-bit file. */
const UNKNOWN_SIZES: readonly number[] = [0, 0xffffffff];

/** Samples a channel converted at a time. */
const BLOCK_FRAMES = 1 << 20;

/**
 * WAV (RIFF, RF64, BW64) → sound: 8-bit unsigned, 16/24/32-bit integer, 32/64-bit floating point, plain or extensible.
 * A file cut short gives what is there, with a remark.
 */
export async function decode(bytes: Uint8Array, limits: DecodeLimits): Promise<DecodedAudio> {
  const chunks = readChunks(bytes);
  const format = chunks.get('fmt ');
  const data = chunks.get('data');
  if (format === undefined || format.bytes.length < 16) {
    throw new DecodeError(
      'damaged',
      'The WAV header is cut short: the file is damaged. Record or export it again.',
    );
  }
  if (data === undefined) {
    throw new DecodeError('damaged', 'It is a WAV file without any sound in it. Record or export it again.');
  }
  const { layout, sampleRateHz } = readFormat(format.bytes);
  const gatherer = new SoundGatherer(limits);
  const frameBytes = layout.channels * layout.bytesPerSample;
  const step = BLOCK_FRAMES * frameBytes;
  for (let at = 0; at < data.bytes.length; at += step) {
    const block = readPcm(data.bytes.subarray(at, at + step), layout);
    if (!gatherer.push(block, sampleRateHz, Math.min((at + step) / data.bytes.length, 1))) break;
  }
  if (data.missingBytes >= frameBytes && gatherer.frames < limits.maxFrames) {
    const seconds = (count: number): string => (count / frameBytes / sampleRateHz).toFixed(1);
    const whole = seconds(data.bytes.length + data.missingBytes);
    gatherer.remark(`The file breaks off: ${seconds(data.bytes.length)} s of ${whole} s are there.`);
  }
  return gatherer.finish('WAV');
}

interface Chunk {
  readonly bytes: Uint8Array;
  /** by how much the file is shorter than the chunk says */
  readonly missingBytes: number;
}

/** The first chunk of each name, up to and with "data". Chunks are padded to even length; some writers forget it. */
function readChunks(bytes: Uint8Array): Map<string, Chunk> {
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  const chunks = new Map<string, Chunk>();
  let at = 12;
  while (at + 8 <= bytes.length && !chunks.has('data')) {
    const name = String.fromCharCode(...bytes.subarray(at, at + 4));
    const said = view.getUint32(at + 4, true);
    const start = at + 8;
    const there = bytes.length - start;
    const unknown = name === 'data' && UNKNOWN_SIZES.includes(said);
    const size = unknown ? (dataSize64(chunks.get('ds64')) ?? there) : said;
    if (!chunks.has(name)) {
      const part = bytes.subarray(start, start + Math.min(size, there));
      chunks.set(name, { bytes: part, missingBytes: Math.max(size - there, 0) });
    }
    const end = start + size;
    at = size % 2 === 1 && !(isChunkName(bytes, end) && !isChunkName(bytes, end + 1)) ? end + 1 : end;
  }
  return chunks;
}

/** Length of the data as the "ds64" chunk of a 64-bit file tells it (EBU Tech 3306, section 3); null without one. */
function dataSize64(chunk: Chunk | undefined): number | null {
  if (chunk === undefined || chunk.bytes.length < 16) return null;
  const { buffer, byteOffset } = chunk.bytes;
  const size = Number(new DataView(buffer, byteOffset).getBigUint64(8, true));
  return size > 0 && Number.isSafeInteger(size) ? size : null;
}

function isChunkName(bytes: Uint8Array, at: number): boolean {
  const name = bytes.subarray(at, at + 4);
  return name.length === 4 && name.every((code) => code >= 0x20 && code < 0x7f);
}

function readFormat(bytes: Uint8Array): { readonly layout: PcmLayout; readonly sampleRateHz: number } {
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  const tag = view.getUint16(0, true);
  // The subformat's first two bytes are the tag that a plain header would have had (WAVEFORMATEXTENSIBLE).
  const format = tag === FORMAT_EXTENSIBLE && bytes.length >= 26 ? view.getUint16(24, true) : tag;
  const channels = view.getUint16(2, true);
  const sampleRateHz = view.getUint32(4, true);
  const bytesPerSample = Math.ceil(view.getUint16(14, true) / 8);
  if (format !== FORMAT_PCM && format !== FORMAT_FLOAT) {
    const code = `0x${format.toString(16)}`;
    throw new DecodeError('unsupported', `It is a WAV file with packed sound (format ${code}). ${CONVERT}`);
  }
  const encoding = format === FORMAT_FLOAT ? 'float' : bytesPerSample === 1 ? 'unsigned' : 'signed';
  const layout: PcmLayout = { encoding, bytesPerSample, littleEndian: true, channels };
  if (channels === 0 || sampleRateHz === 0 || !isReadable(layout)) {
    const what = `${channels} channels, ${sampleRateHz} Hz, ${bytesPerSample * 8} bits`;
    throw new DecodeError('damaged', `Its WAV header makes no sense (${what}): the file is damaged.`);
  }
  return { layout, sampleRateHz };
}
