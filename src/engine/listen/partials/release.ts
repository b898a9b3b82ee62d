import { midiToHz } from '../../base/units.ts';
import { hann } from '../../base/windows.ts';
import { RATE_HZ } from '../audio/index.ts';
import type { SampleHistory } from '../audio/index.ts';
import { partialRatio } from './stiffness.ts';

/** A string that was struck. */
export interface RingingString {
  readonly onsetSample: number;
  /** first partial, fractional MIDI */
  readonly pitch: number;
  readonly stiffness: number;
}

/** one look at a partial, samples: 46 ms, every 17 ms */
const WINDOW = 1024;
const HOP = 384;
/** partials asked, of the first so many, if no later note sounds within this of them, Hz */
const PARTIALS = 6;
const ASKED = 3;
const APART_HZ = (2 * RATE_HZ) / WINDOW;
const HIGHEST_HZ = 5000;
/** a tone is damped when it falls so far below its own decay … */
const DAMPED_DB = 10;
/** … and the damper fell when it last was within this of it */
const KNEE_DB = 2.5;
/** strings above have no dampers (common practice, no source: the top octave and a half) */
const UNDAMPED_PITCH = 88.5;
/** an undamped string loses about so much a second at A0 and at C7, dB (measured on the development pianos) */
const DECAY_LOW = 12;
const DECAY_HIGH = 60;

/** Struck strings → when their dampers fell, from the fading of partials that no later note shares. Holds its buffers. */
export class ReleaseFinder {
  readonly #history: SampleHistory;
  readonly #samples = new Float64Array(WINDOW);
  readonly #window = hann(WINDOW);

  constructor(history: SampleHistory) {
    this.#history = history;
  }

  /** @param later strings struck after it; @param end sample up to which the sound is known; null: cannot be heard */
  find(string: RingingString, later: readonly RingingString[], end: number): number | null {
    const { pitch, stiffness } = string;
    if (pitch > UNDAMPED_PITCH) return null;
    const freqs = Array.from({ length: PARTIALS }, (_, i) => midiToHz(pitch) * partialRatio(i + 1, stiffness))
      .filter((freqHz) => freqHz < HIGHEST_HZ && !later.some((other) => soundsNear(other, freqHz)))
      .slice(0, ASKED);
    if (freqs.length === 0) return null;
    const decayDb = (DECAY_LOW + ((DECAY_HIGH - DECAY_LOW) * (pitch - 21)) / 75) * (HOP / RATE_HZ);
    let expected = -Infinity;
    let knee: number | null = null;
    let low = 0;
    for (let at = string.onsetSample + HOP; at + WINDOW <= end; at += HOP) {
      const levelDb = 10 * Math.log10(this.#power(at, freqs) + 1e-14);
      expected = Math.max(levelDb, expected - decayDb);
      const lost = expected - levelDb;
      if (lost < KNEE_DB) {
        knee = at + WINDOW / 2;
        low = 0;
      } else if (lost >= DAMPED_DB) low += 1;
      if (low >= 2) return knee;
    }
    return null;
  }

  #power(start: number, freqs: readonly number[]): number {
    const samples = this.#history.read(start, this.#samples);
    for (let i = 0; i < WINDOW; i++) samples[i] = samples[i]! * this.#window[i]!;
    let total = 0;
    for (const freqHz of freqs) {
      // One bin of a Fourier transform (Goertzel 1958).
      const twice = 2 * Math.cos((2 * Math.PI * freqHz) / RATE_HZ);
      let one = 0;
      let two = 0;
      for (let i = 0; i < WINDOW; i++) {
        const next = samples[i]! + twice * one - two;
        two = one;
        one = next;
      }
      total += one * one + two * two - twice * one * two;
    }
    return total / (WINDOW * WINDOW);
  }
}

function soundsNear(other: RingingString, freqHz: number): boolean {
  const firstHz = midiToHz(other.pitch);
  const nearest = Math.max(1, Math.round(freqHz / firstHz));
  return Math.abs(firstHz * partialRatio(nearest, other.stiffness) - freqHz) < APART_HZ;
}
