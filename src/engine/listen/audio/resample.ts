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
  for (let k = 1; sum + term !== sum; k++) {
    term *= (x / (2 * k)) ** 2;
    sum += term;
  }
  return sum;
}

function greatestCommonDivisor(a: number, b: number): number {
  return b === 0 ? a : greatestCommonDivisor(b, a % b);
}

/** samples of output handed on at once */
const OUT = 4096;

/**
 * Sound at one rate → the same sound at another, by a windowed sinc in polyphase form (Smith, "Digital Audio Resampling";
 * Crochiere & Rabiner 1983). Zero delay: output sample k lies at k / toHz seconds exactly. Works as a stream.
 */
export class Resampler {
  readonly fromHz: number;
  readonly toHz: number;
  /** told of each stretch of output: its samples, reused, and how many of them count */
  readonly #emit: (block: Float64Array, length: number) => void;
  readonly #phases: number;
  readonly #half: number;
  readonly #taps: Float64Array[];
  readonly #out = new Float64Array(OUT);
  /** the samples that outputs to come still need, the first of them at index `#start` of the sound */
  #held: Float64Array;
  #heldLength: number;
  #start: number;
  #taken = 0;
  #made = 0;

  constructor(fromHz: number, toHz: number, emit: (block: Float64Array, length: number) => void) {
    this.fromHz = fromHz;
    this.toHz = toHz;
    this.#emit = emit;
    const whole = Number.isInteger(fromHz) && Number.isInteger(toHz);
    const exact = whole ? toHz / greatestCommonDivisor(fromHz, toHz) : MAX_PHASES;
    this.#phases = Math.min(exact, MAX_PHASES);
    const cutoff = PASS * Math.min(1, toHz / fromHz);
    // Even, so that the taps come in fours.
    this.#half = 2 * Math.ceil(CROSSINGS / Math.min(1, toHz / fromHz) / 2);
    this.#taps = Array.from({ length: this.#phases }, (_, phase) =>
      this.#filter(phase / this.#phases, cutoff),
    );
    // Silence before the start, so that the first outputs have their whole span.
    this.#held = new Float64Array(OUT + 4 * this.#half);
    this.#start = 1 - 2 * this.#half;
    this.#heldLength = -this.#start;
  }

  /** Takes the first `length` samples of a block. */
  push(block: Float64Array, length: number): void {
    if (this.fromHz === this.toHz) {
      this.#made += length;
      this.#taken += length;
      this.#emit(block, length);
      return;
    }
    this.#hold(block, length);
    this.#taken += length;
    this.#drain();
  }

  /** Brings out the rest, as if silence followed. */
  finish(): void {
    if (this.fromHz === this.toHz) return;
    const wanted = Math.floor((this.#taken * this.toHz) / this.fromHz);
    const silence = new Float64Array(1);
    while (this.#made < wanted) {
      this.#hold(silence, 1);
      this.#drain(wanted);
    }
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

  #hold(block: Float64Array, length: number): void {
    if (this.#heldLength + length > this.#held.length) {
      const larger = new Float64Array(2 * (this.#heldLength + length));
      larger.set(this.#held.subarray(0, this.#heldLength));
      this.#held = larger;
    }
    this.#held.set(length === block.length ? block : block.subarray(0, length), this.#heldLength);
    this.#heldLength += length;
  }

  /** Makes every output whose span is held, and lets go of the samples that no output needs any more. */
  #drain(most = Infinity): void {
    const half = this.#half;
    const span = 2 * half;
    const held = this.#held;
    const out = this.#out;
    let filled = 0;
    let first = 0;
    for (; this.#made < most; this.#made++) {
      // Output k lies between samples `whole` and whole + 1; its span begins half − 1 samples before.
      const position = (this.#made * this.fromHz) / this.toHz;
      let whole = Math.floor(position);
      let phase = Math.round((position - whole) * this.#phases);
      if (phase === this.#phases) {
        phase = 0;
        whole += 1;
      }
      first = whole - half + 1 - this.#start;
      if (first + span > this.#heldLength) break;
      out[filled++] = dot(this.#taps[phase]!, held, first);
      if (filled === OUT) {
        this.#emit(out, filled);
        filled = 0;
      }
    }
    if (filled > 0) this.#emit(out, filled);
    const drop = Math.min(Math.max(first, 0), this.#heldLength);
    held.copyWithin(0, drop, this.#heldLength);
    this.#heldLength -= drop;
    this.#start += drop;
  }
}

/** Σ taps[i] · samples[from + i], in four sums at once: one alone would wait for itself. The taps come in fours. */
function dot(taps: Float64Array, samples: Float64Array, from: number): number {
  let a = 0;
  let b = 0;
  let c = 0;
  let d = 0;
  for (let i = 0; i < taps.length; i += 4) {
    a += taps[i]! * samples[from + i]!;
    b += taps[i + 1]! * samples[from + i + 1]!;
    c += taps[i + 2]! * samples[from + i + 2]!;
    d += taps[i + 3]! * samples[from + i + 3]!;
  }
  return a + b + c + d;
}
