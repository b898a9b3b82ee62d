import { RATE_HZ } from '../listen/audio/index.ts';
import type { SampleHistory } from '../listen/audio/index.ts';
import { ActiveLevel } from '../listen/network/index.ts';

/** level is taken from so far back, seconds */
const BACK_SEC = 4;
/** a blow that has just fallen is so much louder than the playing will be, as an amplitude: 3 dB */
const BLOW = 1.4;
const TRAINED_RMS = 0.1;
/** 46 ms */
const NOW = 1024;
/** the room alone is raised no further than so much above the playing heard last: 20 dB */
const ABOVE_PLAYING = 10;
/** before any playing has been heard: a room at −60 dB is not taken for a piano */
const MOST_GAIN = 100;

/** What the sound must be multiplied by to come to the level that the network was trained on, while it comes in. */
export class Loudness {
  readonly #level = new ActiveLevel(RATE_HZ);
  readonly #history: SampleHistory;
  readonly #samples = new Float64Array(NOW);
  #mostGain = MOST_GAIN;

  constructor(history: SampleHistory) {
    this.#history = history;
  }

  push(block: Float64Array, from: number, to: number): void {
    this.#level.push(block, from, to);
  }

  /** Playing was heard with this gain: the room alone is not raised far beyond. */
  heardPlaying(gain: number): void {
    this.#mostGain = Math.min(ABOVE_PLAYING * gain, MOST_GAIN);
  }

  /** For a stretch whose look-ahead has come. */
  gainOf(fromSec: number, toSec: number): number {
    return Math.min(this.#level.gain(fromSec - BACK_SEC, toSec), this.#mostGain);
  }

  /** For a blow that fell a moment ago: as before, unless it is louder than all that came before it. */
  gainNow(nowSample: number): number {
    let power = 0;
    for (const value of this.#history.read(nowSample - NOW, this.#samples)) power += value * value;
    const blow = (BLOW * TRAINED_RMS) / Math.max(Math.sqrt(power / NOW), 1e-5);
    return Math.min(this.gainOf(nowSample / RATE_HZ, nowSample / RATE_HZ), blow);
  }
}
