/** zero crossings of the sinc on each side; with the Kaiser window below the stop band lies near −60 dB */
const CROSSINGS = 12;
/** Kaiser β for about −65 dB (Kaiser 1974: β = 0.1102 (A − 8.7); from memory) */
const KAISER_BETA = 6.2;
/** pass band as a share of the lower Nyquist frequency */
const PASS = 0.92;
const MAX_PHASES = 2048;

/** Modified Bessel function I0 by its power series (Abramowitz & Stegun 9.6.12). */
function besselI0(x: number): number {
  let term = 1;
  let sum = 1;
  for (let k = 1; k < 40; k++) {
    term *= (x / (2 * k)) ** 2;
    sum += term;
  }
  return sum;
}

function greatestCommonDivisor(a: number, b: number): number {
  return b === 0 ? a : greatestCommonDivisor(b, a % b);
}

/**
 * Sound at one rate → the same sound at another, by a windowed sinc in polyphase form (Smith, "Digital Audio Resampling";
 * Crochiere & Rabiner 1983). Zero delay: output sample k lies at k / toHz seconds exactly. Works as a stream.
 */
export class Resampler {
  readonly fromHz: number;
  readonly toHz: number;
  readonly #emit: (sample: number) => void;
  readonly #phases: number;
  readonly #half: number;
  readonly #taps: Float64Array[];
  readonly #buffer: Float64Array;
  #taken = 0;
  #made = 0;
  /** last sample that the next output needs, and its filter */
  #newest = 0;
  #phase = 0;

  constructor(fromHz: number, toHz: number, emit: (sample: number) => void) {
    this.fromHz = fromHz;
    this.toHz = toHz;
    this.#emit = emit;
    const whole = Number.isInteger(fromHz) && Number.isInteger(toHz);
    const exact = whole ? toHz / greatestCommonDivisor(fromHz, toHz) : MAX_PHASES;
    this.#phases = Math.min(exact, MAX_PHASES);
    const cutoff = PASS * Math.min(1, toHz / fromHz);
    this.#half = Math.ceil(CROSSINGS / Math.min(1, toHz / fromHz));
    this.#taps = Array.from({ length: this.#phases }, (_, phase) =>
      this.#filter(phase / this.#phases, cutoff),
    );
    // Twice the span and mirrored, so that every span lies in one piece.
    this.#buffer = new Float64Array(4 * this.#half);
    this.#seek();
  }

  /** Takes the first `length` samples of a block. */
  push(block: Float64Array, length: number): void {
    if (this.fromHz === this.toHz) {
      for (let i = 0; i < length; i++) this.#emit(block[i]!);
      return;
    }
    const span = 2 * this.#half;
    const buffer = this.#buffer;
    let at = this.#taken % span;
    for (let i = 0; i < length; i++) {
      buffer[at] = block[i]!;
      buffer[at + span] = block[i]!;
      at = at + 1 === span ? 0 : at + 1;
      this.#taken += 1;
      if (this.#newest < this.#taken) this.#drain();
    }
  }

  /** Brings out the rest, as if silence followed. */
  finish(): void {
    if (this.fromHz === this.toHz) return;
    const wanted = Math.floor((this.#taken * this.toHz) / this.fromHz);
    const silence = new Float64Array(1);
    while (this.#made < wanted) this.push(silence, 1);
  }

  #filter(fraction: number, cutoff: number): Float64Array {
    const taps = new Float64Array(2 * this.#half);
    let sum = 0;
    for (let i = 0; i < taps.length; i++) {
      const x = i - this.#half + 1 - fraction;
      const edge = x / this.#half;
      if (Math.abs(edge) >= 1) continue;
      const sinc = x === 0 ? cutoff : Math.sin(Math.PI * cutoff * x) / (Math.PI * x);
      taps[i] = sinc * besselI0(KAISER_BETA * Math.sqrt(1 - edge * edge));
      sum += taps[i]!;
    }
    return taps.map((tap) => tap / sum);
  }

  /** Makes the output that the newest sample completes, and finds which sample the next one waits for. */
  #drain(): void {
    const span = 2 * this.#half;
    const buffer = this.#buffer;
    while (this.#newest < this.#taken) {
      const taps = this.#taps[this.#phase]!;
      const start = (this.#newest + 1) % span;
      let sum = 0;
      for (let i = 0; i < span; i++) sum += taps[i]! * buffer[start + i]!;
      this.#made += 1;
      this.#seek();
      this.#emit(sum);
    }
  }

  #seek(): void {
    const position = (this.#made * this.fromHz) / this.toHz;
    let first = Math.floor(position);
    this.#phase = Math.round((position - first) * this.#phases);
    if (this.#phase === this.#phases) {
      this.#phase = 0;
      first += 1;
    }
    this.#newest = first + this.#half;
  }
}
