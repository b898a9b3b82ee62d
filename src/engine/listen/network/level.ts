/** Active level of playing that the network was trained on, RMS. */
const TRAINED_RMS = 0.1;
/** half a block: the mean square is taken over 0.1 s every 0.05 s (src/training/listener/features.py, `level`) */
const HALF_BLOCK = 1102;
/** blocks more than 26 dB below the loudest count as pauses */
const ACTIVE_SHARE = 0.0025;
/** nothing is raised by more than 80 dB */
const LEAST_RMS = 1e-5;

/**
 * Sound, block by block → the gain that brings its playing to the level of the training: a stretch's active RMS, the mean
 * over its blocks of 0.1 s that lie less than 26 dB below the loudest, becomes 0.1. The network forgives 6 dB either way.
 */
export class ActiveLevel {
  readonly rateHz: number;
  readonly #half: number;
  readonly #halves: number[] = [];
  #sum = 0;
  #taken = 0;

  /** @param halfBlock samples; another length than the training's, to fall on a grid */
  constructor(rateHz: number, halfBlock = HALF_BLOCK) {
    this.rateHz = rateHz;
    this.#half = halfBlock;
  }

  /** Takes samples `from` to before `to` of a block. */
  push(block: Float64Array, from: number, to: number): void {
    for (let start = from; start < to;) {
      const end = Math.min(to, start + this.#half - this.#taken);
      let sum = this.#sum;
      for (let i = start; i < end; i++) sum += block[i]! * block[i]!;
      this.#sum = sum;
      this.#taken += end - start;
      start = end;
      if (this.#taken < this.#half) continue;
      this.#halves.push(this.#sum);
      this.#sum = 0;
      this.#taken = 0;
    }
  }

  /** Gain for the stretch, from the whole blocks in it; 1 where there is none or only silence. */
  gain(fromSec: number, toSec: number): number {
    const first = Math.max(Math.ceil((fromSec * this.rateHz) / this.#half), 0);
    const end = Math.min(Math.floor((toSec * this.rateHz) / this.#half), this.#halves.length);
    let loudest = 0;
    for (let i = first; i + 1 < end; i++) loudest = Math.max(loudest, this.#block(i));
    if (loudest === 0) return 1;
    let sum = 0;
    let count = 0;
    for (let i = first; i + 1 < end; i++) {
      const block = this.#block(i);
      if (block <= ACTIVE_SHARE * loudest) continue;
      sum += block;
      count += 1;
    }
    return TRAINED_RMS / Math.max(Math.sqrt(sum / count), LEAST_RMS);
  }

  #block(index: number): number {
    return (this.#halves[index]! + this.#halves[index + 1]!) / (2 * this.#half);
  }
}
