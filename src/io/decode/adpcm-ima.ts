import { packedPieces } from './pieces.ts';
import type { PieceDecoder } from './pieces.ts';

/**
 * IMA ADPCM: four bits a sample say by how many steps it differs from what was predicted, and steps grow and shrink with them
 * ("Recommended Practices for Enhancing Digital Audio Compatibility in Multimedia Systems", revision 3.00, Interactive
 * Multimedia Association, 1992, section 6: the 89 steps and what each code adds to the place among them).
 */
const STEPS: readonly number[] = [
  7, 8, 9, 10, 11, 12, 13, 14, 16, 17, 19, 21, 23, 25, 28, 31, 34, 37, 41, 45, 50, 55, 60, 66, 73, 80, 88, 97,
  107, 118, 130, 143, 157, 173, 190, 209, 230, 253, 279, 307, 337, 371, 408, 449, 494, 544, 598, 658, 724,
  796, 876, 963, 1060, 1166, 1282, 1411, 1552, 1707, 1878, 2066, 2272, 2499, 2749, 3024, 3327, 3660, 4026,
  4428, 4871, 5358, 5894, 6484, 7132, 7845, 8630, 9493, 10_442, 11_487, 12_635, 13_899, 15_289, 16_818,
  18_500, 20_350, 22_385, 24_623, 27_086, 29_794, 32_767,
];
const MOVES: readonly number[] = [-1, -1, -1, -1, 2, 4, 6, 8];
const FULL_SCALE = 32_768;

/** Where a channel stands between two samples. */
interface State {
  /** the last sample, 16 bits */
  last: number;
  /** place among the steps, 0..88 */
  step: number;
}

/** Takes one code of four bits; the new sample, 16 bits. */
function advance(state: State, code: number): number {
  const step = STEPS[state.step]!;
  let difference = step >> 3;
  if (code & 1) difference += step >> 2;
  if (code & 2) difference += step >> 1;
  if (code & 4) difference += step;
  const next = code & 8 ? state.last - difference : state.last + difference;
  state.last = Math.min(Math.max(next, -FULL_SCALE), FULL_SCALE - 1);
  state.step = Math.min(Math.max(state.step + MOVES[code & 7]!, 0), STEPS.length - 1);
  return state.last;
}

/** A place among the steps that a header claims, kept within them: damage says more. */
const placeOf = (claimed: number): number => Math.min(claimed, STEPS.length - 1);

/**
 * As WAV has it (tag 0x11; "New Multimedia Data Types and Data Techniques" 3.0, 1994): blocks that begin, channel by channel,
 * with a sample of 16 bits and the step, then eight codes a channel in turn, the low half of a byte first. Null where such
 * blocks cannot be.
 */
export function imaBlocks(channels: number, blockBytes: number): PieceDecoder | null {
  const headBytes = 4 * channels;
  const rounds = Math.floor((blockBytes - headBytes) / headBytes);
  if (channels < 1 || rounds < 0) return null;
  const pieceFrames = 1 + 8 * rounds;
  return packedPieces({ channels, pieceBytes: blockBytes, pieceFrames }, (view, from, channel, out, to) => {
    let at = from + 4 * channel;
    const state: State = { last: view.getInt16(at, true), step: placeOf(view.getUint8(at + 2)) };
    out[to++] = state.last / FULL_SCALE;
    for (let round = 0; round < rounds; round++) {
      at += headBytes;
      for (let byte = 0; byte < 4; byte++) {
        const codes = view.getUint8(at + byte);
        out[to++] = advance(state, codes & 15) / FULL_SCALE;
        out[to++] = advance(state, codes >> 4) / FULL_SCALE;
      }
    }
  });
}

const PACKET_BYTES = 34;
const PACKET_FRAMES = 64;

/**
 * As QuickTime, AIFF and Core Audio files have it ("ima4"; QuickTime File Format Specification, "IMA, uLaw, and aLaw"): packets
 * of 34 bytes, channel by channel: nine bits of the sample, seven of the step, then 64 codes, the low half of a byte first. Nine
 * bits are the sample only roughly: where the channel's own last sample agrees with them, it goes on from that.
 */
export function imaPackets(channels: number): PieceDecoder | null {
  if (channels < 1) return null;
  const states = Array.from({ length: channels }, (): State => ({ last: 0, step: 0 }));
  const shape = { channels, pieceBytes: PACKET_BYTES * channels, pieceFrames: PACKET_FRAMES };
  return packedPieces(shape, (view, from, channel, out, to) => {
    const at = from + channel * PACKET_BYTES;
    const state = states[channel]!;
    const rough = view.getInt16(at) & ~0x7f;
    const step = placeOf(view.getUint8(at + 1) & 0x7f);
    if (step !== state.step || Math.abs(rough - state.last) > 0x7f) state.last = rough;
    state.step = step;
    for (let i = 0; i < PACKET_FRAMES; i++) {
      const codes = view.getUint8(at + 2 + (i >> 1));
      out[to + i] = advance(state, i % 2 === 0 ? codes & 15 : codes >> 4) / FULL_SCALE;
    }
  });
}
