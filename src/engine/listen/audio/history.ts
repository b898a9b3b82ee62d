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
    for (let at = from; at < to;) {
      const place = this.#end & this.#mask;
      const count = Math.min(to - at, ring.length - place);
      ring.set(block.subarray(at, at + count), place);
      this.#end += count;
      at += count;
    }
  }

  /** Copies `length` samples from absolute index `start` on into `out`. What is not kept reads as 0. */
  read(start: number, out: Float64Array, length = out.length): Float64Array {
    const ring = this.#ring;
    const first = Math.min(Math.max(this.#end - ring.length - start, -start, 0), length);
    const last = Math.max(Math.min(this.#end - start, length), first);
    out.fill(0, 0, first);
    out.fill(0, last, length);
    for (let at = first; at < last;) {
      const place = (start + at) & this.#mask;
      const count = Math.min(last - at, ring.length - place);
      out.set(ring.subarray(place, place + count), at);
      at += count;
    }
    return out;
  }
}
