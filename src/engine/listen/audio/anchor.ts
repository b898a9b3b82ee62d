import { RATE_HZ } from './rate.ts';

/** the power of the last 3 ms … */
const NOW = 64;
/** … against that of the 23 ms before them */
const BEFORE = 512;
/** a blow: so many times as much, 15 dB */
const RISE = 32;
/** power below which nothing counts as a blow: −80 dB */
const FLOOR = 1e-8;
/** the first blow is sought among those of so many samples, 2 s: one far softer than the rest is where a noise began */
const LOOK = 2 * RATE_HZ;
const LEAST_SHARE = 0.1;
/** a blow is as loud as it becomes within 20 ms, and is one for 50 ms */
const GROWS = Math.round(0.02 * RATE_HZ);
const ONE_BLOW = Math.round(0.05 * RATE_HZ);
/** a blow is waited for so long, samples; where none comes the sound stays where it is */
const MOST_WAIT = 15 * RATE_HZ;
/** room for a first blow after two seconds */
const FIRST_ROOM = 2 * LOOK;
/** handed on at once */
const OUT = 4096;

/**
 * A sound → the same sound with so much silence before it that its first blow falls on a grid. Whoever looks every so many
 * samples then looks at the same places of the music, however much silence the recording begins with: one attempt heard live and
 * opened from a file gives the same onsets. Everything is held
 * back until two seconds after it.
 */
export class Anchor {
  readonly #period: number;
  readonly #emit: (block: Float64Array, length: number) => void;
  /** told where the first blow falls, before anything is handed on */
  readonly #onBlow: (sample: number) => void;
  /** samples held back; null once they have been handed on */
  #held: Float64Array | null = new Float64Array(FIRST_ROOM);
  #heldLength = 0;
  readonly #blows: { readonly at: number; power: number }[] = [];
  #now = 0;
  #before = 0;
  /** silence put before the sound, samples; 0 until that is decided */
  padding = 0;

  constructor(
    period: number,
    emit: (block: Float64Array, length: number) => void,
    onBlow: (sample: number) => void = () => undefined,
  ) {
    this.#period = period;
    this.#emit = emit;
    this.#onBlow = onBlow;
  }

  push(block: Float64Array, length: number): void {
    let from = 0;
    for (; from < length && this.#held !== null; from++) this.#hold(this.#roomIn(this.#held), block[from]!);
    if (from < length) this.#emit(from === 0 ? block : block.slice(from, length), length - from);
  }

  finish(): void {
    if (this.#held !== null) this.#decide(this.#held.subarray(0, this.#heldLength));
  }

  /** The samples held back, with room for one more. */
  #roomIn(held: Float64Array): Float64Array {
    if (this.#heldLength < held.length) return held;
    const larger = new Float64Array(Math.min(2 * held.length, MOST_WAIT));
    larger.set(held);
    return (this.#held = larger);
  }

  #hold(held: Float64Array, sample: number): void {
    const at = this.#heldLength++;
    held[at] = sample;
    const leaving = at < NOW ? 0 : held[at - NOW]!;
    const gone = at < NOW + BEFORE ? 0 : held[at - NOW - BEFORE]!;
    this.#now += sample * sample - leaving * leaving;
    this.#before += leaving * leaving - gone * gone;
    const last = this.#blows.at(-1);
    const rises = this.#now / NOW > RISE * Math.max(this.#before / BEFORE, 0) + FLOOR;
    if (last !== undefined && at - last.at < GROWS) last.power = Math.max(last.power, this.#now);
    else if (rises && at >= NOW + BEFORE && (last === undefined || at - last.at > ONE_BLOW))
      this.#blows.push({ at, power: this.#now });
    const since = this.#blows[0]?.at ?? at;
    if (at - since >= LOOK || at + 1 >= MOST_WAIT) this.#decide(held.subarray(0, at + 1));
  }

  #decide(held: Float64Array): void {
    const loudest = Math.max(...this.#blows.map(({ power }) => power));
    const first = this.#blows.find(({ power }) => power >= LEAST_SHARE * loudest);
    if (first === undefined) return this.#release(held, 0);
    const padding = (this.#period - (first.at % this.#period)) % this.#period;
    this.#onBlow(first.at + padding);
    this.#release(held, padding);
  }

  #release(held: Float64Array, padding: number): void {
    this.#held = null;
    this.padding = padding;
    const whole = new Float64Array(padding + held.length);
    whole.set(held, padding);
    for (let from = 0; from < whole.length; from += OUT) {
      const part = whole.slice(from, from + OUT);
      this.#emit(part, part.length);
    }
  }
}
