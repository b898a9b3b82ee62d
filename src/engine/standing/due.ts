import type { ExerciseChoice, Hand } from '../exercise/index.ts';
import type { Criteria } from '../report/index.ts';
import { exerciseId } from './group.ts';
import { offers } from './offers.ts';
import type { Assignment, Offer, PlanItem, PlanReason, Standing } from './types.ts';

const DAY_MS = 86_400_000;

/** What is ready is due again after this long, and what is not is no longer in work after this long; common practice, no source. */
const REST_DAYS = 7;
const LEFT_LYING_DAYS = 21;

/** Where nobody has played anything yet; common practice, no source. */
const FIRST: ExerciseChoice = { key: 'C major', form: 'arpeggio', hands: 'right', octaves: 1 };
const FIRST_BPM = 60;

/** An item without its minutes. */
export type Due = Omit<PlanItem, 'minutes'>;

/**
 * Everything that may come into the plan beside what is assigned, the most urgent of each kind first; `upkeep` where there is
 * time after all that is due.
 */
export function candidates(
  all: ReadonlyMap<string, Standing>,
  nowMs: number,
  criteria: Criteria,
  open: readonly Assignment[],
): { readonly due: readonly Due[]; readonly upkeep: readonly Due[] } {
  const { due, upkeep } = ofOneself(all, nowMs, criteria);
  const assigned = new Set(open.map(({ asked: { exercise } }) => exerciseId(exercise)));
  // Whoever assigns hands together has decided that no hand comes first.
  const decided = ({ exercise, reason }: Due): boolean =>
    assigned.has(exerciseId(exercise)) ||
    (reason.kind === 'hand-first' && assigned.has(exerciseId({ ...exercise, hands: 'together' }))) ||
    (reason.kind === 'first' && open.length > 0);
  return { due: due.filter((item) => !decided(item)), upkeep: upkeep.filter((item) => !decided(item)) };
}

/** The same where nobody assigned anything. */
function ofOneself(
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

export function forTeacher(assignment: Assignment): Due {
  const { exercise, targetBpm } = assignment.asked;
  return { exercise, targetBpm, reason: { kind: 'assigned', assignment } };
}

function begin(offer: Offer): Due {
  const { exercise, targetBpm } = offer;
  return { exercise, targetBpm, reason: { kind: 'offer', offer } };
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
