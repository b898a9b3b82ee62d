import { UsageError } from '../base/errors.ts';

/** samples between two choices of the channel */
const CHUNK = 256;
/** a channel must have this many times the energy heard so far to take over: 6 dB */
const TAKE_OVER = 4;

/**
 * Several channels → one, at once: the one that has brought most energy so far (why not the sum: see
 * listen/audio/channels.ts, which waits and fades; here nothing may wait). The choice falls at fixed places of the sound, so it
 * does not depend on how it was cut into blocks. Samples that are no numbers count as silence.
 */
export class OneChannel {
  readonly #energy: Float64Array;
  #out = new Float64Array(0);
  #current = 0;
  #inChunk = 0;

  constructor(channels: number) {
    if (!Number.isInteger(channels) || channels < 1)
      throw new UsageError(`channels=${channels} must be at least 1; hand over the microphone's own`);
    this.#energy = new Float64Array(channels);
  }

  /** The block's chosen samples; the array is used again. `length` of them count. */
  take(block: readonly Float32Array[]): { readonly samples: Float64Array; readonly length: number } {
    const channels = this.#energy.length;
    if (block.length !== channels)
      throw new UsageError(`block has ${block.length} channels where ${channels} were announced`);
    const length = block[0]!.length;
    if (this.#out.length < length) this.#out = new Float64Array(length);
    for (let i = 0; i < length; i++) {
      for (let channel = 0; channel < channels; channel++) {
        const value = block[channel]![i]!;
        if (Number.isFinite(value)) this.#energy[channel]! += value * value;
      }
      const chosen = block[this.#current]![i]!;
      this.#out[i] = Number.isFinite(chosen) ? chosen : 0;
      this.#inChunk += 1;
      if (this.#inChunk === CHUNK) this.#choose();
    }
    return { samples: this.#out, length };
  }

  #choose(): void {
    this.#inChunk = 0;
    for (let channel = 0; channel < this.#energy.length; channel++) {
      if (this.#energy[channel]! > TAKE_OVER * this.#energy[this.#current]!) this.#current = channel;
    }
  }
}
