/** Fourier transforms of the test bench: written apart from the engine's, so that the two cannot share a mistake. */

/** In place, forward, unscaled. Both arrays have one length, a power of two. Swap the arguments for the inverse. */
export function fft(real: Float64Array, imaginary: Float64Array): void {
  mirror(real, imaginary);
  let span = 2;
  for (; span < real.length; span *= 4) twoStages(real, imaginary, span);
  if (span === real.length) lastStage(real, imaginary);
}

/** Each value goes where the bits of its index, mirrored, lead. */
function mirror(real: Float64Array, imaginary: Float64Array): void {
  for (let index = 1, mirrored = 0; index < real.length; index++) {
    let bit = real.length >> 1;
    for (; mirrored & bit; bit >>= 1) mirrored ^= bit;
    mirrored ^= bit;
    if (index >= mirrored) continue;
    const re = real[index]!;
    const im = imaginary[index]!;
    real[index] = real[mirrored]!;
    imaginary[index] = imaginary[mirrored]!;
    real[mirrored] = re;
    imaginary[mirrored] = im;
  }
}

/** The stage of `span` and the one of twice that, in one way through the memory: half the time, the same sums. */
function twoStages(real: Float64Array, imaginary: Float64Array, span: number): void {
  const half = span / 2;
  const { cosines, sines } = turnsOf(span);
  const { cosines: widerCosines, sines: widerSines } = turnsOf(2 * span);
  for (let start = 0; start < real.length; start += 2 * span) {
    for (let offset = 0; offset < half; offset++) {
      const a = start + offset;
      const b = a + half;
      const c = a + span;
      const d = b + span;
      const cos = cosines[offset]!;
      const sin = sines[offset]!;
      const bRe = real[b]! * cos - imaginary[b]! * sin;
      const bIm = real[b]! * sin + imaginary[b]! * cos;
      const dRe = real[d]! * cos - imaginary[d]! * sin;
      const dIm = real[d]! * sin + imaginary[d]! * cos;
      const aRe = real[a]!;
      const aIm = imaginary[a]!;
      const cRe = real[c]!;
      const cIm = imaginary[c]!;
      {
        const cosWider = widerCosines[offset]!;
        const sinWider = widerSines[offset]!;
        const re = (cRe + dRe) * cosWider - (cIm + dIm) * sinWider;
        const im = (cRe + dRe) * sinWider + (cIm + dIm) * cosWider;
        real[a] = aRe + bRe + re;
        imaginary[a] = aIm + bIm + im;
        real[c] = aRe + bRe - re;
        imaginary[c] = aIm + bIm - im;
      }
      {
        const cosWider = widerCosines[offset + half]!;
        const sinWider = widerSines[offset + half]!;
        const re = (cRe - dRe) * cosWider - (cIm - dIm) * sinWider;
        const im = (cRe - dRe) * sinWider + (cIm - dIm) * cosWider;
        real[b] = aRe - bRe + re;
        imaginary[b] = aIm - bIm + im;
        real[d] = aRe - bRe - re;
        imaginary[d] = aIm - bIm - im;
      }
    }
  }
}

/** The stage of the whole, where their number is odd. */
function lastStage(real: Float64Array, imaginary: Float64Array): void {
  const half = real.length / 2;
  const { cosines, sines } = turnsOf(real.length);
  for (let low = 0; low < half; low++) {
    const high = low + half;
    const re = real[high]! * cosines[low]! - imaginary[high]! * sines[low]!;
    const im = real[high]! * sines[low]! + imaginary[high]! * cosines[low]!;
    real[high] = real[low]! - re;
    imaginary[high] = imaginary[low]! - im;
    real[low] = real[low]! + re;
    imaginary[low] = imaginary[low]! + im;
  }
}

const turns = new Map<number, { readonly cosines: Float64Array; readonly sines: Float64Array }>();

/** The angles of a span: worked out once. */
function turnsOf(span: number): { readonly cosines: Float64Array; readonly sines: Float64Array } {
  let those = turns.get(span);
  if (those === undefined) {
    const angles = Float64Array.from({ length: span / 2 }, (_, index) => (2 * Math.PI * index) / span);
    those = { cosines: angles.map(Math.cos), sines: angles.map((angle) => -Math.sin(angle)) };
    turns.set(span, those);
  }
  return those;
}

/**
 * Kernel → what makes signal ∗ kernel, cut to the signal's length (overlap-add), the kernel's own spectrum being worked out once. The
 * kernel is real, so two blocks go through at once, one of them as the imaginary part.
 */
export function convolver(kernel: Float64Array): (signal: Float64Array) => Float64Array {
  const size = 2 ** Math.ceil(Math.log2(2 * kernel.length));
  const block = size - kernel.length + 1;
  const kernelReal = new Float64Array(size);
  const kernelImaginary = new Float64Array(size);
  kernelReal.set(kernel);
  fft(kernelReal, kernelImaginary);
  const real = new Float64Array(size);
  const imaginary = new Float64Array(size);
  return (signal) => {
    const out = new Float64Array(signal.length);
    for (let start = 0; start < signal.length; start += 2 * block) {
      const next = Math.min(start + block, signal.length);
      real.fill(0).set(signal.subarray(start, next));
      imaginary.fill(0).set(signal.subarray(next, next + block));
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
  };
}
