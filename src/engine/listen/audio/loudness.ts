const LOWEST_DB = -140;
const BINS = 160;
/** samples a look: 23 ms */
const LENGTH = 512;

/** How loud a recording is, over time: a histogram of its moments by dB, so three hours need no more room than a second. */
export class LoudnessWatch {
  readonly #counts = new Float64Array(BINS);
  #looks = 0;
  #sum = 0;
  #taken = 0;

  push(block: Float64Array, length: number): void {
    for (let from = 0; from < length;) {
      const to = Math.min(length, from + LENGTH - this.#taken);
      let sum = this.#sum;
      for (let i = from; i < to; i++) sum += block[i]! * block[i]!;
      this.#sum = sum;
      this.#taken += to - from;
      if (this.#taken === LENGTH) this.#look();
      from = to;
    }
  }

  #look(): void {
    const bin = Math.round(10 * Math.log10((2 * this.#sum) / LENGTH + 1e-14) - LOWEST_DB);
    this.#counts[Math.max(0, Math.min(BINS - 1, bin))]! += 1;
    this.#looks += 1;
    this.#sum = 0;
    this.#taken = 0;
  }

  /** level that a share of all moments stays below, dB (full-scale sine = 0); −140 of nothing */
  quantileDb(share: number): number {
    let sum = 0;
    for (let bin = 0; bin < BINS; bin++) {
      sum += this.#counts[bin]!;
      if (sum > share * this.#looks) return LOWEST_DB + bin;
    }
    return LOWEST_DB;
  }
}
