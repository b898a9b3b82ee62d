import { packedPieces } from './pieces.ts';
import type { PieceDecoder } from './pieces.ts';

/**
 * ADPCM of WAV tag 2: each sample is foretold from the two before it by one of seven pairs of weights, and four bits say by how
 * many steps that was wrong ("New Multimedia Data Types and Data Techniques" 3.0, 1994, "Microsoft ADPCM": weights and how
 * a step grows, both of 256).
 */
const WEIGHTS: readonly (readonly [last: number, before: number])[] = [
  [256, 0],
  [512, -256],
  [0, 0],
  [192, 64],
  [240, 0],
  [460, -208],
  [392, -232],
];
const GROWTH: readonly number[] = [
  230, 230, 230, 230, 307, 409, 512, 614, 768, 614, 512, 409, 307, 230, 230, 230,
];
const SMALLEST_STEP = 16;
/** No step of 16 bits is larger; damage would grow without end. */
const LARGEST_STEP = 1 << 20;
const FULL_SCALE = 32_768;
/** a channel: which weights, the step, two samples */
const HEAD_BYTES = 7;

/** Blocks of one or two channels → their decoder: codes alternate between the channels, the high half of a byte first. Null where such blocks cannot be. */
export function msBlocks(channels: number, blockBytes: number): PieceDecoder | null {
  const headBytes = HEAD_BYTES * channels;
  if (channels < 1 || channels > 2 || blockBytes < headBytes) return null;
  const pieceFrames = 2 + Math.floor((2 * (blockBytes - headBytes)) / channels);
  const shape = { channels, pieceBytes: blockBytes, pieceFrames };
  return packedPieces(shape, (view, from, channel, out, to) =>
    decodeBlock(view, from, { channel, channels }, out, to, pieceFrames),
  );
}

function decodeBlock(
  view: DataView,
  from: number,
  { channel, channels }: { readonly channel: number; readonly channels: number },
  out: Float32Array,
  to: number,
  frames: number,
): void {
  const int16 = (place: number): number =>
    view.getInt16(from + channels + 2 * (place * channels + channel), true);
  // A number of weights that is not among the seven is damage.
  const [forLast, forBefore] = WEIGHTS[view.getUint8(from + channel)] ?? WEIGHTS[0]!;
  let step = int16(0);
  let last = int16(1);
  let before = int16(2);
  out[to] = before / FULL_SCALE;
  out[to + 1] = last / FULL_SCALE;
  const codesAt = from + HEAD_BYTES * channels;
  for (let i = 2; i < frames; i++) {
    const place = (i - 2) * channels + channel;
    const codes = view.getUint8(codesAt + (place >> 1));
    const code = place % 2 === 0 ? codes >> 4 : codes & 15;
    const foretold = Math.trunc((last * forLast + before * forBefore) / 256);
    const next = foretold + (code < 8 ? code : code - 16) * step;
    before = last;
    last = Math.min(Math.max(next, -FULL_SCALE), FULL_SCALE - 1);
    step = Math.min(Math.max((GROWTH[code]! * step) >> 8, SMALLEST_STEP), LARGEST_STEP);
    out[to + i] = last / FULL_SCALE;
  }
}
