import { PitchDetector } from 'pitchy';
import { RATE_HZ } from '../audio/index.ts';
import type { SampleHistory } from '../audio/index.ts';

/** three looks of 46 ms side by side, every 372 ms */
const LENGTH = 1024;
const LOOKS = 3;
const EVERY = 8192;
/** a voice is periodic to this degree (McLeod's clarity) … */
const LEAST_CLARITY = 0.9;
/** … lies in the range of talking and singing, Hz … */
const LOWEST_HZ = 85;
const HIGHEST_HZ = 500;
/** … and glides by so much from look to look, semitones: a struck string stays within 0.1, another key is a whole one off */
const LEAST_GLIDE = 0.15;
const MOST_GLIDE = 0.9;
/** softer than this is no one talking at the piano: −60 dB */
const LEAST_RMS = 1e-3;

/** Watches for voices: periodic tones whose pitch glides (McLeod & Wyvill 2005, by pitchy). Holds its buffers. */
export class VoiceWatch {
  readonly #history: SampleHistory;
  readonly #detector = PitchDetector.forFloat64Array(LENGTH);
  readonly #samples = new Float64Array(LENGTH);
  readonly #every: number;
  #next = EVERY;
  /** places at which a gliding voice was heard */
  glides = 0;
  /** end of the latest such place, samples; null: none yet */
  lastGlide: number | null = null;

  /** @param every samples from one look to the next */
  constructor(history: SampleHistory, every = EVERY) {
    this.#history = history;
    this.#every = every;
  }

  /** To be called whenever the history has grown. */
  advance(): void {
    for (; this.#next <= this.#history.end; this.#next += this.#every) this.#look(this.#next);
  }

  #look(end: number): void {
    let previous: number | null = null;
    let direction = 0;
    for (let look = 0; look < LOOKS; look++) {
      const semitones = this.#pitchAt(end - (LOOKS - look) * LENGTH);
      if (semitones === null) return;
      if (previous !== null) {
        const glide = semitones - previous;
        if (Math.abs(glide) < LEAST_GLIDE || Math.abs(glide) > MOST_GLIDE || glide * direction < 0) return;
        direction = glide;
      }
      previous = semitones;
    }
    this.glides += 1;
    this.lastGlide = end;
  }

  /** semitones above 1 Hz, or null where there is no clear tone in a voice's range */
  #pitchAt(start: number): number | null {
    const samples = this.#history.read(start, this.#samples);
    let power = 0;
    for (const sample of samples) power += sample * sample;
    if (power < LEAST_RMS * LEAST_RMS * LENGTH) return null;
    const [freqHz, clarity] = this.#detector.findPitch(samples, RATE_HZ);
    return clarity > LEAST_CLARITY && freqHz > LOWEST_HZ && freqHz < HIGHEST_HZ
      ? 12 * Math.log2(freqHz)
      : null;
  }
}
