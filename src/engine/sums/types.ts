/** Two rows of float64 each, of which the sum of products is taken. */
export interface Dots {
  /** int32, two for each result: addresses of its two rows */
  readonly places: number;
  /** numbers in a row, a multiple of 4 */
  readonly length: number;
  /** float64 */
  readonly output: number;
}

/** Frames of sound (float32), folded about their centres. */
export interface Folding {
  /** address of the first frame's centre; `half` samples on both sides of it can be read */
  readonly centre: number;
  /** bytes from one centre to the next */
  readonly hop: number;
  /** samples on each side, a multiple of 4 */
  readonly half: number;
  /** rows of `half` float32: sums and differences of both sides; the centre counts once */
  readonly even: number;
  readonly odd: number;
}

/** Folded frames against one pair of half windows (float32). */
export interface Projection {
  readonly even: number;
  readonly odd: number;
  /** bytes from one frame's row to the next */
  readonly row: number;
  readonly cosines: number;
  readonly sines: number;
  /** numbers of each row that count, a multiple of 4 */
  readonly length: number;
  /** float32, `stride` bytes apart */
  readonly output: number;
  readonly stride: number;
}

/** A dense layer (float32) over rows; what lies below `least` becomes that. */
export interface Dense {
  /** [output][input] */
  readonly weights: number;
  readonly bias: number;
  /** multiples of 4, both */
  readonly inputs: number;
  readonly outputs: number;
  readonly input: number;
  /** bytes from one row to the next */
  readonly inputStride: number;
  readonly output: number;
  readonly outputStride: number;
  readonly least: number;
}

/** Loops over floating-point numbers in a memory of their own; addresses in bytes. */
export interface Sums {
  /** `wasm`, or `plain` where that is missing: the same sums, some times slower */
  readonly kind: 'wasm' | 'plain';
  /** another one after each `reserve`: make views when all is reserved */
  readonly memory: ArrayBuffer;
  /** Address of so many fresh bytes, all 0, at a multiple of 16. */
  reserve(bytes: number): number;
  dots(job: Dots, count: number): void;
  fold(job: Folding, frames: number): void;
  /** Squared length of (even · cosines, odd · sines) of each frame. */
  project(job: Projection, frames: number): void;
  dense(job: Dense, rows: number): void;
}
