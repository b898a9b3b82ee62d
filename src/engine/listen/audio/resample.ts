import { createSums } from '../../sums/index.ts';
import type { Dots } from '../../sums/index.ts';

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

/** samples taken, and of output handed on, at once */
const STRETCH = 4096;
const BYTES = Float64Array.BYTES_PER_ELEMENT;

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
  readonly #sums = createSums();
  readonly #job: Dots;
  /** where the taps of each phase lie, one after the other, and the samples that outputs to come still need */
  readonly #tapsAt: number;
  readonly #heldAt: number;
  readonly #held: Float64Array;
  readonly #places: Int32Array;
  readonly #out: Float64Array;
  #heldLength: number;
  /** index in the sound of the first sample held */
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
    const span = 2 * this.#half;
    const sums = this.#sums;
    const room = STRETCH + 2 * span;
    this.#tapsAt = sums.reserve(this.#phases * span * BYTES);
    this.#heldAt = sums.reserve(room * BYTES);
    const places = sums.reserve(2 * STRETCH * Int32Array.BYTES_PER_ELEMENT);
    const output = sums.reserve(STRETCH * BYTES);
    this.#job = { places, length: span, output };
    for (let phase = 0; phase < this.#phases; phase++)
      new Float64Array(sums.memory, this.#tapsAt + phase * span * BYTES, span).set(
        this.#filter(phase / this.#phases, cutoff),
      );
    this.#held = new Float64Array(sums.memory, this.#heldAt, room);
    this.#places = new Int32Array(sums.memory, places, 2 * STRETCH);
    this.#out = new Float64Array(sums.memory, output, STRETCH);
    // Silence before the start, so that the first outputs have their whole span.
    this.#start = 1 - span;
    this.#heldLength = -this.#start;
  }

  /** Takes the first `length` samples of a block. */
  push(block: Float64Array, length: number): void {
    this.#taken += length;
    if (this.fromHz === this.toHz) {
      this.#made += length;
      this.#emit(block, length);
      return;
    }
    for (let from = 0; from < length; from += STRETCH) {
      this.#hold(block.subarray(from, Math.min(from + STRETCH, length)));
      this.#drain();
    }
  }

  /** Brings out the rest, as if silence followed. */
  finish(): void {
    if (this.fromHz === this.toHz) return;
    this.#hold(new Float64Array(2 * this.#half));
    this.#drain(Math.floor((this.#taken * this.toHz) / this.fromHz));
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

  #hold(samples: Float64Array): void {
    this.#held.set(samples, this.#heldLength);
    this.#heldLength += samples.length;
  }

  /** Makes every output whose span is held, and lets go of the samples that no output needs any more. */
  #drain(most = Infinity): void {
    for (let filled = STRETCH; filled === STRETCH;) {
      filled = this.#placeOutputs(most);
      this.#sums.dots(this.#job, filled);
      this.#made += filled;
      if (filled > 0) this.#emit(this.#out, filled);
    }
    const drop = Math.min(Math.max(this.#firstOf(this.#made), 0), this.#heldLength);
    this.#held.copyWithin(0, drop, this.#heldLength);
    this.#heldLength -= drop;
    this.#start += drop;
  }

  /** Says where the taps and the span of each output to come lie; returns how many, a stretch at most. */
  #placeOutputs(most: number): number {
    const span = 2 * this.#half;
    let filled = 0;
    for (; filled < STRETCH && this.#made + filled < most; filled++) {
      const made = this.#made + filled;
      const first = this.#firstOf(made);
      if (first + span > this.#heldLength) break;
      this.#places[2 * filled] = this.#tapsAt + (this.#phaseOf(made) % this.#phases) * span * BYTES;
      this.#places[2 * filled + 1] = this.#heldAt + first * BYTES;
    }
    return filled;
  }

  /** Where the span of output k begins, counted in the samples held: half − 1 before the one that it follows. */
  #firstOf(made: number): number {
    const whole = Math.floor((made * this.fromHz) / this.toHz);
    const next = this.#phaseOf(made) === this.#phases ? 1 : 0;
    return whole - this.#half + 1 - this.#start + next;
  }

  /** How far output k lies after that sample, in parts of the way to the next: so many is the next one itself. */
  #phaseOf(made: number): number {
    const position = (made * this.fromHz) / this.toHz;
    return Math.round((position - Math.floor(position)) * this.#phases);
  }
}
