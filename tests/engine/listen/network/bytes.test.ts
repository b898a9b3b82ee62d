import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { decodeBase64, encodeBase64 } from '../../../../src/engine/base/base64.ts';
import { decodeFloat16 } from '../../../../src/engine/listen/network/bytes.ts';

describe('base64', () => {
  // RFC 4648, section 10
  it.each([
    ['', ''],
    ['Zg==', 'f'],
    ['Zm8=', 'fo'],
    ['Zm9v', 'foo'],
    ['Zm9vYg==', 'foob'],
    ['Zm9vYmE=', 'fooba'],
    ['Zm9vYmFy', 'foobar'],
  ])('reads the vector %s of RFC 4648', (text, plain) => {
    expect(String.fromCharCode(...decodeBase64(text))).toBe(plain);
  });

  it('reads what Node writes', () => {
    fc.assert(
      fc.property(fc.uint8Array({ maxLength: 200 }), (bytes) => {
        expect([...decodeBase64(Buffer.from(bytes).toString('base64'))]).toEqual([...bytes]);
      }),
    );
  });

  it('writes what Node writes', () => {
    fc.assert(
      fc.property(fc.uint8Array({ maxLength: 200 }), (bytes) => {
        expect(encodeBase64(bytes)).toBe(Buffer.from(bytes).toString('base64'));
      }),
    );
  });

  it('names the letter that is none of base64', () => {
    expect(() => decodeBase64('Zm9*')).toThrow(/text\[3\]=\* is no letter of base64/);
    expect(() => decodeBase64('Zm9vY*Fy')).toThrow(/text\[5\]=\* is no letter/);
    expect(() => decodeBase64('Zm9vYmſy')).toThrow(/text\[6\]=ſ is no letter/);
  });
});

describe('float16', () => {
  // IEEE 754-2019, 3.6, table 3.5: binary16 has a bias of 15, 10 fraction bits, subnormals down to 2⁻²⁴
  it.each([
    [0x3c00, 1],
    [0xc000, -2],
    [0x7bff, 65504],
    [0x3555, 0.333251953125],
    [0x0400, 2 ** -14],
    [0x0001, 2 ** -24],
    [0x8000, -0],
    [0x7c00, Infinity],
  ])('reads %i as %s', (half, value) => {
    expect(decodeFloat16(Uint8Array.of(half & 0xff, half >> 8))[0]).toBe(value);
  });

  it('reads every one as the standard reckons it', () => {
    const halves = Uint16Array.from({ length: 2 ** 16 }, (_, half) => half);
    const read = decodeFloat16(new Uint8Array(halves.buffer));
    const wrong = [...halves].filter((half) => {
      const [sign, exponent, fraction] = [half >> 15 ? -1 : 1, (half >> 10) & 31, half & 1023];
      const value =
        exponent === 31
          ? sign * (fraction === 0 ? Infinity : NaN)
          : sign * 2 ** (Math.max(exponent, 1) - 15) * (Number(exponent > 0) + fraction / 1024);
      return !Object.is(read[half], value);
    });
    expect(wrong).toEqual([]);
  });
});
