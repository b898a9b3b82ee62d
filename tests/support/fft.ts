/** Fourier transforms of the test bench: written apart from the engine's, so that the two cannot share a mistake. */

/** In place, forward, unscaled. Both arrays have one length, a power of two. Swap the arguments for the inverse. */
export function fft(real: Float64Array, imaginary: Float64Array): void {
  const size = real.length;
  for (let index = 1, mirrored = 0; index < size; index++) {
    let bit = size >> 1;
    for (; mirrored & bit; bit >>= 1) mirrored ^= bit;
    mirrored ^= bit;
    if (index < mirrored) {
      [real[index], real[mirrored]] = [real[mirrored]!, real[index]!];
      [imaginary[index], imaginary[mirrored]] = [imaginary[mirrored]!, imaginary[index]!];
    }
  }
  const { cosines, sines } = turnsOf(size);
  for (let span = 2; span <= size; span *= 2) {
    const half = span / 2;
    const stride = size / span;
    for (let start = 0; start < size; start += span) {
      for (let offset = 0; offset < half; offset++) {
        const cos = cosines[offset * stride]!;
        const sin = sines[offset * stride]!;
        const low = start + offset;
        const high = low + half;
        const re = real[high]! * cos - imaginary[high]! * sin;
        const im = real[high]! * sin + imaginary[high]! * cos;
        real[high] = real[low]! - re;
        imaginary[high] = imaginary[low]! - im;
        real[low] = real[low]! + re;
        imaginary[low] = imaginary[low]! + im;
      }
    }
  }
}

const turns = new Map<number, { readonly cosines: Float64Array; readonly sines: Float64Array }>();

/** The angles of a size: worked out once. */
function turnsOf(size: number): { readonly cosines: Float64Array; readonly sines: Float64Array } {
  let those = turns.get(size);
  if (those === undefined) {
    const angles = Float64Array.from({ length: size / 2 }, (_, index) => (2 * Math.PI * index) / size);
    those = { cosines: angles.map(Math.cos), sines: angles.map((angle) => -Math.sin(angle)) };
    turns.set(size, those);
  }
  return those;
}

/** Signal ∗ kernel, cut to the signal's length (overlap-add): the kernel is real, so two blocks go through at once, one of them as the imaginary part. */
export function convolve(signal: Float64Array, kernel: Float64Array): Float64Array {
  const size = 2 ** Math.ceil(Math.log2(2 * kernel.length));
  const block = size - kernel.length + 1;
  const kernelReal = new Float64Array(size);
  const kernelImaginary = new Float64Array(size);
  kernelReal.set(kernel);
  fft(kernelReal, kernelImaginary);
  const out = new Float64Array(signal.length);
  for (let start = 0; start < signal.length; start += 2 * block) {
    const next = Math.min(start + block, signal.length);
    const real = new Float64Array(size);
    const imaginary = new Float64Array(size);
    real.set(signal.subarray(start, next));
    imaginary.set(signal.subarray(next, next + block));
    fft(real, imaginary);
    for (let bin = 0; bin < size; bin++) {
      const re = real[bin]! * kernelReal[bin]! - imaginary[bin]! * kernelImaginary[bin]!;
      imaginary[bin] = real[bin]! * kernelImaginary[bin]! + imaginary[bin]! * kernelReal[bin]!;
      real[bin] = re;
    }
    fft(imaginary, real);
    for (let index = 0; index < size && start + index < out.length; index++)
      out[start + index]! += real[index]! / size;
    for (let index = 0; index < size && next + index < out.length; index++)
      out[next + index]! += imaginary[index]! / size;
  }
  return out;
}
