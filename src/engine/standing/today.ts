import type { Criteria } from '../report/index.ts';
import { candidates, forTeacher } from './due.ts';
import type { Due } from './due.ts';
import type { Goals } from './goals.ts';
import { exerciseId } from './group.ts';
import type { Assignment, PlanItem, PlanReason, Standing } from './types.ts';

/** Minutes for an item at first, and the most that left-over minutes make of it; common practice, no source. */
const MINUTES: Readonly<Record<Turn, number>> = { assigned: 5, weak: 5, new: 5, 'long-ago': 3 };
const MOST_MINUTES = 10;
/**
 * A plan of more than half an hour holds a rest of five minutes after each 25: hands that play on without one are strained more
 * easily (common practice, no source; the page says whom to ask where something hurts).
 */
const REST_MINUTES = 5;
const WITHOUT_REST_MINUTES = 30;
const REST_AFTER_MINUTES = 25;

/** The kinds are taken in turn, so that a short plan has something of each; what is assigned comes before them all. */
type Turn = 'assigned' | 'weak' | 'long-ago' | 'new';
const TURNS: readonly Turn[] = ['weak', 'long-ago', 'new', 'weak'];
const TURN_OF: Readonly<Record<PlanReason['kind'], Turn>> = {
  assigned: 'assigned',
  weak: 'weak',
  'long-ago': 'long-ago',
  upkeep: 'long-ago',
  offer: 'new',
  'hand-first': 'new',
  first: 'new',
  beside: 'new',
};
const turnOf = ({ reason }: Due): Turn => TURN_OF[reason.kind];

/**
 * Standings, what is assigned and a number of minutes → what to play today: what is assigned and not met, in the order given; then what is weak,
 * what has not been played for long, and what may be begun, in turn; each exercise once; hands separate before hands together,
 * and hands together only where no hand alone is due, unless a teacher assigned them. The same history, time and criteria give
 * the same plan.
 *
 * The minutes of the items and the rests between them sum to `minutes` at most. No minutes, no items.
 */
export function planOf(
  minutes: number,
  all: ReadonlyMap<string, Standing>,
  nowMs: number,
  criteria: Criteria,
  assignments: readonly Assignment[],
  goals: Goals,
): readonly PlanItem[] {
  const whole = Math.floor(minutes);
  if (!(whole > 0)) return [];
  const open = assignments.filter(({ metMs }) => metMs === null);
  const rests = Math.floor((whole - 1) / WITHOUT_REST_MINUTES);
  const playing = whole - REST_MINUTES * rests;
  const { due, upkeep, beside } = candidates(all, nowMs, criteria, open, goals, whole);
  // Where there is no time for all that is assigned, what was not played for longest gets it.
  const asked = open.toSorted((a, b) => (a.standing.lastMs ?? 0) - (b.standing.lastMs ?? 0)).map(forTeacher);
  const chosen = fit([...asked, ...inTurns(due), ...upkeep], beside, playing);
  const order = open.map(({ asked: { exercise } }) => exerciseId(exercise));
  const place = ({ exercise, reason }: PlanItem): number =>
    reason.kind === 'assigned'
      ? order.indexOf(exerciseId(exercise))
      : order.length + Number(exercise.hands === 'together');
  return withRests(
    [...dealOut(chosen, playing)].sort((a, b) => place(a) - place(b)),
    rests,
  );
}

/** Kinds in turn, each in its own order; an exercise that is due twice comes once. */
function inTurns(all: readonly Due[]): readonly Due[] {
  const seen = new Set<string>();
  const once = all.filter(({ exercise }) => {
    const id = exerciseId(exercise);
    return !seen.has(id) && seen.add(id);
  });
  const queues = new Map(TURNS.map((turn) => [turn, once.filter((item) => turnOf(item) === turn)]));
  const order: Due[] = [];
  for (let turn = 0; order.length < once.length; turn += 1) {
    const next = queues.get(TURNS[turn % TURNS.length]!)!.shift();
    if (next !== undefined) order.push(next);
  }
  return order;
}

/** As many as fit; the first one always, with what there is; what lies beside only as far as the others cannot fill the time. */
function fit(order: readonly Due[], beside: readonly Due[], minutes: number): readonly PlanItem[] {
  const chosen: PlanItem[] = [];
  let left = minutes;
  for (const item of order) {
    const wanted = MINUTES[turnOf(item)];
    if (wanted > left && chosen.length > 0) continue;
    chosen.push({ ...item, minutes: Math.min(wanted, left), restMinutes: 0 });
    left -= Math.min(wanted, left);
  }
  const taken = new Set(chosen.map(({ exercise }) => exerciseId(exercise)));
  for (const item of beside.filter(({ exercise }) => !taken.has(exerciseId(exercise)))) {
    const wanted = MINUTES[turnOf(item)];
    if (chosen.length * MOST_MINUTES >= minutes || wanted > left) break;
    chosen.push({ ...item, minutes: wanted, restMinutes: 0 });
    left -= wanted;
  }
  return chosen;
}

/** Left-over minutes, one each in turn, to what is assigned, weak or new, then to the rest. */
function dealOut(chosen: readonly PlanItem[], minutes: number): readonly PlanItem[] {
  const items = chosen.map((item) => ({ ...item }));
  let left = minutes - items.reduce((sum, item) => sum + item.minutes, 0);
  for (const some of [items.filter((item) => turnOf(item) !== 'long-ago'), items]) {
    while (left > 0 && some.some((item) => item.minutes < MOST_MINUTES)) {
      for (const item of some) {
        if (left === 0 || item.minutes >= MOST_MINUTES) continue;
        item.minutes += 1;
        left -= 1;
      }
    }
  }
  return items;
}

/** A rest after each so many minutes of playing, as many as there is time for, none after the last item. */
function withRests(items: readonly PlanItem[], rests: number): readonly PlanItem[] {
  let playedMinutes = 0;
  let left = rests;
  return items.map((item, index) => {
    playedMinutes += item.minutes;
    if (left === 0 || playedMinutes < REST_AFTER_MINUTES || index === items.length - 1) return item;
    playedMinutes = 0;
    left -= 1;
    return { ...item, restMinutes: REST_MINUTES };
  });
}
