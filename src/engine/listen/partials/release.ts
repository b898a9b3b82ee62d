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
  readonly #powers = new Float64Array(ASKED);

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

  /** Power of up to three partials together. */
  #power(start: number, freqs: readonly number[]): number {
    const samples = this.#history.read(start, this.#samples);
    for (let i = 0; i < WINDOW; i++) samples[i]! *= this.#window[i]!;
    measurePowers(samples, turn(freqs[0]), turn(freqs[1]), turn(freqs[2]), this.#powers);
    let total = 0;
    for (let i = 0; i < freqs.length; i++) total += this.#powers[i]!;
    return total / (WINDOW * WINDOW);
  }
}

/** A frequency → by what its recurrence turns. */
const turn = (freqHz = 0): number => 2 * Math.cos((2 * Math.PI * freqHz) / RATE_HZ);

/** Three bins of a Fourier transform (Goertzel 1958) into `out`, side by side: one alone would wait for itself. */
function measurePowers(samples: Float64Array, a: number, b: number, c: number, out: Float64Array): void {
  let a1 = 0;
  let a2 = 0;
  let b1 = 0;
  let b2 = 0;
  let c1 = 0;
  let c2 = 0;
  for (let i = 0; i < samples.length; i++) {
    const sample = samples[i]!;
    const nextA = sample + a * a1 - a2;
    const nextB = sample + b * b1 - b2;
    const nextC = sample + c * c1 - c2;
    a2 = a1;
    a1 = nextA;
    b2 = b1;
    b1 = nextB;
    c2 = c1;
    c1 = nextC;
  }
  out[0] = a1 * a1 + a2 * a2 - a * a1 * a2;
  out[1] = b1 * b1 + b2 * b2 - b * b1 * b2;
  out[2] = c1 * c1 + c2 * c2 - c * c1 * c2;
}

function soundsNear(other: RingingString, freqHz: number): boolean {
  const firstHz = midiToHz(other.pitch);
  const nearest = Math.max(1, Math.round(freqHz / firstHz));
  return Math.abs(firstHz * partialRatio(nearest, other.stiffness) - freqHz) < APART_HZ;
}
