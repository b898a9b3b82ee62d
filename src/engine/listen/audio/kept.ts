/** Samples that are kept together. */
const REEL = 2 ** 17;

/** A sound that grows, kept whole as single floats. It never grows by copying, which would hold a long one two or three times. */
export class KeptSamples {
  #reels: Float32Array[] = [];
  /** samples in the last reel */
  #filled = REEL;

  /** Takes the first `length` samples of a block. */
  push(block: Float64Array, length = block.length): void {
    for (let from = 0; from < length;) {
      if (this.#filled === REEL) {
        this.#reels.push(new Float32Array(REEL));
        this.#filled = 0;
      }
      const reel = this.#reels.at(-1)!;
      const count = Math.min(length - from, REEL - this.#filled);
      reel.set(block.subarray(from, from + count), this.#filled);
      this.#filled += count;
      from += count;
    }
  }

  /** Samples from one to before another, as far as they came. */
  cut(from: number, to: number): Float32Array {
    const parts: Float32Array[] = [];
    let start = 0;
    for (const [index, reel] of this.#reels.entries()) {
      const length = index === this.#reels.length - 1 ? reel.length - (REEL - this.#filled) : reel.length;
      const [a, b] = [Math.max(from - start, 0), Math.min(to - start, length)];
      if (b > a) parts.push(reel.subarray(a, b));
      start += length;
    }
    const samples = new Float32Array(parts.reduce((sum, part) => sum + part.length, 0));
    let at = 0;
    for (const part of parts) {
      samples.set(part, at);
      at += part.length;
    }
    return samples;
  }

  /** All that came so far, in one array. */
  get samples(): Float32Array {
    const reels = this.#reels;
    const length = reels.reduce((sum, reel) => sum + reel.length, 0) - (REEL - this.#filled);
    if (reels.length <= 1) return (reels[0] ?? new Float32Array(0)).subarray(0, length);
    const whole = new Float32Array(length);
    let at = 0;
    for (let reel = reels.shift(); reel !== undefined; reel = reels.shift()) {
      whole.set(reel.subarray(0, length - at), at);
      at += reel.length;
    }
    // What comes after goes into a new reel.
    this.#reels = [whole];
    this.#filled = REEL;
    return whole;
  }
}
