import { peakOffset } from '../../base/parabola.ts';
import { midiToHz, powerToDb } from '../../base/units.ts';
import { hann, tukey } from '../../base/windows.ts';
import { RATE_HZ } from '../audio/index.ts';
import type { SampleHistory } from '../audio/index.ts';
import { windowedPower } from './power.ts';
import type { PowerWindow } from './power.ts';
import { partialRatio, typicalStiffness } from './stiffness.ts';

const FFT_SIZE = 4096;
const BIN_HZ = RATE_HZ / FFT_SIZE;
/** a note's loudness is that of its first 100 ms (the definition of level: report/measures/README.md) */
const LEVEL_SPAN = 2205;
const SHORTEST = 882;
/** spans come in steps, so that few windows are ever made */
const SPAN_STEP = 147;
/** pitch is read past the knock, over up to 186 ms, samples */
const AFTER_KNOCK = 110;
const PITCH_SPAN = 4096;
/** the sound before ends so long before the onset, samples: 3 ms */
const BEFORE_ONSET = 66;
/** share of the level's window that is tapered */
const TAPER = 0.25;
/** equivalent noise bandwidth of that window, bins (Harris 1978, table 1; from memory) */
const FLAT_BANDWIDTH = 1.1;
/** a partial's power lies within so many resolutions of its place, or within this share of its frequency */
const LINE_REACH = 1.5;
const LINE_SHARE = 0.006;
/** of what rang at a partial before, so much is still there afterwards: it fades, and its damper may have fallen */
const OLD_STAYS = 0.4;
/** at least this share of a partial's power counts as new */
const LEAST_NEW = 0.1;
const PARTIALS = 12;
const HIGHEST_HZ = 0.45 * RATE_HZ;
/** a partial is looked for within this of its place, cents; ±20 of a stray string and the ± of its stiffness */
const REACH_CENTS = 45;
/** a partial speaks of pitch when it grew by this ratio and lies within this ratio of the strongest */
const GREW = 4;
const STRONG = 10 ** -3;
/** weight of the design value of B against what the lines say, in units of n⁴ (a partial at n = 6) */
const STIFFNESS_PRIOR = 6 ** 4;

/** A struck string, looked at closely. */
export interface StringView {
  /** power of its own partials over its first 100 ms less what rang there before, dB (full-scale sine = 0) */
  readonly levelDb: number;
  /** first partial as a fractional MIDI number at A4 = 440 Hz; null where no partial is clear enough to say */
  readonly pitch: number | null;
  readonly stiffness: number;
}

/** The sound around an onset and the key that was struck → its loudness and pitch. Holds its buffers. */
export class StringProbe {
  readonly #history: SampleHistory;
  readonly #spectrum = windowedPower(FFT_SIZE);
  readonly #after = new Float32Array(FFT_SIZE / 2);
  readonly #before = new Float32Array(FFT_SIZE / 2);
  readonly #samples = new Float64Array(PITCH_SPAN);

  constructor(history: SampleHistory) {
    this.#history = history;
  }

  /** @param expected where the first partial should lie, fractional MIDI; @param next sample of the next onset */
  look(onset: number, next: number, expected: number): StringView {
    const string = this.#pitch(onset, next, expected);
    return { levelDb: this.#level(onset, next, string.pitch ?? expected, string.stiffness), ...string };
  }

  #level(onset: number, next: number, pitch: number, stiffness: number): number {
    const length = Math.min(
      LEVEL_SPAN,
      Math.max(SHORTEST, SPAN_STEP * Math.floor((next - onset) / SPAN_STEP)),
    );
    // Nearly flat, as the definition asks: a window that favours the middle hears little of a treble note.
    this.#measure(onset - Math.round((TAPER / 4) * length), length, 'flat');
    const leastHz = (LINE_REACH * RATE_HZ) / length;
    let sum = 0;
    for (const freqHz of partialsOf(pitch, stiffness)) {
      const reachHz = Math.min(Math.max(leastHz, LINE_SHARE * freqHz), 0.45 * midiToHz(pitch));
      const from = Math.max(1, Math.ceil((freqHz - reachHz) / BIN_HZ));
      const to = Math.floor((freqHz + reachHz) / BIN_HZ);
      let now = 0;
      let old = 0;
      for (let bin = from; bin <= to; bin++) {
        now += this.#after[bin]!;
        old += this.#before[bin]!;
      }
      sum += Math.max(LEAST_NEW * now, now - OLD_STAYS * old);
    }
    // A line's power spreads over as many bins as the window is short and tapered.
    return powerToDb((sum * length) / (FFT_SIZE * FLAT_BANDWIDTH));
  }

