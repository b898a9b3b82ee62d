import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { decodeFile } from '../../../src/io/decode/index.ts';
import { encodeWav } from '../../../src/io/exchange/index.ts';
import { encodeFloatWav } from '../../support/float-wav.ts';

/** RIFF pieces by hand, after "Multimedia Programming Interface and Data Specifications 1.0" (1991), chapters 2 and 3. */
const u16 = (value: number): number[] => [value & 255, (value >> 8) & 255];
const u32 = (value: number): number[] => [...u16(value & 0xffff), ...u16(value >>> 16)];
const text = (letters: string): number[] => [...letters].map((letter) => letter.charCodeAt(0));
const chunk = (name: string, body: readonly number[], size = body.length): number[] => [
  ...text(name),
  ...u32(size),
  ...body,
];
const padded = (name: string, body: readonly number[]): number[] => [
  ...chunk(name, body),
  ...(body.length % 2 === 1 ? [0] : []),
];
const FORMAT = [...u16(1), ...u16(1), ...u32(8_000), ...u32(16_000), ...u16(2), ...u16(16)];
/** 16-bit: a quarter, a half, minus a half, the most negative */
const DATA = [...u16(8_192), ...u16(16_384), ...u16(-16_384), ...u16(-32_768)];
const VALUES = [0.25, 0.5, -0.5, -1];
const file = (...chunks: readonly number[][]): ArrayBuffer =>
  Uint8Array.from([...text('RIFF'), ...u32(4 + chunks.flat().length), ...text('WAVE'), ...chunks.flat()])
    .buffer;
const read = (bytes: ArrayBuffer) => decodeFile(bytes, 'take.wav');

describe('a WAV file is read however its writer laid it out', () => {
  it.each([
    { what: 'plain', bytes: file(chunk('fmt ', FORMAT), chunk('data', DATA)) },
    {
      what: 'with a chunk of odd length before the data, padded as the specification has it',
      bytes: file(chunk('fmt ', FORMAT), padded('note', text('odd')), chunk('data', DATA)),
    },
    {
      what: 'with a chunk of odd length that its writer forgot to pad',
      bytes: file(chunk('fmt ', FORMAT), chunk('note', text('odd')), chunk('data', DATA)),
    },
    {
      what: 'with the format told after another chunk',
      bytes: file(padded('JUNK', [1, 2, 3, 4]), chunk('fmt ', FORMAT), chunk('data', DATA)),
    },
    {
      what: 'with the length never filled in (a stream, or a recorder that was stopped)',
      bytes: file(chunk('fmt ', FORMAT), chunk('data', DATA, 0xffffffff)),
    },
    { what: 'with a length of nought', bytes: file(chunk('fmt ', FORMAT), chunk('data', DATA, 0)) },
    {
      what: 'with chunks behind the data',
      bytes: file(chunk('fmt ', FORMAT), chunk('data', DATA), chunk('LIST', text('INFO'))),
    },
    {
      what: 'with twelve valid bits, left-justified in sixteen (WAVEFORMATEXTENSIBLE)',
      bytes: file(
        chunk('fmt ', [
          ...u16(0xfffe),
          ...FORMAT.slice(2),
          ...u16(22),
          ...u16(12),
          ...u32(4),
          // KSDATAFORMAT_SUBTYPE_PCM
          ...u16(1),
          ...[0, 0, 0, 0, 0x10, 0, 0x80, 0, 0, 0xaa, 0, 0x38, 0x9b, 0x71],
        ]),
        chunk('data', DATA),
      ),
    },
  ])('$what', async ({ bytes }) => {
    const { channels, sampleRateHz, remarks } = await read(bytes);
    expect(channels.map((channel) => [...channel])).toEqual([VALUES]);
    expect(sampleRateHz).toBe(8_000);
    expect(remarks).toEqual([]);
  });

  it('gives what is there of a file cut short, and says how much that is', async () => {
    const half = chunk('data', [...Array<number>(16_000)].fill(0), 32_000);
    const { channels, remarks } = await read(file(chunk('fmt ', FORMAT), half));
    expect(channels[0]).toHaveLength(8_000);
    expect(remarks).toEqual([{ notice: 'breaks-off', thereSec: 1, wholeSec: 2 }]);
  });

  it('drops half a sample at the end', async () => {
    const { channels } = await read(file(chunk('fmt ', FORMAT), chunk('data', [...DATA, 7])));
    expect([...channels[0]!]).toEqual(VALUES);
  });

  it('makes silence of what is no number', async () => {
    const format = [...u16(3), ...u16(1), ...u32(8_000), ...u32(32_000), ...u16(4), ...u16(32)];
    const samples = new Uint8Array(Float32Array.of(0.5, NaN, Infinity, -0.5).buffer);
    const { channels } = await read(file(chunk('fmt ', format), chunk('data', [...samples])));
    expect([...channels[0]!]).toEqual([0.5, 0, 0, -0.5]);
  });
});

