import type { Moment } from './moments.ts';
import type { Slid } from './templates.ts';
import { Walk } from './walk.ts';
import type { Arrival, Reach } from './walk.ts';
import { FOLLOWING } from '../costs/index.ts';

/** An exercise followed through moments `from` to `to` (the last one, inclusive). */
export interface FollowedStretch<Runner extends Slid> {
  readonly runner: Runner;
  readonly from: number;
  readonly to: number;
  /** the last step taken */
  readonly step: number;
  /** of its faults, in units of one missed note */
  readonly cost: number;
}

/** The cheapest account of all that was struck. */
export interface Account<Runner extends Slid> {
  /** in order of time; what lies between them is no exercise */
  readonly stretches: readonly FollowedStretch<Runner>[];
  /** of the whole, in units of one missed note */
  readonly cost: number;
  /** exercises that may go on after the last moment, cheapest first */
  readonly standing: readonly (Arrival & { readonly runner: Runner })[];
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
      endsWith[at + 1] = { runner: walk.runner, from: end.from, begun: end.begun, step: end.step };
    }
  }
  const cost = Math.min(idle[count]!, ended[count]!);
  const standing = walks
    .flatMap((walk) => {
      const stands = walk.standing();
      return stands === null ? [] : [{ ...stands, runner: walk.runner }];
    })
    .sort((a, b) => a.cost - b.cost);
  return { stretches: stretchesOf(moments, idle, ended, endsWith), cost, standing };
}

/** How an exercise ended: where it began, and the account there, beginning included. */
interface Ended<Runner extends Slid> {
  readonly runner: Runner;
  readonly from: number;
  readonly begun: number;
  readonly step: number;
}

/** Back through the cheapest account. */
function stretchesOf<Runner extends Slid>(
  moments: readonly Moment[],
  idle: Float64Array,
  ended: Float64Array,
  endsWith: readonly (Ended<Runner> | null)[],
): readonly FollowedStretch<Runner>[] {
  const stretches: FollowedStretch<Runner>[] = [];
  let at = moments.length;
  let atEnd = ended[at]! < idle[at]!;
  while (at > 0) {
    const goesOn = (from: number, cost: number): number => (isAbrupt(moments, from) ? cost : 0);
    if (atEnd) {
      const { runner, from, begun, step } = endsWith[at]!;
      stretches.push({ runner, from, to: at - 1, step, cost: ended[at]! - begun });
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

/** Nothing parts a moment from the one before it. */
function isAbrupt(moments: readonly Moment[], at: number): boolean {
  const [last, next] = [moments[at - 1], moments[at]];
  return last !== undefined && next !== undefined && next.timeSec - last.lastSec < FOLLOWING.partingSec;
}