  /** (f_n / n)² = f² (1 + B n²): a line in n² through the clear partials, B held near its design value (Fletcher 1964). */
  #pitch(onset: number, next: number, expected: number): { pitch: number | null; stiffness: number } {
    const typical = typicalStiffness(expected);
    const start = onset + AFTER_KNOCK;
    const length = 512 * Math.floor(Math.min(PITCH_SPAN, Math.max(1024, next - start)) / 512);
    this.#measure(start, length, 'hann');
    const after = this.#after;
    const lines = partialsOf(expected, typical).flatMap((freqHz, i) => {
      const bin = this.#strongest(freqHz);
      const grew = after[bin]! > GREW * this.#before[bin]!;
      return grew ? [{ n: i + 1, freqHz: (bin + peakOffset(after, bin)) * BIN_HZ, power: after[bin]! }] : [];
    });
    const strongest = Math.max(0, ...lines.map(({ power }) => power));
    const clear = lines.filter(({ power }) => power > STRONG * strongest);
    if (clear.length === 0) return { pitch: null, stiffness: typical };
    const scale = midiToHz(expected) ** 2 / (1 + typical);
    let weights = 0;
    let sx = 0;
    let sy = 0;
    let sxx = 0;
    let sxy = 0;
    for (const { n, freqHz, power } of clear) {
      const weight = Math.sqrt(power / strongest) * n;
      const x = n * n;
      // what is left of the partial's place when the design value is taken out, as a share
      const y = (freqHz / n) ** 2 / scale - (1 + typical * x);
      weights += weight;
      sx += weight * x;
      sy += weight * y;
      sxx += weight * x * x;
      sxy += weight * x * y;
    }
    const slope = (sxy - (sx * sy) / weights) / (sxx - (sx * sx) / weights + STIFFNESS_PRIOR);
    const offset = (sy - slope * sx) / weights;
    if (!(offset > -0.5)) return { pitch: null, stiffness: typical };
    const square = 1 + offset;
    const stiffness = Math.min(Math.max((typical + slope) / square, typical / 3), 3 * typical);
    const pitch = expected + 6 * Math.log2((square * (1 + stiffness)) / (1 + typical));
    return { pitch: Math.abs(pitch - expected) < 0.5 ? pitch : null, stiffness };
  }

  #measure(start: number, length: number, shape: 'flat' | 'hann'): void {
    const window = this.#window(length, shape);
    this.#spectrum.measure(this.#history.read(start, this.#samples, length), window, this.#after);
    const before = start - BEFORE_ONSET - length;
    this.#spectrum.measure(this.#history.read(before, this.#samples, length), window, this.#before);
  }

  #strongest(freqHz: number): number {
    const ratio = 2 ** (REACH_CENTS / 1200);
    const from = Math.max(1, Math.round(freqHz / ratio / BIN_HZ));
    const to = Math.round((freqHz * ratio) / BIN_HZ);
    let at = from;
    for (let bin = from; bin <= to; bin++) if (this.#after[bin]! > this.#after[at]!) at = bin;
    return at;
  }

  #window(length: number, shape: 'flat' | 'hann'): PowerWindow {
    return this.#spectrum.window(`${shape} ${length}`, () =>
      shape === 'flat' ? tukey(length, TAPER) : hann(length),
    );
  }
}

/** The first partials of a string that lie in the band, Hz. */
export function partialsOf(pitch: number, stiffness: number): number[] {
  const firstHz = midiToHz(pitch);
  return Array.from({ length: PARTIALS }, (_, i) => firstHz * partialRatio(i + 1, stiffness)).filter(
    (freqHz) => freqHz < HIGHEST_HZ,
  );
}
