import { ALL_MINOR_SCALES, buildExercise } from '../exercise/index.ts';
import type { Heard } from '../listen/index.ts';
import { bestShift } from './shift.ts';
import type { Alignment, Better } from './types.ts';

/** At so many places at least the other scale's own key was struck. */
const LEAST_PLACES = 2;

/**
 * A minor scale that was played as another of the three: at every place where their keys differ and something was struck, it was the
 * other scale's key, twice at least. Null where it was played as chosen, now so and now so, or is none.
 */
export function otherMinorScale(heard: Heard, alignment: Alignment): Better | null {
  const { choice } = alignment.exercise;
  if (choice.minorScale === undefined) return null;
  if (alignment.matched.filter(({ verdict }) => verdict === 'wrong').length < LEAST_PLACES) return null;
  const asOther = ALL_MINOR_SCALES.filter((minorScale) => minorScale !== choice.minorScale)
    .map((minorScale) => bestShift(heard, buildExercise({ ...choice, minorScale })))
    .filter((other) => isAllOf(other, alignment))
    .sort((a, b) => b.fit - a.fit)[0];
  if (asOther === undefined) return null;
  return { choice: asOther.exercise.choice, fit: asOther.fit, sure: true };
}

/** Where both scales have different keys, what was struck was the other's. */
function isAllOf(other: Alignment, chosen: Alignment): boolean {
  const differing = chosen.matched.flatMap((note, at) => {
    const its = other.matched[at]!;
    return its.expected.midi === note.expected.midi ? [] : [{ note, its }];
  });
  const struck = differing.filter(({ note, its }) => 'played' in note || 'played' in its);
  const asOther = struck.filter(({ its }) => its.verdict === 'correct').length;
  return asOther >= LEAST_PLACES && asOther === struck.length;
}
