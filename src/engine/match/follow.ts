import type { Moment } from './moments.ts';
import type { Slid } from './templates.ts';
import { StepCosts } from './step-costs.ts';
import { FOLLOWING } from './weights.ts';

/** An exercise followed through moments `from` to `to` (the last one, inclusive). */
export interface Stretch<Runner extends Slid> {
  readonly runner: Runner;
  readonly from: number;
  readonly to: number;
  /** of its faults, in units of one missed note */
  readonly cost: number;
}

/** The cheapest account of all that was struck. */
export interface Account<Runner extends Slid> {
  /** in order of time; what lies between them is no exercise */
  readonly stretches: readonly Stretch<Runner>[];
  /** of the whole, in units of one missed note */
  readonly cost: number;
}

/** Where each runner may be followed, by index of moment; `to` is one past the last. */
export interface Reach {
  readonly from: number;
  readonly to: number;
}

/**
 * What was struck and the exercises it may be → the cheapest account of it: which stretch is which exercise, and what is none.
 *
 * One dynamic programme over moments for all exercises at once. A moment is either of no exercise, which costs a little a
 * note, or it stands at a step of one: the next step, one of the two after it at the cost of what was left out, a step some places
 * back (a restart, not to the top), the same step (a chord not struck as one, a key struck again), or none of them, as an extra
 * one. To begin an exercise costs something, so that chance finds none. Its last steps may be left out at a price. Time counts
 * only as pauses: the longest ends whatever goes on. Work: moments × steps of the exercises within reach there.
 */
export function follow<Runner extends Slid>(
  moments: readonly Moment[],
  runners: readonly (Runner & Reach)[],
): Account<Runner> {
  const count = moments.length;
  /** cheapest account of all moments before this one, the last of them being of no exercise, or the end of one */
  const idle = new Float64Array(count + 1).fill(Infinity);
  const ended = new Float64Array(count + 1).fill(Infinity);
  const endsWith: (Ended<Runner> | null)[] = Array.from({ length: count + 1 }, () => null);
  idle[0] = 0;
  const inTurn = [...runners].sort((a, b) => a.from - b.from);
  let coming = 0;
  let walks: Walk<Runner>[] = [];
  for (let at = 0; at < count; at++) {
    walks = walks.filter(({ runner }) => runner.to > at);
    for (; coming < inTurn.length && inTurn[coming]!.from <= at; coming++)
      walks.push(new Walk(inTurn[coming]!, moments));
    const goesOn = isAbrupt(moments, at);
    const begin =
      FOLLOWING.begin +
      Math.min(idle[at]! + (goesOn ? FOLLOWING.abrupt : 0), ended[at]! + (goesOn ? FOLLOWING.again : 0));
    idle[at + 1] = idleCost(moments[at]!) + Math.min(idle[at]!, ended[at]! + (goesOn ? FOLLOWING.abrupt : 0));
    for (const walk of walks) {
      const end = walk.advance(at, idle[at + 1]!, begin);
      if (end === null || end.cost >= ended[at + 1]!) continue;
      ended[at + 1] = end.cost;
      endsWith[at + 1] = { runner: walk.runner, from: end.from, begun: end.begun };
    }
  }
  const cost = Math.min(idle[count]!, ended[count]!);
  return { stretches: stretchesOf(moments, idle, ended, endsWith), cost };
}

/** How an exercise ended: where it began, and the account there, beginning included. */
interface Ended<Runner extends Slid> {
  readonly runner: Runner;
  readonly from: number;
  readonly begun: number;
}

/** Back through the cheapest account. */
function stretchesOf<Runner extends Slid>(
  moments: readonly Moment[],
  idle: Float64Array,
  ended: Float64Array,
  endsWith: readonly (Ended<Runner> | null)[],
): readonly Stretch<Runner>[] {
  const stretches: Stretch<Runner>[] = [];
  let at = moments.length;
  let atEnd = ended[at]! < idle[at]!;
  while (at > 0) {
    const goesOn = (from: number, cost: number): number => (isAbrupt(moments, from) ? cost : 0);
    if (atEnd) {
      const { runner, from, begun } = endsWith[at]!;
      stretches.push({ runner, from, to: at - 1, cost: ended[at]! - begun });
      at = from;
      atEnd = ended[at]! + goesOn(at, FOLLOWING.again) < idle[at]! + goesOn(at, FOLLOWING.abrupt);
    } else {
      at--;
      atEnd = ended[at]! + goesOn(at, FOLLOWING.abrupt) < idle[at]!;
    }
  }
  return stretches.reverse();
}

/** What a moment costs that is of no exercise. */
export function idleCost({ weights }: Moment): number {
  let sum = 0;
  for (const weight of weights) sum += weight;
  return FOLLOWING.idle * sum;
}

/** One exercise, followed moment by moment. */
class Walk<Runner extends Slid> {
  readonly runner: Runner & Reach;
  readonly #moments: readonly Moment[];
  readonly #costs: StepCosts;
  readonly #skip: readonly number[];
  /** what the account came to where it began, by moment */
  readonly #begun: number[] = [];
  readonly #late: number;
  readonly #early: number;
  readonly #end: readonly number[];
  /** cheapest way to have reached each step last, where it began, and whether the last moment was of it */
  #cost: Float64Array;
  #from: Int32Array;
  #fresh: Uint8Array;
  #nextCost: Float64Array;
  #nextFrom: Int32Array;
  #nextFresh: Uint8Array;
  #any = false;

