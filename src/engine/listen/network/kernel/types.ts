/**
 * Whole-number products of one layer, all addresses in bytes of the kernel's memory. Each output of each position is
 * bias + Σ weight · input over `pairs` of two neighbouring int16 inputs, found at `offsets` (int32) from the position; the
 * int32 sum is rounded by `shift` bits to int16 and held within its range.
 */
export interface Multiplication {
  readonly inputStride: number;
  readonly offsets: number;
  readonly pairs: number;
  /** int16: [output / 8][pair][8 outputs][2] */
  readonly weights: number;
  /** int32, one for each output */
  readonly bias: number;
  /** bytes from one position's biases to the next's; 0: all have the same */
  readonly biasStride: number;
  /** int32, one for each output: added to the biases of every position */
  readonly shared: number;
  readonly outputStride: number;
  /** a multiple of 8 */
  readonly outputs: number;
  readonly shift: number;
  /** 0: as it is; 1: negative results become 0; 2: that, and added to what stands at the output */
  readonly mode: 0 | 1 | 2;
}

/** Each channel for itself: the sum over rows that lie anywhere, rounded as in a multiplication. */
export interface Smearing {
  /** int32: addresses of the rows, an even number of them */
  readonly rows: number;
  readonly taps: number;
  /** int16: [channel / 8][pair of taps][8 channels][2] */
  readonly weights: number;
  readonly outputStride: number;
  /** a multiple of 8; also the stride of the rows, in values */
  readonly channels: number;
  readonly shift: number;
}

/** `size` samples (float32) times a window → size / 2 powers (float32); size / 2 is a power of two and at least 128. */
export interface Spectrum {
  readonly size: number;
  /** float32, `size` of them */
  readonly window: number;
  /** cosines and sines of −2π p / (size / 2), of its double and of its treble, p < size / 8: six rows of float32 */
  readonly turns: number;
  /** cosines, then sines of −2π k / size, k < size / 2: two rows of float32 */
  readonly split: number;
  /** room for four rows of size / 2 + 4 float32 */
  readonly work: number;
}

/**
 * Powers → logarithms of weighted sums: round(slope · log2(sum · gain + floor) + rise) as int16. `table` holds for each log
 * bin the byte offset of its first power and how many fours of weights it has (int32 each).
 */
export interface Collection {
  readonly table: number;
  /** float32, bin after bin, each in whole fours */
  readonly weights: number;
  /** log bins, a multiple of 4 */
  readonly count: number;
  readonly floor: number;
  readonly slope: number;
  readonly rise: number;
  /** bytes from one log bin's value to the next's */
  readonly outputStride: number;
}

/** The loops in which the network spends its time, over a memory of their own. */
export interface Kernel {
  readonly kind: 'wasm' | 'plain';
  /** another one after each `reserve`: make views when all is reserved */
  readonly memory: ArrayBuffer;
  /** Address of so many fresh bytes, all 0, at a multiple of 16. */
  reserve(bytes: number): number;
  /** `positions`: a multiple of 4 */
  multiply(job: Multiplication, positions: number, input: number, output: number): void;
  /** `positions`: even */
  smear(job: Smearing, positions: number, output: number): void;
  spectrum(job: Spectrum, samples: number, output: number): void;
  collect(job: Collection, power: number, gain: number, output: number): void;
}
