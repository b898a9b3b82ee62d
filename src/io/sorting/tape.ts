import { ChannelChooser } from '../../engine/index.ts';
import { encodePcm } from '../encode/index.ts';
import type { SoundFile } from '../encode/index.ts';

/** Samples that are laid down together. */
const REEL = 1 << 16;
const FULL_SCALE = 32_768;

/**
 * A recording as it is listened to → the same sound laid aside, to cut attempts out of it: the one channel that the listener
 * hears, in 16 bits (rounding 98 dB under full scale). A quarter of an hour at 48 kHz takes 86 MB.
 */
export class Tape {
  readonly sampleRateHz: number;
  /** null: let go of */
  readonly #reels: (Int16Array | null)[] = [];
  #forgotten = 0;
  readonly #chooser: ChannelChooser;
  #length = 0;

  constructor(format: { readonly sampleRateHz: number; readonly channels: number }) {
    this.sampleRateHz = format.sampleRateHz;
    this.#chooser = new ChannelChooser(format.channels, (block, length) => this.#lay(block, length));
  }

  push(block: readonly Float32Array[]): void {
    this.#chooser.push(block);
  }

  /** All that was pushed so far can be cut from now on; more may follow. */
  finish(): void {
    this.#chooser.finish();
  }

  /** Lets go of the sound before a moment; what is cut there is silence. */
  forget(beforeSec: number): void {
    const last = Math.floor((beforeSec * this.sampleRateHz) / REEL);
    for (; this.#forgotten < Math.min(last, this.#reels.length); this.#forgotten++)
      this.#reels[this.#forgotten] = null;
  }

  /** The sound between two moments, as far as there is any: a WAV of 16 bits. */
  cut(startSec: number, endSec: number): SoundFile {
    const from = Math.min(Math.max(Math.round(startSec * this.sampleRateHz), 0), this.#length);
    const to = Math.min(Math.max(Math.round(endSec * this.sampleRateHz), from), this.#length);
    const parts: Int16Array[] = [];
    for (let at = from; at < to;) {
      const end = Math.min(to, at - (at % REEL) + REEL);
      const reel = this.#reels[Math.floor(at / REEL)] ?? new Int16Array(REEL);
      parts.push(reel.subarray(at % REEL, (at % REEL) + end - at));
      at = end;
    }
    return { bytes: new Uint8Array(encodePcm(parts, this.sampleRateHz)), mime: 'audio/wav' };
  }

  #lay(block: Float64Array, length: number): void {
    for (let i = 0; i < length; i++) {
      const at = this.#length % REEL;
      if (at === 0) this.#reels.push(new Int16Array(REEL));
      const value = Math.round(block[i]! * FULL_SCALE);
      this.#reels.at(-1)![at] = Math.min(Math.max(value, -FULL_SCALE), FULL_SCALE - 1);
      this.#length += 1;
    }
  }
}
