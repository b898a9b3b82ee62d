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
