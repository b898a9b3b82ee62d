import { ALL_HANDS, ALL_KEYS, listedKey, nextKey } from '../exercise/index.ts';
import type { ExerciseChoice, Hand } from '../exercise/index.ts';
import type { Criteria } from '../report/index.ts';
import { exerciseId } from './group.ts';
import { places } from './places.ts';
import type { Offer, FormStandings, Standing } from './types.ts';

/** Hands together begin at this share of the slower hand's tempo (common practice, no source). */
const TOGETHER_SHARE = 2 / 3;

/**
 * What may be begun now. A hand that is ready offers the other one; both offer hands together; a key that stands (hands together
 * ready in every form of it that was begun) offers the next one round the circle of fifths. Nothing that was begun already.
 */
export function offers(standings: ReadonlyMap<string, Standing>, criteria: Criteria): readonly Offer[] {
  return [...handOffers(standings), ...keyOffers(standings, criteria)];
}

function handOffers(standings: ReadonlyMap<string, Standing>): readonly Offer[] {
  return [...standings.values()].flatMap((standing): readonly Offer[] => {
    const { exercise, level } = standing;
    if (level !== 'ready' || exercise.hands === 'together') return [];
    const other: Hand = exercise.hands === 'left' ? 'right' : 'left';
    const otherHand = standings.get(exerciseId({ ...exercise, hands: other }));
    const together: ExerciseChoice = { ...exercise, hands: 'together' };
    if (otherHand === undefined) {
      return [
        {
          kind: 'other-hand',
          exercise: { ...exercise, hands: other },
          targetBpm: standing.targetBpm,
          since: exercise,
        },
      ];
    }
    // Both hands would offer it: the left one does.
    const begun = standings.has(exerciseId(together));
    if (otherHand.level !== 'ready' || begun || exercise.hands === 'right') return [];
    const targetBpm = slower(standing.targetBpm, otherHand.targetBpm);
    return [
      {
        kind: 'together',
        exercise: together,
        targetBpm: targetBpm === null ? null : Math.round(targetBpm * TOGETHER_SHARE),
        since: exercise,
      },
    ];
  });
}

function keyOffers(standings: ReadonlyMap<string, Standing>, criteria: Criteria): readonly Offer[] {
  const all = places(standings.values(), criteria);
  const begunKeys = new Set([...standings.values()].map(({ exercise }) => listedKey(exercise.key)));
  return ALL_KEYS.filter((key) => stands(all.filter((place) => place.key === key))).flatMap(
    (key): readonly Offer[] => {
      const next = nextKey(key);
      if (begunKeys.has(next)) return [];
      const standing = all.find((place) => place.key === key && place.byHands.together.level === 'ready')!;
      const { exercise, targetBpm } = standing.byHands.together;
      return [
        {
          kind: 'next-key',
          exercise: { ...exercise, key: next, hands: 'right' },
          targetBpm,
          since: exercise,
        },
      ];
    },
  );
}

/** A key stands when hands together are ready in every form of it that was begun, and one was. */
function stands(ofKey: readonly FormStandings[]): boolean {
  const begun = ofKey.filter((place) => ALL_HANDS.some((hands) => place.byHands[hands].level !== 'new'));
  return begun.length > 0 && begun.every((place) => place.byHands.together.level === 'ready');
}

function slower(one: number | null, other: number | null): number | null {
  if (one === null || other === null) return one ?? other;
  return Math.min(one, other);
}
