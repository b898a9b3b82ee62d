import { anyMarked, atLeast, moreThanThere } from '../base/exact.ts';
import { exerciseOf, listedKey } from '../exercise/index.ts';
import type { Hands } from '../exercise/index.ts';
import type { Report } from '../report/index.ts';
import { faultsIn, type FaultKind, type FaultPlace } from './fault-places.ts';

/** One attempt whose report is at hand. */
export interface ToldAttempt {
  readonly id: string;
  readonly whenMs: number;
  readonly report: Report;
}

/** The same fault at the same kind of place, attempt after attempt. */
export interface Recurring {
  readonly kind: FaultKind;
  readonly place: FaultPlace;
  readonly hands: Hands;
  /** attempts that had it, oldest first */
  readonly attempts: readonly { readonly id: string; readonly whenMs: number; readonly key: string }[];
  /** attempts that have such a place */
  readonly of: number;
  /** keys in which it came, and keys in which there is such a place */
  readonly keys: number;
  readonly ofKeys: number;
  /** probability of so many, or more, if the faults of each attempt had fallen anywhere */
  readonly byChance: number;
  /** in how many of the earlier and of the later half of these attempts; null: no surely other share in one than in the other */
  readonly then: Halves | null;
}
interface Halves {
  readonly before: number;
  readonly ofBefore: number;
  readonly since: number;
  readonly ofSince: number;
}

/** All together are told by chance in at most so many journals in a hundred. */
const MOST_BY_CHANCE = 0.05;
/** Twice may be chance in anybody's eyes. */
const LEAST_ATTEMPTS = 3;

/**
 * Attempts of weeks, oldest first → faults that come at the same kind of place in attempt after attempt, the surest first; only what
 * is significant.
 *
 * The question to each kind of place: given how many faults an attempt has, in how many attempts would one of them have hit such a
 * place if they had fallen anywhere? An attempt with many faults proves no more than one with few. The tail of that count is exact
 * (Poisson binomial), and held against 5 % divided by the number of kinds of places that are looked at (Bonferroni 1936).
 */
export function recurringFaults(attempts: readonly ToldAttempt[]): readonly Recurring[] {
  const looked = new Map<string, Looked>();
  for (const { id, whenMs, report } of attempts) {
    // A passage of one's own has places of its own: its degrees are no kind of place.
    if (report.practised !== undefined || report.exercise.passage !== undefined) continue;
    const exercise = exerciseOf(report.exercise);
    if (exercise === null) continue;
    for (const one of faultsIn(report, exercise)) {
      const name = `${one.hands} ${one.kind} ${one.place}`;
      const known = looked.get(name) ?? { ...one, made: [] };
      looked.set(name, known);
      known.made.push({
        id,
        whenMs,
        key: listedKey(report.exercise.key),
        hit: one.hits > 0,
        byChance: anyMarked(one.places, one.marked, one.faults),
      });
    }
  }
  const bound = MOST_BY_CHANCE / looked.size;
  return [...looked.values()]
    .flatMap((one) => recurring(one, bound))
    .toSorted((a, b) => a.byChance - b.byChance);
}

interface Looked {
  readonly kind: FaultKind;
  readonly place: FaultPlace;
  readonly hands: Hands;
  readonly made: Made[];
}
interface Made {
  readonly id: string;
  readonly whenMs: number;
  readonly key: string;
  readonly hit: boolean;
  readonly byChance: number;
}

function recurring({ kind, place, hands, made }: Looked, bound: number): readonly Recurring[] {
  const hit = made.filter((one) => one.hit);
  if (hit.length < LEAST_ATTEMPTS) return [];
  const byChance = atLeast(
    hit.length,
    made.map((one) => one.byChance),
  );
  if (byChance > bound) return [];
  const keysOf = (some: readonly Made[]): number => new Set(some.map(({ key }) => key)).size;
  return [
    {
      kind,
      place,
      hands,
      attempts: hit.map(({ id, whenMs, key }) => ({ id, whenMs, key })),
      of: made.length,
      keys: keysOf(hit),
      ofKeys: keysOf(made),
      byChance,
      then: halves(made),
    },
  ];
}

/** What practice did to it: told only where the halves are surely not alike, one way or the other. */
function halves(made: readonly Made[]): Halves | null {
  const middle = Math.ceil(made.length / 2);
  const [early, late] = [made.slice(0, middle), made.slice(middle)];
  const hits = (some: readonly Made[]): number => some.filter(({ hit }) => hit).length;
  const [before, since] = [hits(early), hits(late)];
  const alike = Math.min(
    moreThanThere(before, early.length, since, late.length),
    moreThanThere(since, late.length, before, early.length),
  );
  // Both ways are looked at.
  if (2 * alike > MOST_BY_CHANCE) return null;
  return { before, ofBefore: early.length, since, ofSince: late.length };
}
