import type { Moment } from './moments.ts';
import { StepCosts } from './step-costs.ts';
import type { Slid } from './templates.ts';
import { COSTS, costAtEnd, FOLLOWING } from '../costs/index.ts';

/** Fetched once, since they are asked for at every step of every moment. */
const { beginning, goingBackFar, mostBack, mostSkipped } = FOLLOWING;

/** Where an exercise may be followed, by index of moment; `to` is one past the last. */
export interface Reach {
  readonly from: number;
  readonly to: number;
}

/** An exercise that has come to its end, or is broken off, with the last moment taken. */
export interface Arrival {
  /** of the whole account up to here */
  readonly cost: number;
  /** the moment in which it began, and what the account had come to there */
  readonly from: number;
  readonly begun: number;
  /** the last step taken */
  readonly step: number;
}

/** One exercise followed moment by moment: the cheapest way to have reached each of its steps, wherever it began. */
export class Walk<Runner extends Slid> {
  readonly runner: Runner & Reach;
  readonly #moments: readonly Moment[];
  readonly #costs: StepCosts;
  readonly #skip: readonly number[];
  readonly #end: readonly number[];
  readonly #wrongStart: number;
  readonly #back: number;
  /** what the account came to where it began, by moment */
  readonly #begun: number[] = [];
  /** cheapest way to stand at each step, where it began, and whether the last moment was of that step */
  #cost: Float64Array;
  #from: Int32Array;
  #fresh: Uint8Array;
  #nextCost: Float64Array;
  #nextFrom: Int32Array;
  #nextFresh: Uint8Array;
  #isUnderWay = false;
  /** the cheapest way into the step that is looked at, and where it began */
  #way = Infinity;
  #wayFrom = -1;

  constructor(runner: Runner & Reach, moments: readonly Moment[]) {
    const { steps, size } = runner.template;
    const keysAStep = size / steps.length;
    this.runner = runner;
    this.#moments = moments;
    this.#costs = new StepCosts(runner);
    this.#skip = steps.map((keys) => COSTS.missed * keys.length);
    this.#end = endCosts(steps, keysAStep);
    this.#wrongStart = COSTS.goingBack * keysAStep;
    this.#back = COSTS.goingBack + COSTS.goingBackToo * (keysAStep - 1);
    this.#cost = new Float64Array(steps.length).fill(Infinity);
    this.#nextCost = new Float64Array(steps.length);
    this.#from = new Int32Array(steps.length);
    this.#nextFrom = new Int32Array(steps.length);
    this.#fresh = new Uint8Array(steps.length);
    this.#nextFresh = new Uint8Array(steps.length);
  }

  /**
   * Takes the moment `at`, before which an exercise may begin at the cost of `begin`; ways that cost much more than `idle` are
   * given up. The cheapest account in which the exercise ends with this moment; null where there is none.
   */
  advance(at: number, idle: number, begin: number): Arrival | null {
    const moment = this.#moments[at]!;
    this.#begun[at] = begin;
    if (at > 0 && moment.timeSec - this.#moments[at - 1]!.lastSec > FOLLOWING.longestPauseSec)
      this.#cost.fill(Infinity);
    const paused = moment.paused ? FOLLOWING.pause : 0;
    const hopeless = idle + FOLLOWING.hopeless;
    const extra = this.#costs.extra(moment);
    let endCost = Infinity;
    let endFrom = -1;
    let endStep = 0;
    let isUnderWay = false;
    for (let step = 0; step < this.#cost.length; step++) {
      this.#way = Infinity;
      if (step <= mostSkipped) this.#beginAt(step, at, begin);
      if (this.#isUnderWay) {
        this.#goOnTo(step, paused);
        if (step > 0) this.#goBackTo(step);
      }
      let total = this.#way < hopeless ? this.#way + this.#costs.match(moment, step) : Infinity;
      let from = this.#wayFrom;
      let fresh = 1;
      const here = this.#cost[step]!;
      if (here < hopeless) {
        const joined =
          this.#fresh[step] === 1 ? this.#costs.joined(this.#moments[at - 1]!, moment, step) : Infinity;
        const again = paused + this.#costs.again(moment, step, extra);
        if (here + Math.min(joined, again) < total) {
          total = here + Math.min(joined, again);
          from = this.#from[step]!;
          fresh = joined < again ? 1 : 0;
        }
      }
      this.#nextCost[step] = total > hopeless ? Infinity : total;
      if (total > hopeless) continue;
      isUnderWay = true;
      this.#nextFrom[step] = from;
      this.#nextFresh[step] = fresh;
      if (fresh === 0 || total + this.#end[step]! >= endCost) continue;
      endCost = total + this.#end[step]!;
      endFrom = from;
      endStep = step;
    }
    this.#isUnderWay = isUnderWay;
    this.#turnOver();
    return endFrom < 0 ? null : { cost: endCost, from: endFrom, begun: this.#begun[endFrom]!, step: endStep };
  }

  /** Where the cheapest way stands after the last moment, were it to go on; null where all are given up. */
  standing(): Arrival | null {
    const step = this.#cost.reduce((best, cost, at) => (cost < this.#cost[best]! ? at : best), 0);
    const cost = this.#cost[step]!;
    const from = this.#from[step]!;
    return cost === Infinity ? null : { cost, from, begun: this.#begun[from]!, step };
  }

  /** The exercise begins, its first steps perhaps left out. */
  #beginAt(step: number, at: number, begin: number): void {
    let cost = begin;
    for (let left = 0; left < step; left++) cost += this.#skip[left]!;
    this.#way = cost;
    this.#wayFrom = at;
  }

  /** From one of the steps before it, those between left out. */
  #goOnTo(step: number, paused: number): void {
    let skipped = paused;
    for (let before = step - 1; before >= Math.max(0, step - 1 - mostSkipped); before--) {
      this.#take(before, skipped);
      skipped += this.#skip[before]!;
    }
  }

  /** From one of the steps after it: a restart. */
  #goBackTo(step: number): void {
    const furthest = Math.min(this.#cost.length - 1, step + mostBack);
    for (let after = step + 1; after <= furthest; after++) {
      const back = after < beginning ? this.#wrongStart : this.#back;
      this.#take(after, back + goingBackFar * (after - step));
    }
  }

  #take(step: number, more: number): void {
    const way = this.#cost[step]! + more;
    if (way >= this.#way) return;
    this.#way = way;
    this.#wayFrom = this.#from[step]!;
  }

  #turnOver(): void {
    [this.#cost, this.#nextCost] = [this.#nextCost, this.#cost];
    [this.#from, this.#nextFrom] = [this.#nextFrom, this.#from];
    [this.#fresh, this.#nextFresh] = [this.#nextFresh, this.#fresh];
  }
}

/** What it costs to end with each step: among the first ones, or before the half of them, it is a wrong start and no attempt. */
function endCosts(steps: Slid['template']['steps'], keysAStep: number): readonly number[] {
  const least = Math.max(beginning, steps.length / 2);
  return steps.map((_, step) => {
    const left = steps.slice(step + 1).reduce((sum, keys) => sum + keys.length, 0);
    return step + 1 < least ? Infinity : costAtEnd(left, keysAStep);
  });
}
