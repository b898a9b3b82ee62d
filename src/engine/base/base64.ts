import { UsageError } from './errors.ts';

const ALPHABET = 'ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789+/';

/** Base64 (RFC 4648, section 4) → bytes. The engine knows no `atob`. */
export function decodeBase64(text: string): Uint8Array<ArrayBuffer> {
  const sextets = new Uint8Array(128).fill(255);
  for (let value = 0; value < 64; value++) sextets[ALPHABET.charCodeAt(value)] = value;
  const letters = text.replace(/=+$/, '');
  const bytes = new Uint8Array(Math.floor((letters.length * 3) / 4));
  let at = 0;
  let i = 0;
  // In fours as long as all are letters: weights of networks come a million letters at a time.
  for (; i + 4 <= letters.length; i += 4) {
    const a = letters.charCodeAt(i);
    const b = letters.charCodeAt(i + 1);
    const c = letters.charCodeAt(i + 2);
    const d = letters.charCodeAt(i + 3);
    if ((a | b | c | d) > 127) break;
    const four = (sextets[a]! << 18) | (sextets[b]! << 12) | (sextets[c]! << 6) | sextets[d]!;
    if ((sextets[a]! | sextets[b]! | sextets[c]! | sextets[d]!) > 63) break;
    bytes[at++] = four >> 16;
    bytes[at++] = four >> 8;
    bytes[at++] = four;
  }
  let bits = 0;
  let held = 0;
  for (; i < letters.length; i++) {
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

/** Bytes → base64, padded. The engine knows no `btoa`. */
export function encodeBase64(bytes: Uint8Array): string {
  let text = '';
  for (let at = 0; at < bytes.length; at += 3) {
    const [first, second, third] = [bytes[at]!, bytes[at + 1], bytes[at + 2]];
    const bits = (first << 16) | ((second ?? 0) << 8) | (third ?? 0);
    text += ALPHABET[bits >> 18]! + ALPHABET[(bits >> 12) & 63]!;
    text += second === undefined ? '=' : ALPHABET[(bits >> 6) & 63]!;
    text += third === undefined ? '=' : ALPHABET[bits & 63]!;
  }
  return text;
}
