import { UsageError } from '../../base/errors.ts';

const ALPHABET = 'ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789+/';

/** Base64 (RFC 4648, section 4) → bytes. The engine knows no `atob`. */
export function decodeBase64(text: string): Uint8Array<ArrayBuffer> {
  const sextets = new Uint8Array(128).fill(255);
  for (let value = 0; value < 64; value++) sextets[ALPHABET.charCodeAt(value)] = value;
  const letters = text.replace(/=+$/, '');
  const bytes = new Uint8Array(Math.floor((letters.length * 3) / 4));
  let bits = 0;
  let held = 0;
  let at = 0;
  for (let i = 0; i < letters.length; i++) {
    const sextet = sextets[letters.charCodeAt(i)] ?? 255;
    if (sextet === 255)
      throw new UsageError(`text[${i}]=${letters[i]} is no letter of base64; encode it anew`);
    held = ((held << 6) | sextet) & 0xffff;
    bits += 6;
    if (bits >= 8) {
      bits -= 8;
      bytes[at++] = (held >> bits) & 0xff;
    }
  }
  return bytes;
}

/** Little-endian binary16 (IEEE 754-2019, 3.6) → numbers. */
export function decodeFloat16(bytes: Uint8Array<ArrayBuffer>): Float32Array {
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  const numbers = new Float32Array(bytes.byteLength >> 1);
  for (let i = 0; i < numbers.length; i++) numbers[i] = float16(view.getUint16(2 * i, true));
  return numbers;
}

function float16(half: number): number {
  const sign = half & 0x8000 ? -1 : 1;
  const exponent = (half >> 10) & 0x1f;
  const fraction = half & 0x3ff;
  if (exponent === 0) return sign * fraction * 2 ** -24;
  if (exponent === 31) return fraction ? NaN : sign * Infinity;
  return sign * (1 + fraction / 1024) * 2 ** (exponent - 15);
}
