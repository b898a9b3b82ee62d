import type { ExerciseChoice, Hand } from '../exercise/index.ts';
import type { Criteria } from '../report/index.ts';
import { exerciseId, standings } from './group.ts';
import { offers } from './offers.ts';
import type { Offer, PlanItem, PlanReason, Practised, Standing } from './types.ts';

const DAY_MS = 86_400_000;

/** What is ready is due again after this long, and what is not is no longer in work after this long; common practice, no source. */
const REST_DAYS = 7;
const LEFT_LYING_DAYS = 21;

/** Minutes for an item at first, and the most that left-over minutes make of it; common practice, no source. */
const MINUTES: Readonly<Record<Turn, number>> = { weak: 5, new: 5, 'long-ago': 3 };
const MOST_MINUTES = 10;

/** The kinds are taken in turn, so that a short plan has something of each. */
type Turn = 'weak' | 'long-ago' | 'new';
const TURNS: readonly Turn[] = ['weak', 'long-ago', 'new', 'weak'];
const TURN_OF: Readonly<Record<PlanReason['kind'], Turn>> = {
  weak: 'weak',
  'long-ago': 'long-ago',
  upkeep: 'long-ago',
  offer: 'new',
  'hand-first': 'new',
  first: 'new',
};
const turnOf = ({ reason }: Due): Turn => TURN_OF[reason.kind];

/** Where nobody has played anything yet; common practice, no source. */
const FIRST: ExerciseChoice = { key: 'C major', form: 'arpeggio', hands: 'right', octaves: 1 };
const FIRST_BPM = 60;

/** An item without its minutes. */
type Due = Omit<PlanItem, 'minutes'>;

/**
 * A history and a number of minutes → what to play today: what is weak, what has not been played for long, and what may be
 * begun, in turn; each exercise once; hands separate before hands together, and hands together only where no hand alone is due.
 * The same history, time and criteria give the same plan.
 *
 * The minutes of the items sum to `minutes` at most. No minutes, no items.
 */
export function today(
  minutes: number,
  history: readonly Practised[],
  nowMs: number,
  criteria: Criteria,
): readonly PlanItem[] {
  return planOf(minutes, standings(history, criteria), nowMs, criteria);
}

/** The same for a history whose standings are known already. */
export function planOf(
  minutes: number,
  all: ReadonlyMap<string, Standing>,
  nowMs: number,
  criteria: Criteria,
): readonly PlanItem[] {
  const whole = Math.floor(minutes);
  if (!(whole > 0)) return [];
  const { due, upkeep } = candidates(all, nowMs, criteria);
  const chosen = fit([...inTurns(due), ...upkeep], whole);
  return [...dealOut(chosen, whole)].sort(
    (a, b) => Number(a.exercise.hands === 'together') - Number(b.exercise.hands === 'together'),
  );
}

/** Everything that may come into the plan, the most urgent of each kind first; `upkeep` where there is time after all that is due. */
function candidates(
  all: ReadonlyMap<string, Standing>,
  nowMs: number,
  criteria: Criteria,
): { readonly due: readonly Due[]; readonly upkeep: readonly Due[] } {
  if (all.size === 0) return { due: [firstOf('right'), firstOf('left')], upkeep: [] };
  const known = [...all.values()].filter((standing) => !waitsForAHand(standing, all)).sort(longestAgoFirst);
  const rested = (standing: Standing, days: number): boolean => daysSince(standing, nowMs) >= days;
  const unready = known.filter((standing) => standing.level !== 'ready');
  const ready = known.filter((standing) => standing.level === 'ready');
  const weak = unready.filter((standing) => !rested(standing, LEFT_LYING_DAYS));
  const due = [
    ...[...weak]
      .sort((a, b) => rank(a) - rank(b))
      .map((standing) => again(standing, { kind: 'weak', standing })),
    ...known
      .filter((standing) => rested(standing, standing.level === 'ready' ? REST_DAYS : LEFT_LYING_DAYS))
      .map((standing) => again(standing, { kind: 'long-ago', days: Math.floor(daysSince(standing, nowMs)) })),
    ...handsFirst(all),
    ...[...offers(all, criteria)]
      .sort((a, b) => compare(exerciseId(a.exercise), exerciseId(b.exercise)))
      .map(begin),
  ];
  const upkeep = ready
    .filter((standing) => !rested(standing, REST_DAYS))
    .map((standing) => again(standing, { kind: 'upkeep' }));
  return { due, upkeep };
}

/** Hands together where a hand alone is not ready: that hand comes first. */
function waitsForAHand({ exercise, level }: Standing, all: ReadonlyMap<string, Standing>): boolean {
  if (exercise.hands !== 'together' || level === 'ready') return false;
  return HANDS.some((hands) => all.get(exerciseId({ ...exercise, hands }))?.level !== 'ready');
}

/** Hands that were never played alone, of exercises that are played hands together and are not ready. */
function handsFirst(all: ReadonlyMap<string, Standing>): readonly Due[] {
  return [...all.values()]
    .filter((standing) => waitsForAHand(standing, all))
    .flatMap(({ exercise, targetBpm }) =>
      HANDS.filter((hands) => !all.has(exerciseId({ ...exercise, hands }))).map((hands) => ({
        exercise: { ...exercise, hands },
        targetBpm,
        reason: { kind: 'hand-first' as const },
      })),
    )
    .sort((a, b) => compare(exerciseId(a.exercise), exerciseId(b.exercise)));
}

const HANDS: readonly Hand[] = ['left', 'right'];

function firstOf(hands: Hand): Due {
  return { exercise: { ...FIRST, hands }, targetBpm: FIRST_BPM, reason: { kind: 'first' } };
}

function again({ exercise, targetBpm }: Standing, reason: PlanReason): Due {
  return { exercise, targetBpm, reason };
}

function begin(offer: Offer): Due {
  const { exercise, targetBpm } = offer;
  return { exercise, targetBpm, reason: { kind: 'offer', offer } };
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

/** As many as fit; the first one always, with what there is. */
function fit(order: readonly Due[], minutes: number): readonly PlanItem[] {
  const chosen: PlanItem[] = [];
  let left = minutes;
  for (const item of order) {
    const wanted = MINUTES[turnOf(item)];
    if (wanted > left && chosen.length > 0) continue;
    chosen.push({ ...item, minutes: Math.min(wanted, left) });
    left -= Math.min(wanted, left);
  }
  return chosen;
}

/** Left-over minutes, one each in turn, to what is weak or new, then to the rest. */
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

function rank({ level }: Standing): number {
  return level === 'not-yet' ? 0 : 1;
}

function daysSince({ lastMs }: Standing, nowMs: number): number {
  return (nowMs - (lastMs ?? nowMs)) / DAY_MS;
}

function longestAgoFirst(a: Standing, b: Standing): number {
  return (a.lastMs ?? 0) - (b.lastMs ?? 0) || compare(exerciseId(a.exercise), exerciseId(b.exercise));
}

function compare(a: string, b: string): number {
  return a < b ? -1 : a > b ? 1 : 0;
}