describe('a WAV file that makes no sense is refused', () => {
  const format = (changes: Readonly<Record<number, number>>): number[] =>
    FORMAT.map((byte, at) => changes[at] ?? byte);
  it.each([
    { what: 'no data', bytes: file(chunk('fmt ', FORMAT)), message: /without any sound/ },
    { what: 'nothing behind the header', bytes: file(), message: /its beginning is cut short/ },
    {
      what: 'data of no length',
      bytes: file(chunk('fmt ', FORMAT), chunk('data', [])),
      message: /cut short or damaged/,
    },
    {
      what: 'no channels',
      bytes: file(chunk('fmt ', format({ 2: 0 })), chunk('data', DATA)),
      message: /makes no sense/,
    },
    {
      what: 'no bits',
      bytes: file(chunk('fmt ', format({ 14: 0 })), chunk('data', DATA)),
      message: /makes no sense/,
    },
    {
      what: 'three samples a second',
      bytes: file(chunk('fmt ', format({ 4: 3, 5: 0 })), chunk('data', DATA)),
      message: /3 samples a second/,
    },
    {
      what: 'packed sound that is known by name (GSM is 0x31)',
      bytes: file(chunk('fmt ', format({ 0: 0x31 })), chunk('data', DATA)),
      message: /WAV file with GSM sound\. Convert it/,
    },
    {
      what: 'packed sound that nobody knows',
      bytes: file(chunk('fmt ', format({ 0: 0x99 })), chunk('data', DATA)),
      message: /packed sound of a rare kind\. Convert it/,
    },
    {
      what: 'IMA ADPCM whose blocks are too short to begin',
      bytes: file(chunk('fmt ', format({ 0: 0x11, 12: 2 })), chunk('data', DATA)),
      message: /makes no sense/,
    },
  ])('$what', async ({ bytes, message }) => {
    await expect(read(bytes)).rejects.toThrow(message);
  });
});

describe('what is written is read back', () => {
  const sound = fc
    .record({
      frames: fc.integer({ min: 1, max: 300 }),
      count: fc.integer({ min: 1, max: 2 }),
      sampleRateHz: fc.constantFrom(8_000, 11_025, 44_100, 48_000, 96_000),
    })
    .chain(({ frames, count, sampleRateHz }) =>
      fc.record({
        sampleRateHz: fc.constant(sampleRateHz),
        channels: fc.array(
          fc.float32Array({ min: -1, max: 1, noNaN: true, minLength: frames, maxLength: frames }),
          { minLength: count, maxLength: count },
        ),
      }),
    );

  it('in 32-bit floating point to the last bit', async () => {
    await fc.assert(
      fc.asyncProperty(sound, async (audio) => {
        const { channels, sampleRateHz } = await read(encodeFloatWav(audio));
        // −0 and 0 are one value to the ear.
        expect(channels.map((channel) => [...channel].map((value) => value + 0))).toEqual(
          audio.channels.map((channel) => [...channel].map((value) => value + 0)),
        );
        expect(sampleRateHz).toBe(audio.sampleRateHz);
      }),
    );
  });

  it('in 16 bits to half a step, and full scale itself to one', async () => {
    await fc.assert(
      fc.asyncProperty(sound, async (audio) => {
        const { channels } = await read(encodeWav(audio));
        channels.forEach((channel, c) =>
          channel.forEach((value, i) => {
            const was = audio.channels[c]![i]!;
            expect(Math.abs(value - was)).toBeLessThanOrEqual(
              (was > 1 - 1 / 65_536 ? 1 : 0.5) / 32_768 + 1e-9,
            );
          }),
        );
      }),
    );
  });
});
