import { describe, expect, it } from 'vitest';
import { imaBlocks, imaPackets } from '../../src/io/decode/adpcm-ima.ts';
import { msBlocks } from '../../src/io/decode/adpcm-ms.ts';
import { A_LAW, MU_LAW } from '../../src/io/decode/g711.ts';

/** Values in units of the standard: µ-law of 14 bits, A-law of 13. */
const inUnits = (samples: Float32Array, fullScale: number, code: number): number =>
  Math.round(samples[code]! * fullScale * 1e6) / 1e6;

/**
 * ITU-T G.711 (1988), tables 1a and 2a, "quantized value at the decoder output" y: the first of each segment, the largest and
 * the smallest. The character signals are those sent on the line (A-law: with even bits inverted). Written down from memory of
 * the tables and agreeing with libavcodec 59, bit for bit, on all 256 codes.
 */
describe('G.711', () => {
  it.each([
    { code: 0b1000_0000, value: 8031 },
    { code: 0b1000_1111, value: 4191 },
    { code: 0b1001_1111, value: 2079 },
    { code: 0b1010_1111, value: 1023 },
    { code: 0b1011_1111, value: 495 },
    { code: 0b1100_1111, value: 231 },
    { code: 0b1101_1111, value: 99 },
    { code: 0b1110_1111, value: 33 },
    { code: 0b1111_1110, value: 2 },
    { code: 0b1111_1111, value: 0 },
    { code: 0b0000_0000, value: -8031 },
    { code: 0b0111_1110, value: -2 },
  ])('µ-law $code is $value of 8192', ({ code, value }) => {
    expect(inUnits(MU_LAW, 8192, code)).toBe(value);
  });

  it.each([
    { code: 0b1010_1010, value: 4032 },
    { code: 0b1010_0101, value: 2112 },
    { code: 0b1011_0101, value: 1056 },
    { code: 0b1000_0101, value: 528 },
    { code: 0b1001_0101, value: 264 },
    { code: 0b1110_0101, value: 132 },
    { code: 0b1111_0101, value: 66 },
    { code: 0b1101_0101, value: 1 },
    { code: 0b0010_1010, value: -4032 },
    { code: 0b0101_0101, value: -1 },
  ])('A-law $code is $value of 4096', ({ code, value }) => {
    expect(inUnits(A_LAW, 4096, code)).toBe(value);
  });

  it('has a mirror image of each positive code', () => {
    for (let code = 0; code < 128; code++) {
      expect(MU_LAW[code]! + MU_LAW[code + 128]!).toBe(0);
      expect(A_LAW[code]! + A_LAW[code + 128]!).toBe(0);
    }
  });
});

const units = (block: readonly Float32Array[], channel = 0): readonly number[] =>
  [...block[channel]!].map((value) => Math.round(value * 32_768));

describe('IMA ADPCM (Recommended Practices 3.00, 1992, section 6)', () => {
  /**
   * Worked by the document's own rule, from sample 0 and step 0 (7): code 7 adds 0 + 1 + 3 + 7 = 11 and goes up 8 places
   * (step 16); code 7 adds 2 + 4 + 8 + 16 = 30, step 34; code 15 takes 4 + 8 + 17 + 34 = 63; step 73; code 0 adds 9, step 66.
   */
  const CODES = [7, 7, 15, 0, 0, 0, 0, 0];
  const SAMPLES = [0, 11, 41, -22, -13];

  it('in blocks of a WAV file, the low half of a byte first', () => {
    const decoder = imaBlocks(1, 8)!;
    expect(decoder.pieceFrames).toBe(9);
    const bytes = Uint8Array.of(0, 0, 0, 0, CODES[0]! | (CODES[1]! << 4), CODES[2]! | (CODES[3]! << 4), 0, 0);
    expect(units(decoder.decode(bytes)).slice(0, 5)).toEqual(SAMPLES);
  });

  it('in packets of a QuickTime file, which have no sample of their own at the start', () => {
    const bytes = new Uint8Array(34);
    bytes.set([0, 0, CODES[0]! | (CODES[1]! << 4), CODES[2]! | (CODES[3]! << 4)]);
    const decoded = units(imaPackets(1)!.decode(bytes));
    expect(decoded).toHaveLength(64);
    expect(decoded.slice(0, 4)).toEqual(SAMPLES.slice(1));
  });

  it('never leaves 16 bits nor its 89 steps, whatever the codes', () => {
    const bytes = new Uint8Array(2048).fill(0x77);
    bytes.set([0, 0, 200, 0]);
    const decoded = units(imaBlocks(1, 2048)!.decode(bytes));
    expect(Math.max(...decoded)).toBe(32_767);
  });
});

describe('ADPCM of WAV tag 2 (New Multimedia Data Types 3.0, 1994)', () => {
  it('foretells from two samples, and its step grows by the table', () => {
    // Weights 512, −256: a line through the last two samples, 100 and 110. Step 16. Code 1: 120 + 16 = 136, step 230/256 of 16
    // is under the least, 16. Code −1 (15): 162 − 16 = 146.
    const block = Uint8Array.of(1, 16, 0, 110, 0, 100, 0, 0x1f);
    const decoder = msBlocks(1, block.length)!;
    expect(units(decoder.decode(block))).toEqual([100, 110, 136, 146]);
  });
});
