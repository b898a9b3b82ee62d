/** A sound that grows, kept whole as single floats. */
export class KeptSamples {
  #samples = new Float32Array(2 ** 17);
  #length = 0;

  /** Takes the first `length` samples of a block. */
  push(block: Float64Array, length = block.length): void {
    const end = this.#length + length;
    if (end > this.#samples.length) {
      const more = new Float32Array(Math.ceil(1.5 * end));
      more.set(this.#samples.subarray(0, this.#length));
      this.#samples = more;
    }
    for (let i = 0; i < length; i++) this.#samples[this.#length + i] = block[i]!;
    this.#length = end;
  }

  /** All that came so far; not copied. */
  get samples(): Float32Array {
    return this.#samples.subarray(0, this.#length);
  }
}
