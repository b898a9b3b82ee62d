/** Little-endian binary16 (IEEE 754-2019, 3.6) → numbers. */
export function decodeFloat16(bytes: Uint8Array<ArrayBuffer>): Float32Array {
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  const numbers = new Float32Array(bytes.byteLength >> 1);
  const bits = new Uint32Array(numbers.buffer);
  for (let i = 0; i < numbers.length; i++) {
    const half = view.getUint16(2 * i, true);
    const exponent = half & 0x7c00;
    // Ordinary numbers are the same in binary32, their exponents counted from 127 instead of 15: reckoning them takes longer.
    if (exponent !== 0 && exponent !== 0x7c00)
      bits[i] = ((half & 0x8000) << 16) | (((half & 0x7fff) << 13) + ((127 - 15) << 23));
    else numbers[i] = rare(half);
  }
  return numbers;
}

/** Zeros, the smallest numbers, infinities and what is no number. */
function rare(half: number): number {
  const sign = half & 0x8000 ? -1 : 1;
  const fraction = half & 0x3ff;
  if ((half & 0x7c00) === 0) return sign * fraction * 2 ** -24;
  return fraction ? NaN : sign * Infinity;
}
