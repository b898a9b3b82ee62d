import { peakOffset } from '../../base/parabola.ts';
import { hann } from '../../base/windows.ts';
import { RATE_HZ } from '../audio/index.ts';
import type { SampleHistory } from '../audio/index.ts';
import { windowedPower } from '../partials/power.ts';

const SIZE = 8192;
const BIN_HZ = RATE_HZ / SIZE;
/** one look every 372 ms */
const EVERY = 8192;
const LOWEST_BIN = Math.round(150 / BIN_HZ);
const HIGHEST_BIN = Math.round(1500 / BIN_HZ);
/** lines count above this share of the strongest amplitude of their moment */
const LEAST_SHARE = 0.03;
/** the offset is first read within these 100 cents: a neglected piano is flat, so more of them lie below zero */
const LOWEST_CENTS = -60;
/** a piano read near that edge stays on its side of it, but no further than this beyond */
const BEYOND_CENTS = 20;

/**
 * Where the lines of a sound lie between the semitones of A4 = 440 Hz: circular mean over spectral peaks from 150 to 1500 Hz,
 * as much as has been heard so far. Good to some 3 cents; the strings themselves are measured later.
 */
export class RoughTuning {
  readonly #history: SampleHistory;
  readonly #spectrum = windowedPower(SIZE);
  readonly #window = this.#spectrum.window('hann', () => hann(SIZE));
  readonly #samples = new Float64Array(SIZE);
  readonly #power = new Float32Array(SIZE / 2);
  #next = SIZE;
  #x = 0;
  #y = 0;
  #loudest = 0;
  readonly #knownCents: number | null;
  #cents: number | null = null;
  /** seconds that were loud enough to speak */
  heardSec = 0;

  /** @param knownCents what the piano was tuned to when it was last heard: −70 is then not taken for +30 */
  constructor(history: SampleHistory, knownCents: number | null = null) {
    this.#history = history;
    this.#knownCents = knownCents;
  }

  /** To be called whenever the history has grown. */
  advance(): void {
    for (; this.#next <= this.#history.end; this.#next += EVERY) this.#look(this.#next - SIZE);
  }

  /** Offset in cents, without a jump from what was said before: a piano 60 cents flat stays so. */
  cents(): number {
    if (this.#x === 0 && this.#y === 0) return this.#cents ?? this.#knownCents ?? 0;
    const angle = (100 * Math.atan2(this.#y, this.#x)) / (2 * Math.PI);
    const lowest = this.#lowest();
    this.#cents = angle - 100 * Math.floor((angle - lowest) / 100);
    return this.#cents;
  }

  /** From where on the 100 cents are counted. A voice before the playing lies anywhere and goes round them: what it was last read at does not bind. */
  #lowest(): number {
    if (this.#knownCents !== null) return this.#knownCents - 50;
    if (this.#cents === null) return LOWEST_CENTS;
    return Math.min(Math.max(this.#cents - 50, LOWEST_CENTS - BEYOND_CENTS), LOWEST_CENTS + BEYOND_CENTS);
  }

  #look(start: number): void {
    const power = this.#power;
    this.#spectrum.measure(this.#history.read(start, this.#samples), this.#window, power);
    let strongest = 0;
    for (let bin = LOWEST_BIN; bin < HIGHEST_BIN; bin++) strongest = Math.max(strongest, power[bin]!);
    if (strongest < 1e-12 || strongest < 1e-4 * this.#loudest) return;
    this.#loudest = Math.max(this.#loudest, strongest);
    this.heardSec += EVERY / RATE_HZ;
    const least = LEAST_SHARE * LEAST_SHARE * strongest;
    for (let bin = LOWEST_BIN; bin < HIGHEST_BIN; bin++) {
      const here = power[bin]!;
      if (here <= least || here <= power[bin - 1]! || here < power[bin + 1]!) continue;
      const freqHz = (bin + peakOffset(power, bin)) * BIN_HZ;
      const angle = 2 * Math.PI * 12 * Math.log2(freqHz / 440);
      const weight = here ** 0.25;
      this.#x += weight * Math.cos(angle);
      this.#y += weight * Math.sin(angle);
    }
  }
}
