import type { Moment } from './moments.ts';
import type { Slid } from './templates.ts';
import { COSTS, FOLLOWING } from '../costs/index.ts';

/** Fetched once, since they are asked for at every step of every moment. */
const { missed, extra: strange, wrong, covered, slip: slipped, ghost: ghostly } = COSTS;
const { anotherChord, brokenChord, repeated, repeatedToo, wrongSemitones } = FOLLOWING;

/** What moments cost at the steps of one exercise, in units of one missed note. */
export class StepCosts {
  readonly #steps: readonly (readonly number[])[];

  constructor({ template, semitones }: Slid) {
    this.#steps = template.steps.map((keys) => keys.map((key) => key + semitones));
  }

  /** A moment that is of no step. */
  extra({ weights }: Moment): number {
    let sum = 0;
    for (const weight of weights) sum += weight;
    return strange * sum;
  }

  /** A moment taken for a step: what is missing in it, what is too much, and what stands in place of another key. */
  match({ keys, weights }: Moment, step: number): number {
    const wanted = this.#steps[step]!;
    if (keys.length === 1 && wanted.length === 1) return single(keys[0]! - wanted[0]!, weights[0]!);
    let right = 0;
    for (const key of wanted) if (keys.includes(key)) right++;
    if (right === 0 && wanted.length > 1) return Infinity;
    let cost = 0;
    let taken = 0;
    for (const key of wanted) {
      if (keys.includes(key)) continue;
      const stranger = nearest(key, keys, wanted, taken);
      if (stranger >= 0) {
        taken |= 1 << stranger;
        cost += wrong;
      } else cost += wanted.includes(key - 12) && keys.includes(key - 12) ? covered : missed;
    }
    keys.forEach((key, index) => {
      if ((taken & (1 << index)) !== 0 || wanted.includes(key)) return;
      const slip = wanted.some((other) => Math.abs(other - key) <= 2);
      const ghost = wanted.some((other) => key - other === 12 || key - other === 19 || key - other === 24);
      cost += weights[index]! * (slip ? slipped : ghost ? ghostly : strange);
    });
    const isAnother = 2 * right < wanted.length && right < keys.length;
    return isAnother ? cost + anotherChord * wanted.length : cost;
  }

  /** Two moments taken for one step of several keys, beyond what the first cost; Infinity where the second says nothing new. */
  joined(first: Moment, second: Moment, step: number): number {
    const wanted = this.#steps[step]!;
    if (wanted.length === 1 || !second.close) return Infinity;
    if (!second.keys.some((key) => wanted.includes(key) && !first.keys.includes(key))) return Infinity;
    const keys = [...first.keys];
    const weights = [...first.weights];
    second.keys.forEach((key, index) => {
      if (keys.includes(key)) return;
      keys.push(key);
      weights.push(second.weights[index]!);
    });
    const before = this.match(first, step);
    if (before === Infinity) return Infinity;
    return this.match({ ...second, keys, weights }, step) - before + brokenChord;
  }

  /** A moment after its step has sounded: keys of it again, else `extra`. */
  again({ keys }: Moment, step: number, extra: number): number {
    const wanted = this.#steps[step]!;
    if (!keys.every((key) => wanted.includes(key))) return extra;
    return Math.min(repeated + repeatedToo * (keys.length - 1), extra);
  }
}

function single(apart: number, weight: number): number {
  if (apart === 0) return 0;
  return Math.abs(apart) <= wrongSemitones ? wrong : missed + strange * weight;
}

/** The key, not wanted itself and not yet taken, that was struck in place of a wanted one. */
function nearest(key: number, keys: readonly number[], wanted: readonly number[], taken: number): number {
  let best = -1;
  keys.forEach((other, index) => {
    const apart = Math.abs(other - key);
    if (apart > wrongSemitones || wanted.includes(other) || (taken & (1 << index)) !== 0) return;
    if (best < 0 || apart < Math.abs(keys[best]! - key)) best = index;
  });
  return best;
}
