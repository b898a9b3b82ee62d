import { hann } from '../base/windows.ts';
import { RATE_HZ } from './audio/index.ts';
import type { SampleHistory } from './audio/index.ts';
import { windowedPower } from './partials/power.ts';

/** one look every 0.74 s */
const EVERY = 16384;
const SIZE = 8192;
const BIN_HZ = RATE_HZ / SIZE;
/** mains of the world, Hz (IEC 60038) */
const MAINS_HZ = [50, 60] as const;
const HARMONICS = 6;
/** looks that are needed before anything is said */
const LEAST_LOOKS = 4;
/** a line counts as hum when even its weakest moment stands so far above its surroundings', dB */
const STANDS_OUT_DB = 10;
const LEAST_LINES = 2;

/** Mains hum found in a recording. */
export interface HumFacts {
  readonly mainsHz: 50 | 60;
  /** power of its lines together, dB of a full-scale sine */
  readonly levelDb: number;
}

/** Watches for hum: lines at multiples of the mains frequency that never go away, as no played note does. */
export class HumWatch {
  readonly #history: SampleHistory;
  readonly #spectrum = windowedPower(SIZE);
  readonly #window = this.#spectrum.window('hann', () => hann(SIZE));
  readonly #samples = new Float64Array(SIZE);
  readonly #power = new Float32Array(SIZE / 2);
  readonly #line = MAINS_HZ.map(() => new Float64Array(HARMONICS).fill(Infinity));
  readonly #beside = MAINS_HZ.map(() => new Float64Array(HARMONICS).fill(Infinity));
  #next = EVERY;
  #looks = 0;

  readonly #leastLooks: number;

  /** @param leastLooks fewer will do where it is known that nobody plays */
  constructor(history: SampleHistory, leastLooks = LEAST_LOOKS) {
    this.#history = history;
    this.#leastLooks = leastLooks;
  }

  /** To be called whenever the history has grown. */
  advance(): void {
    for (; this.#next <= this.#history.end; this.#next += EVERY) this.#look(this.#next);
  }

  #look(end: number): void {
    this.#looks += 1;
    const power = this.#power;
    this.#spectrum.measure(this.#history.read(end - SIZE, this.#samples), this.#window, power);
    MAINS_HZ.forEach((mainsHz, which) => {
      for (let k = 0; k < HARMONICS; k++) {
        const bin = Math.round(((k + 1) * mainsHz) / BIN_HZ);
        const line = Math.max(power[bin - 1]!, power[bin]!, power[bin + 1]!);
        const beside = (power[bin - 6]! + power[bin - 5]! + power[bin + 5]! + power[bin + 6]!) / 4;
        this.#line[which]![k] = Math.min(this.#line[which]![k]!, line);
        this.#beside[which]![k] = Math.min(this.#beside[which]![k]!, beside);
      }
    });
  }

  facts(): HumFacts | null {
    if (this.#looks < this.#leastLooks) return null;
    const found = MAINS_HZ.map((mainsHz, which) => {
      const lines = [...this.#line[which]!].filter(
        (line, k) => line > this.#beside[which]![k]! * 10 ** (STANDS_OUT_DB / 10) && line > 1e-10,
      );
      return { mainsHz, lines: lines.length, power: lines.reduce((sum, line) => sum + line, 0) };
    }).sort((a, b) => b.lines - a.lines || b.power - a.power)[0]!;
    if (found.lines < LEAST_LINES) return null;
    return { mainsHz: found.mainsHz, levelDb: 10 * Math.log10(found.power) };
  }
}
