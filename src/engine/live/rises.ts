import { PowerSpectrum } from '../base/fft.ts';
import { hann } from '../base/windows.ts';
import type { SampleHistory } from '../listen/audio/index.ts';

/** one look every 5.8 ms over 23 ms */
const HOP = 128;
const SIZE = 512;
/** bands of half an octave and more from 86 Hz to 10 kHz, bins of 43 Hz */
const EDGES = [2, 4, 6, 9, 13, 18, 25, 35, 50, 70, 100, 140, 232] as const;
/** a band counts as louder than before against its loudest of so many looks before, the nearest left out */
const BEFORE = { from: 2, to: 6 } as const;
/** what a band holds below this adds no rise: −100 dB */
const FLOOR = 1e-10;
/** mean rise of the bands that begins a blow, dB */
const LEAST_RISE_DB = 0.9;
/** and against the usual rise of the last second: noise rises all the time */
const TIMES_USUAL = 1.8;
const USUAL_LOOKS = 172;
/** a blow is one for so long, looks: 29 ms */
const ONE_BLOW = 5;

/**
 * Samples → moments at which something may have been struck, some 15 ms after it was: where the spectrum rises (half-wave
 * rectified flux of logarithmic band powers, as in Dixon 2006; from memory). Rather too many than too few: what was struck, if
 * anything, the network says.
 */
export class RiseWatch {
  readonly #history: SampleHistory;
  readonly #spectrum = new PowerSpectrum(SIZE);
  readonly #window = hann(SIZE);
  readonly #samples = new Float64Array(SIZE);
  /** levels by band of the latest looks, a ring */
  readonly #levels = Array.from({ length: BEFORE.to + 1 }, () => new Float64Array(EDGES.length - 1));
  readonly #rises = new Float64Array(USUAL_LOOKS);
  #usual = 0;
  #look = 0;
  #quietUntil = 0;

  constructor(history: SampleHistory) {
    this.#history = history;
  }

  /** To be called whenever the history has grown. Returns the ends of the looks in which something began to rise, samples. */
  advance(): number[] {
    const found: number[] = [];
    for (; (this.#look + 1) * HOP <= this.#history.end; this.#look += 1)
      if (this.#rises_()) found.push((this.#look + 1) * HOP);
    return found;
  }

  #rises_(): boolean {
    const power = this.#spectrum.measure(
      this.#history.read((this.#look + 1) * HOP - SIZE, this.#samples),
      this.#window,
    );
    const ring = this.#levels.length;
    const now = this.#levels[this.#look % ring]!;
    let rise = 0;
    for (let band = 0; band < now.length; band++) {
      let sum = FLOOR;
      for (let bin = EDGES[band]!; bin < EDGES[band + 1]!; bin++) sum += power[bin]!;
      now[band] = 10 * Math.log10(sum);
      let loudest = -Infinity;
      for (let back = BEFORE.from; back <= BEFORE.to; back++)
        loudest = Math.max(loudest, this.#levels[(this.#look - back + 8 * ring) % ring]![band]!);
      rise += Math.max(0, now[band]! - loudest) / now.length;
    }
    if (this.#look < BEFORE.to) return false;
    const place = this.#look % USUAL_LOOKS;
    // A blow itself is not usual.
    const counted = Math.min(rise, LEAST_RISE_DB);
    this.#usual += (counted - this.#rises[place]!) / USUAL_LOOKS;
    this.#rises[place] = counted;
    const rising = rise > Math.max(LEAST_RISE_DB, TIMES_USUAL * this.#usual);
    if (!rising || this.#look < this.#quietUntil) return false;
    this.#quietUntil = this.#look + ONE_BLOW;
    return true;
  }
}
