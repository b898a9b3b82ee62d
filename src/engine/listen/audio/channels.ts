/** Samples between two choices of the channel: a choice must not depend on how the sound was cut into blocks. */
const CHUNK = 4096;
/** a channel must have this many times the energy heard so far to take over: 6 dB */
const TAKE_OVER = 4;

/** What was found when the channels were compared. */
export interface ChannelFacts {
  readonly channels: number;
  /** energy of the weakest channel against the strongest, dB; 0 of one channel */
  readonly weakestDb: number;
  /** energy of the mean of all against the mean energy of each, dB: strongly negative where they cancel */
  readonly sumDb: number;
}

/**
 * Several channels → one, without cancellation: the stronger channel alone is heard, because the sum of a wide pair loses
 * up to 10 dB of single partials. Another channel takes over, faded over one chunk, only when it has brought
 * four times the energy. Samples that are no numbers count as silence and are counted.
 */
export class ChannelChooser {
  badSamples = 0;
  readonly #energy: Float64Array;
  readonly #chunk: Float64Array[];
  readonly #sum = new Float64Array(CHUNK);
  #sumEnergy = 0;
  #filled = 0;
  #current = 0;
  #begun = false;

  readonly channels: number;
  readonly #emit: (block: Float64Array, length: number) => void;

  constructor(channels: number, emit: (block: Float64Array, length: number) => void) {
    this.channels = channels;
    this.#emit = emit;
    this.#energy = new Float64Array(channels);
    this.#chunk = Array.from({ length: channels }, () => new Float64Array(CHUNK));
  }

  push(block: readonly Float32Array[]): void {
    const length = block[0]?.length ?? 0;
    for (let from = 0; from < length;) {
      const count = Math.min(length - from, CHUNK - this.#filled);
      this.#take(block, from, count);
      from += count;
      this.#filled += count;
      if (this.#filled === CHUNK) this.#flush();
    }
  }

  /** Copies part of a block into the chunk; one channel after the other, since this runs for every sample. */
  #take(block: readonly Float32Array[], from: number, count: number): void {
    for (let c = 0; c < this.channels; c++) {
      const chunk = this.#chunk[c]!.subarray(this.#filled, this.#filled + count);
      chunk.set(block[c]!.subarray(from, from + count));
      let energy = this.#energy[c]!;
      for (let i = 0; i < count; i++) energy += chunk[i]! * chunk[i]!;
      // Only what is no number makes it infinite, or none.
      this.#energy[c] = Number.isFinite(energy) ? energy : this.#withoutBad(chunk, this.#energy[c]!);
    }
    this.#sumEnergy = this.channels === 1 ? this.#energy[0]! : this.#energyOfSum(count);
  }

  /** Silences what is no number; the energy that is left. */
  #withoutBad(chunk: Float64Array, before: number): number {
    let energy = before;
    for (let i = 0; i < chunk.length; i++) {
      if (!Number.isFinite(chunk[i]!)) {
        this.badSamples += 1;
        chunk[i] = 0;
      }
      energy += chunk[i]! * chunk[i]!;
    }
    return energy;
  }

  #energyOfSum(count: number): number {
    const sum = this.#sum.fill(0, 0, count);
    for (const chunk of this.#chunk) for (let i = 0; i < count; i++) sum[i]! += chunk[this.#filled + i]!;
    let energy = this.#sumEnergy;
    for (let i = 0; i < count; i++) energy += (sum[i]! / this.channels) ** 2;
    return energy;
  }

  finish(): void {
    this.#flush();
  }

  facts(): ChannelFacts {
    const strongest = Math.max(...this.#energy);
    const mean = this.#energy.reduce((sum, energy) => sum + energy, 0) / this.channels;
    const db = (ratio: number): number => 10 * Math.log10(Math.max(ratio, 1e-12));
    return {
      channels: this.channels,
      weakestDb: strongest > 0 ? db(Math.min(...this.#energy) / strongest) : 0,
      sumDb: mean > 0 ? db(this.#sumEnergy / mean) : 0,
    };
  }

  #flush(): void {
    const from = this.#current;
    let best = from;
    for (let c = 0; c < this.channels; c++) {
      if (this.#energy[c]! > TAKE_OVER * this.#energy[best]!) best = c;
    }
    this.#current = best;
    const old = this.#chunk[from]!;
    const chosen = this.#chunk[best]!;
    // Before the first chunk there is nothing to be joined to.
    if (best !== from && this.#begun) {
      for (let i = 0; i < this.#filled; i++) {
        const share = i / CHUNK;
        chosen[i] = share * chosen[i]! + (1 - share) * old[i]!;
      }
    }
    this.#emit(chosen, this.#filled);
    this.#begun ||= this.#filled > 0;
    this.#filled = 0;
  }
}
