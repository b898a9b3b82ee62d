import type { ExerciseChoice, Hand } from '../exercise/index.ts';
import type { Criteria } from '../report/index.ts';
import type { Goals } from './goals.ts';
import { exerciseId } from './group.ts';
import { offers } from './offers.ts';
import { exerciseOfAsk, setOfKey } from './syllabus.ts';
import type { Assignment, Offer, PlanItem, PlanReason, Standing } from './types.ts';

const DAY_MS = 86_400_000;

/**
 * What is ready is due again after this long, and each time that it went well again after twice as long, up to the most: what is
 * recalled at growing intervals is kept (Landauer & Bjork 1978, from memory; the days: common practice, no source).
 */
const FIRST_REST_DAYS = 7;
const MOST_REST_DAYS = 56;
/** What is not ready is no longer in work after this long; common practice, no source. */
const LEFT_LYING_DAYS = 21;

/**
 * So many exercises in work for each minute of the plan: each comes round within three days, and what is begun is brought to an
 * end before more is; common practice, no source.
 */
const IN_WORK_A_MINUTE = 0.5;

/** An item without its minutes. */
export type Due = Omit<PlanItem, 'minutes' | 'restMinutes'>;

interface Candidates {
  readonly due: readonly Due[];
  readonly upkeep: readonly Due[];
  readonly beside: readonly Due[];
}

/**
 * Everything that may come into the plan beside what is assigned, the most urgent of each kind first; `upkeep` where there is
 * time after all that is due, `beside` where there is time after that.
 */
export function candidates(
  all: ReadonlyMap<string, Standing>,
  nowMs: number,
  criteria: Criteria,
  open: readonly Assignment[],
  goals: Goals,
  minutes: number,
): Candidates {
  const { due, upkeep, beside } = ofOneself(all, nowMs, criteria, goals, minutes);
  const assigned = new Set(open.map(({ asked: { exercise } }) => exerciseId(exercise)));
  // Whoever assigns hands together has decided that no hand comes first.
  const decided = ({ exercise, reason }: Due): boolean =>
    assigned.has(exerciseId(exercise)) ||
    (reason.kind === 'hand-first' && assigned.has(exerciseId({ ...exercise, hands: 'together' }))) ||
    (reason.kind === 'first' && open.length > 0);
  const free = (some: readonly Due[]): readonly Due[] => some.filter((item) => !decided(item));
  return {
    due: free(due),
    upkeep: free(upkeep),
    // Whoever assigns decides what else is begun.
    beside: open.length > 0 ? [] : free(beside),
  };
}

/** The same where nobody assigned anything. */
function ofOneself(
  all: ReadonlyMap<string, Standing>,
  nowMs: number,
  criteria: Criteria,
  goals: Goals,
  minutes: number,
): Candidates {
  const first = firstOf(goals);
  if (all.size === 0) {
    const due = (['right', 'left'] as const).map((hands) => ({
      exercise: { ...first, hands },
      // Nobody has chosen a tempo yet.
      targetBpm: null,
      reason: { kind: 'first' as const },
    }));
    return { due, upkeep: [], beside: besides(first, all, goals) };
  }
  const known = [...all.values()].filter((standing) => !waitsForAHand(standing, all)).sort(longestAgoFirst);
  const rested = (standing: Standing, days: number): boolean => daysSince(standing, nowMs) >= days;
  const restedAsReady = (standing: Standing): boolean => rested(standing, restDays(standing));
  const unready = known.filter((standing) => standing.level !== 'ready');
  const ready = known.filter((standing) => standing.level === 'ready');
  const weak = unready.filter((standing) => !rested(standing, LEFT_LYING_DAYS));
  const room = Math.max(0, Math.ceil(IN_WORK_A_MINUTE * minutes) - weak.length);
  const due = [
    ...[...weak]
      .sort((a, b) => rank(a) - rank(b))
      .map((standing) => again(standing, { kind: 'weak', standing })),
    ...known
      .filter((standing) =>
        standing.level === 'ready' ? restedAsReady(standing) : rested(standing, LEFT_LYING_DAYS),
      )
      .map((standing) => again(standing, { kind: 'long-ago', days: Math.floor(daysSince(standing, nowMs)) })),
    ...handsFirst(all),
    ...offersInTurn(offers(all, criteria, goals))
      .slice(0, room)
      .map(begin),
  ];
  const upkeep = ready
    .filter((standing) => !restedAsReady(standing))
    .map((standing) => again(standing, { kind: 'upkeep' }));
  return { due, upkeep, beside: besides(known.at(-1)?.exercise ?? first, all, goals) };
}

/** A longer rest each time that it went well again after one. */
function restDays({ returns }: Standing): number {
  return Math.min(FIRST_REST_DAYS * 2 ** returns, MOST_REST_DAYS);
}

/** The other forms of the key in work, each hand alone, that nobody has begun: there is time, and variety does good. */
function besides(
  inWork: ExerciseChoice,
  all: ReadonlyMap<string, Standing>,
  { syllabus }: Goals,
): readonly Due[] {
  return setOfKey(syllabus, inWork)
    .flatMap((exercise) => (['right', 'left'] as const).map((hands) => ({ ...exercise, hands })))
    .filter((exercise) => !all.has(exerciseId(exercise)))
    .map((exercise) => ({ exercise, targetBpm: null, reason: { kind: 'beside' as const } }));
}

/** A hand that waits comes first; then one of each other kind in turn, so that keys and forms grow side by side. */
function offersInTurn(all: readonly Offer[]): readonly Offer[] {
  const of = (...kinds: readonly Offer['kind'][]): Offer[] => all.filter(({ kind }) => kinds.includes(kind));
  const queues = (['next-key', 'next-form', 'faster', 'more-octaves'] as const).map((kind) => of(kind));
  const longest = Math.max(...queues.map(({ length }) => length));
  const turns = Array.from({ length: longest }, (_, turn) => queues.flatMap((queue) => queue[turn] ?? []));
  return [...of('together'), ...of('other-hand'), ...turns.flat()];
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
    .sort((a, b) => byId(a.exercise, b.exercise));
}

const HANDS: readonly Hand[] = ['left', 'right'];

/** Where nobody has played anything yet: the first thing that the first level asks. */
function firstOf({ syllabus }: Goals): ExerciseChoice {
  const { keys, asks } = syllabus.levels[0]!;
  return exerciseOfAsk(asks[0]!, keys[0]!);
}

function again({ exercise, targetBpm }: Standing, reason: PlanReason): Due {
  return { exercise, targetBpm, reason };
}

export function forTeacher(assignment: Assignment): Due {
  const { exercise, targetBpm, intention } = assignment.asked;
  return {
    exercise,
    targetBpm,
    ...(intention !== undefined && { intention }),
    reason: { kind: 'assigned', assignment },
  };
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
  return (a.lastMs ?? 0) - (b.lastMs ?? 0) || byId(a.exercise, b.exercise);
}

/** No two of what is ordered are the same exercise. */
function byId(a: ExerciseChoice, b: ExerciseChoice): number {
  return exerciseId(a) < exerciseId(b) ? -1 : 1;
}
