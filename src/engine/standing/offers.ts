import { ALL_HANDS, ALL_KEYS, nextKey, octaveCounts, relativeKey } from '../exercise/index.ts';
import type { ExerciseChoice, Hand } from '../exercise/index.ts';
import type { Criteria } from '../report/index.ts';
import { exerciseId } from './group.ts';
import { places } from './places.ts';
import { inForm, inKey, SET } from './syllabus.ts';
import type { Offer, FormStandings, Standing } from './types.ts';

/** Hands together begin at this share of the slower hand's tempo (common practice, no source). */
const TOGETHER_SHARE = 2 / 3;

/**
 * What may be begun now. A hand that is ready offers the other one; both offer hands together; a key that stands (hands together
 * ready in every form of it that was begun) offers the next one round the circle of fifths and its relative; a form that is ready hands
 * together offers the next one of the key's set, the whole set an octave more. Nothing that was begun already.
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
  const begunKeys = new Set(all.filter(isBegun).map(({ key }) => key));
  return ALL_KEYS.flatMap((key): readonly Offer[] => {
    const ofKey = all.filter((place) => place.key === key);
    const ready = ofKey.filter(({ byHands }) => byHands.together.level === 'ready');
    const [since] = ready.map(({ byHands }) => byHands.together);
    if (since === undefined) return [];
    const more = (kind: Offer['kind'], exercise: ExerciseChoice, targetBpm: number | null): Offer => ({
      kind,
      exercise,
      targetBpm,
      since: since.exercise,
    });
    const next = SET.find((form) => ofKey.every((place) => place.form !== form || !isBegun(place)));
    // How fast another form goes well, nobody has said yet.
    const form = next === undefined ? [] : [more('next-form', inForm(since.exercise, next), null)];
    if (!stands(ofKey)) return form;
    const keys = (
      [
        ['next-key', nextKey(key)],
        ['relative-key', relativeKey(key)],
      ] as const
    ).flatMap(([kind, other]) =>
      begunKeys.has(other) ? [] : [more(kind, inKey(since.exercise, other), since.targetBpm)],
    );
    const longer = next !== undefined ? [] : ready.flatMap(({ byHands }) => longerThan(byHands.together));
    return [...form, ...keys, ...longer];
  });
}

/** An octave more, where the whole set of the key stands. */
function longerThan({ exercise, targetBpm }: Standing): readonly Offer[] {
  const octaves = exercise.octaves + 1;
  if (!octaveCounts(exercise.form).includes(octaves)) return [];
  return [
    { kind: 'more-octaves', exercise: { ...exercise, hands: 'right', octaves }, targetBpm, since: exercise },
  ];
}

function isBegun({ byHands }: FormStandings): boolean {
  return ALL_HANDS.some((hands) => byHands[hands].level !== 'new');
}

/** A key stands when hands together are ready in every form of it that was begun, and one was. */
function stands(ofKey: readonly FormStandings[]): boolean {
  const begun = ofKey.filter(isBegun);
  return begun.length > 0 && begun.every((place) => place.byHands.together.level === 'ready');
}

function slower(one: number | null, other: number | null): number | null {
  if (one === null || other === null) return one ?? other;
  return Math.min(one, other);
}
