/** samples in a row at the rail that a tone of the piano does not bring by itself */
const RUN = 3;
/** samples count as equal when they differ by less than this share: half a step of 14 bits */
const EQUAL = 6e-5;
/** the rail is looked for from this share of the highest peak up */
const NEAR_PEAK = 0.9;

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
    for (let i = 0; i < length; i++) this.#take(block[i]!);
  }

  #take(sample: number): void {
    const size = Math.abs(sample);
    if (size > this.#peak) {
      if (size > this.#peak * 1.01) {
        this.#runs = 0;
        this.#clipped = 0;
      }
      this.#peak = size;
    }
    const equal = Math.abs(sample - this.#previous) <= EQUAL * size;
    if (equal && size > 0.05 && size >= NEAR_PEAK * this.#peak) {
      this.#run += 1;
      if (this.#run === RUN) {
        this.#runs += 1;
        this.#clipped += RUN;
      } else if (this.#run > RUN) this.#clipped += 1;
    } else this.#run = 1;
    this.#previous = sample;
    this.#total += 1;
  }

  facts(): RailFacts {
    return {
      clippedShare: this.#total > 0 ? this.#clipped / this.#total : 0,
      clippedRuns: this.#runs,
      peak: this.#peak,
    };
  }
}
