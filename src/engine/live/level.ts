import { powerToDb } from '../base/units.ts';

/** one told level, samples at RATE_HZ: 100 ms */
const EVERY = 2205;
/** full scale with room for a converter's rounding */
const CLIPPED = 0.999;
/** the room's noise is the quietest of the last so many levels: 20 s, in which somebody draws breath */
const REMEMBERED = 200;
/** levels before the noise is told */
const LEAST = 10;

/** Level of one moment of the sound. */
export interface Level {
  /** greatest sample, dB of full scale */
  readonly peakDb: number;
  readonly clipped: boolean;
  /** quietest tenth of a second of the last twenty, dB (full-scale sine = 0); null before a second has been heard */
  readonly noiseDb: number | null;
}

/** Samples → ten levels a second. */
export class LevelWatch {
  readonly #recent: number[] = [];
  #peak = 0;
  #sum = 0;
  #taken = 0;

  /** Takes one sample; a level where one is due. */
  take(sample: number): Level | null {
    this.#peak = Math.max(this.#peak, Math.abs(sample));
    this.#sum += sample * sample;
    this.#taken += 1;
    if (this.#taken < EVERY) return null;
    this.#recent.push(powerToDb((2 * this.#sum) / EVERY));
    if (this.#recent.length > REMEMBERED) this.#recent.shift();
    const level = {
      peakDb: powerToDb(this.#peak * this.#peak),
      clipped: this.#peak >= CLIPPED,
      noiseDb: this.#recent.length < LEAST ? null : Math.min(...this.#recent),
    };
    this.#peak = this.#sum = this.#taken = 0;
    return level;
  }
}
