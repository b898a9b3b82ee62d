import { ALL_HANDS, handsIn, listedKey, octaveCounts } from '../exercise/index.ts';
import type { ExerciseChoice, Hand } from '../exercise/index.ts';
import type { Criteria } from '../report/index.ts';
import { USUAL_GOALS, type Goals } from './goals.ts';
import { exerciseId } from './group.ts';
import { places } from './places.ts';
import { asksFor, exerciseOfAsk, keysInOrder, setOfKey, type Syllabus } from './syllabus.ts';
import type { Offer, FormStandings, Standing } from './types.ts';

/**
 * What may be begun now. A hand that is ready offers the other one; both offer hands together, where the levels ask for that; a
 * form that is ready offers the next one of its level; a key that stands (every form of it that was begun is ready) offers the
 * next key of the levels, and what a later level asks of its forms: more octaves, or faster. Nothing that was begun already.
 *
 * The tempo is one that somebody chose, in an attempt or in the levels, or none.
 */
export function offers(
  standings: ReadonlyMap<string, Standing>,
  criteria: Criteria,
  goals: Goals = USUAL_GOALS,
): readonly Offer[] {
  return [...handOffers(standings, goals), ...keyOffers(standings, criteria, goals)];
}

function handOffers(standings: ReadonlyMap<string, Standing>, { syllabus }: Goals): readonly Offer[] {
  return [...standings.values()].flatMap((standing): readonly Offer[] => {
    const { exercise, level, targetBpm } = standing;
    if (level !== 'ready' || exercise.hands === 'together') return [];
    if (exercise.passage !== undefined && handsIn(exercise.passage) !== 'together') return [];
    const other: Hand = exercise.hands === 'left' ? 'right' : 'left';
    const otherHand = standings.get(exerciseId({ ...exercise, hands: other }));
    const together: ExerciseChoice = { ...exercise, hands: 'together' };
    if (otherHand === undefined)
      return [{ kind: 'other-hand', exercise: { ...exercise, hands: other }, targetBpm, since: exercise }];
    // Both hands would offer it: the left one does. How fast the hands go together, nobody has said yet.
    const begun = standings.has(exerciseId(together));
    const asked = asksTogether(syllabus, exercise);
    if (otherHand.level !== 'ready' || begun || !asked || exercise.hands === 'right') return [];
    return [{ kind: 'together', exercise: together, targetBpm: null, since: exercise }];
  });
}

function keyOffers(
  standings: ReadonlyMap<string, Standing>,
  criteria: Criteria,
  goals: Goals,
): readonly Offer[] {
  const { syllabus } = goals;
  const all = places(standings.values(), criteria, goals);
  const begunKeys = new Set(all.filter(isBegun).map(({ key }) => key));
  const begunForms = new Set(
    [...standings.values()].map(({ exercise: { key, form } }) => `${listedKey(key)} ${form}`),
  );
  return inOrder(begunKeys, syllabus).flatMap((key): readonly Offer[] => {
    const begun = all.filter((place) => place.key === key && isBegun(place));
    const ready = begun.filter((place) => isReady(place, syllabus));
    const [since] = ready.map(lastHand);
    if (since === undefined) return [];
    const next = setOfKey(syllabus, since.exercise).find(({ form }) => !begunForms.has(`${key} ${form}`));
    // How fast another form goes well, nobody has said yet.
    const form: readonly Offer[] =
      next === undefined
        ? []
        : [{ kind: 'next-form', exercise: next, targetBpm: null, since: since.exercise }];
    if (ready.length < begun.length) return form;
    const other = nextOf(syllabus, since.exercise, begunKeys);
    if (other !== undefined) begunKeys.add(listedKey(other.key));
    const nextKey: readonly Offer[] =
      other === undefined
        ? []
        : [{ kind: 'next-key', exercise: other, targetBpm: tempoFor(since, other), since: since.exercise }];
    const further =
      next !== undefined ? [] : ready.flatMap((place) => furtherThan(place, standings, syllabus));
    return [...form, ...nextKey, ...further];
  });
}

/** Keys in the order of the levels, then those that no level asks for. */
function inOrder(keys: ReadonlySet<string>, syllabus: Syllabus): readonly string[] {
  return [...new Set([...keysInOrder(syllabus), ...keys])].filter((key) => keys.has(key));
}

/** What a later level asks of a form that is ready: more octaves, the right hand first; or faster, the slowest hand first. */
function furtherThan(
  { byHands }: FormStandings,
  standings: ReadonlyMap<string, Standing>,
  syllabus: Syllabus,
): readonly Offer[] {
  const all = ALL_HANDS.map((hands) => byHands[hands]).filter(({ level }) => level === 'ready');
  const slowest = Math.min(...all.map(({ nextBpm }) => nextBpm ?? Infinity));
  const faster = all.find(({ nextBpm }) => nextBpm === slowest);
  if (faster !== undefined) {
    const { exercise } = faster;
    return [{ kind: 'faster', exercise, targetBpm: slowest, since: exercise }];
  }
  const { exercise } = all[0]!;
  const longer = octaveCounts(exercise.form)
    .filter((octaves) => octaves > exercise.octaves)
    .map((octaves) => ({ ...exercise, hands: 'right' as const, octaves }))
    .find((one) => asksFor(syllabus, one).length > 0);
  if (longer === undefined || standings.has(exerciseId(longer))) return [];
  return [{ kind: 'more-octaves', exercise: longer, targetBpm: null, since: exercise }];
}

/** The next key of the levels that nobody has begun, after this one, in the form that stands where that is asked. */
function nextOf(
  { levels }: Syllabus,
  since: ExerciseChoice,
  begun: ReadonlySet<string>,
): ExerciseChoice | undefined {
  const order = levels.flatMap(({ keys, asks }, level) => keys.map((key) => ({ key, asks, level })));
  const level = asksFor({ levels }, since)[0]?.level ?? 0;
  const at = order.findIndex((one) => one.level === level && one.key === listedKey(since.key));
  const next = [...order.slice(at + 1), ...order.slice(0, at + 1)].find(({ key }) => !begun.has(key));
  const ask = next?.asks.find(({ form }) => form === since.form) ?? next?.asks[0];
  return next === undefined || ask === undefined ? undefined : exerciseOfAsk(ask, next.key);
}

/** What was aimed at in one key is aimed at in the next, if it is the same form. */
function tempoFor({ exercise, targetBpm }: Standing, other: ExerciseChoice): number | null {
  return exercise.form === other.form && exercise.octaves === other.octaves ? targetBpm : null;
}

function asksTogether(syllabus: Syllabus, exercise: ExerciseChoice): boolean {
  return asksFor(syllabus, exercise)[0]?.ask.together ?? true;
}

function isBegun({ byHands }: FormStandings): boolean {
  return ALL_HANDS.some((hands) => byHands[hands].level !== 'new');
}

/** All hands that are asked for. */
function isReady({ byHands }: FormStandings, syllabus: Syllabus): boolean {
  const { left, right, together } = byHands;
  if (asksTogether(syllabus, together.exercise)) return together.level === 'ready';
  return left.level === 'ready' && right.level === 'ready';
}

/** Of a form that is ready: hands together, or the right hand where the levels ask for no more. */
function lastHand({ byHands: { right, together } }: FormStandings): Standing {
  return together.level === 'ready' ? together : right;
}
