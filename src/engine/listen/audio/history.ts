/** The last seconds of a sound, by absolute sample index; silence before its start and after its end so far. */
export class SampleHistory {
  readonly #ring: Float64Array;
  readonly #mask: number;
  #end = 0;

  /** @param least samples kept at least; the next power of two is */
  constructor(least: number) {
    const capacity = 2 ** Math.ceil(Math.log2(Math.max(2, least)));
    this.#ring = new Float64Array(capacity);
    this.#mask = capacity - 1;
  }

  /** number of samples taken so far = index after the last one */
  get end(): number {
    return this.#end;
  }

  /** Takes samples `from` to before `to` of a block. */
  append(block: Float64Array, from: number, to: number): void {
    const ring = this.#ring;
    const mask = this.#mask;
    let end = this.#end;
    for (let i = from; i < to; i++) ring[end++ & mask] = block[i]!;
    this.#end = end;
  }

  /** Copies `length` samples from absolute index `start` on into `out`. What is not kept reads as 0. */
  read(start: number, out: Float64Array, length = out.length): Float64Array {
    const first = Math.max(0, this.#end - this.#ring.length);
    for (let i = 0; i < length; i++) {
      const at = start + i;
      out[i] = at >= first && at < this.#end ? this.#ring[at & this.#mask]! : 0;
    }
    return out;
  }
}
