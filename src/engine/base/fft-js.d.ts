declare module 'fft.js' {
  /** Radix-4 FFT. Interleaved re, im. Feed it Float64Array only: a process that mixes array types runs threefold slower. */
  export default class FFT {
    constructor(size: number);
    realTransform(out: Float64Array, data: Float64Array): void;
  }
}