  constructor(runner: Runner & Reach, moments: readonly Moment[]) {
    const { steps } = runner.template;
    this.runner = runner;
    this.#moments = moments;
    this.#costs = new StepCosts(runner);
    this.#skip = steps.map((keys) => FOLLOWING.skipped * keys.length);
    const keys = runner.template.size / steps.length;
    this.#early = FOLLOWING.goingBack * keys;
    this.#late = FOLLOWING.goingBack + FOLLOWING.goingBackToo * (keys - 1);
    this.#end = endCosts(steps);
    this.#cost = new Float64Array(steps.length).fill(Infinity);
    this.#nextCost = new Float64Array(steps.length);
    this.#from = new Int32Array(steps.length);
    this.#nextFrom = new Int32Array(steps.length);
    this.#fresh = new Uint8Array(steps.length);
    this.#nextFresh = new Uint8Array(steps.length);
  }

  /** Takes the next moment; the cheapest account that ends with it at the end of the exercise, if there is one. */
  advance(
    at: number,
    idle: number,
    begin: number,
  ): (Omit<Ended<Runner>, 'runner'> & { cost: number }) | null {
    const moment = this.#moments[at]!;
    const cost = this.#cost;
    const next = this.#nextCost;
    const size = cost.length;
    const pauseSec = at > 0 ? moment.timeSec - this.#moments[at - 1]!.lastSec : 0;
    if (pauseSec > FOLLOWING.longestPauseSec) cost.fill(Infinity);
    const paused = moment.paused ? FOLLOWING.pause : 0;
    const hopeless = idle + FOLLOWING.hopeless;
    const extra = this.#costs.extra(moment);
    let endCost = Infinity;
    let endFrom = -1;
    let any = false;
    for (let step = 0; step < size; step++) {
      let best = Infinity;
      let from = -1;
      let bias = 0;
      // a beginning, the first two steps perhaps left out
      let skipped = 0;
      if (step <= FOLLOWING.mostSkipped) {
        for (let left = 0; left < step; left++) skipped += this.#skip[left]!;
        best = begin + skipped;
        from = at;
      }
      if (this.#any) {
        skipped = paused;
        for (let back = 1; back <= FOLLOWING.mostSkipped + 1 && back <= step; back++) {
          const way = cost[step - back]! + skipped;
          if (way < best) [best, from] = [way, this.#from[step - back]!];
          skipped += this.#skip[step - back]!;
        }
        if (step > 0)
          for (let ahead = 1; ahead <= FOLLOWING.mostBack && step + ahead < size; ahead++) {
            const back = step + ahead < FOLLOWING.beginning ? this.#early : this.#late;
            const way = cost[step + ahead]! + back + FOLLOWING.goingBackFar * ahead;
            if (way < best) [best, from] = [way, this.#from[step + ahead]!];
          }
      }
      if (best < hopeless) bias = this.#costs.match(moment, step);
      let total = best + bias;
      let fresh = 1;
      const here = cost[step]!;
      if (here < hopeless) {
        // the same step: the rest of its chord, a key of it again, or a moment that is of no step
        const joined =
          this.#fresh[step] === 1 ? this.#costs.joined(this.#moments[at - 1]!, moment, step) : Infinity;
        const again = paused + this.#costs.again(moment, step, extra);
        const way = here + Math.min(joined, again);
        if (way < total) {
          total = way;
          from = this.#from[step]!;
          fresh = joined < again ? 1 : 0;
        }
      }
      if (total > hopeless) {
        next[step] = Infinity;
        continue;
      }
      any = true;
      next[step] = total;
      this.#nextFrom[step] = from;
      this.#nextFresh[step] = fresh;
      const ended = total + this.#end[step]!;
      if (fresh === 1 && ended < endCost) [endCost, endFrom] = [ended, from];
    }
    this.#any = any;
    [this.#cost, this.#nextCost] = [this.#nextCost, this.#cost];
    [this.#from, this.#nextFrom] = [this.#nextFrom, this.#from];
    [this.#fresh, this.#nextFresh] = [this.#nextFresh, this.#fresh];
    this.#begun[at] = begin;
    return endFrom < 0 ? null : { cost: endCost, from: endFrom, begun: this.#begun[endFrom]! };
  }
}

/** Nothing parts a moment from the one before it. */
function isAbrupt(moments: readonly Moment[], at: number): boolean {
  const [last, next] = [moments[at - 1], moments[at]];
  return last !== undefined && next !== undefined && next.timeSec - last.lastSec < FOLLOWING.partingSec;
}

/** What it costs to end with each step. */
function endCosts(steps: Slid['template']['steps']): readonly number[] {
  let left = 0;
  return [...steps]
    .reverse()
    .map((keys) => {
      const cost = Math.min(FOLLOWING.leftAtEnd * left, FOLLOWING.leftAtEndAtMost);
      left += keys.length;
      return cost;
    })
    .reverse();
}
