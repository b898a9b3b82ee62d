/** samples in a row at the rail that a tone of the piano does not bring by itself */
const RUN = 3;
/** samples count as equal when they differ by less than this share: half a step of 14 bits */
const EQUAL = 6e-5;
/** the rail is looked for from this share of the highest peak up */
const NEAR_PEAK = 0.9;
/** a peak higher by this ratio is another rail */
const HIGHER = 1.01;
/** no converter has its rail below this */
const LEAST_RAIL = 0.05;

/** How often the sound stood at its rail, and its peak. */
export interface RailFacts {
  /** samples in runs at the rail, as a share of all */
  readonly clippedShare: number;
  readonly clippedRuns: number;
  /** highest absolute sample */
  readonly peak: number;
}

/** Watches for clipping: runs of equal samples near the highest peak so far. A later higher peak starts the count anew. */
export class RailWatch {
  #peak = 0;
  #previous = 0;
  #run = 1;
  #runs = 0;
  #clipped = 0;
  #total = 0;

  push(block: Float64Array, length: number): void {
    let previous = this.#previous;
    for (let i = 0; i < length; i++) {
      const sample = block[i]!;
      const size = Math.abs(sample);
      if (size > this.#peak) this.#rise(size);
      const equal = Math.abs(sample - previous) <= EQUAL * size;
      if (equal && size > LEAST_RAIL && size >= NEAR_PEAK * this.#peak) this.#stay();
      else this.#run = 1;
      previous = sample;
    }
    this.#previous = previous;
    this.#total += length;
  }

  #rise(size: number): void {
    if (size > this.#peak * HIGHER) {
      this.#runs = 0;
      this.#clipped = 0;
    }
    this.#peak = size;
  }

  #stay(): void {
    this.#run += 1;
    if (this.#run === RUN) {
      this.#runs += 1;
      this.#clipped += RUN;
    } else if (this.#run > RUN) this.#clipped += 1;
  }

  facts(): RailFacts {
    return {
      clippedShare: this.#total > 0 ? this.#clipped / this.#total : 0,
      clippedRuns: this.#runs,
      peak: this.#peak,
    };
  }
}
