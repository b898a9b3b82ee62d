import { ALL_MINOR_SCALES, buildExercise } from '../../exercise/index.ts';
import type { Heard } from '../../listen/index.ts';
import { alignAt, bestShift } from '../align/index.ts';
import { BOUNDS } from '../costs/index.ts';
import type { Alignment, Better } from '../types.ts';
import { misreading } from './priors.ts';
import { confidenceOf, rank } from './rank.ts';
import { placed } from './templates.ts';

/** Another exercise of the set that explains what was heard clearly better than the one that is aligned; null: there is none. */
export function betterExercise(heard: Heard, alignment: Alignment): Better | null {
  // What somebody wrote may hold any exercise of the set, or nearly: it is what it is.
  if (alignment.exercise.choice.passage !== undefined) return null;
  return otherMinorScale(heard, alignment) ?? betterChoice(heard, alignment);
}

/** Of the likeliest exercises so many are aligned. */
const ALIGNED = 3;
/** So sure must recognition be, and so likely the piano read at its pitch, that it is said to have been another exercise. */
const SURE = 0.9;

function betterChoice(heard: Heard, alignment: Alignment): Better | null {
  if (alignment.fit > 1 - BOUNDS.otherExerciseFit) return null;
  const chosen = alignment.exercise.choice;
  const { semitones, chance } = misreading(heard.tuning.cents);
  const ranking = rank(heard);
  const [best] = ranking.ranked
    .slice(0, ALIGNED)
    .map(({ listed }, at) => {
      // On a piano read as it was for the chosen exercise it may be that one's key; else the likelier reading counts.
      const asAligned = placed(listed, alignment.semitoneShift, []);
      const isItsKey = asAligned.choice.key === chosen.key;
      const { choice, octaves } = isItsKey ? asAligned : placed(listed, semitones, []);
      const shift = {
        left: octaves,
        right: octaves,
        semitones: isItsKey ? alignment.semitoneShift : semitones,
      };
      return { at, choice, fit: alignAt(heard, buildExercise(choice), shift).fit };
    })
    .sort((a, b) => b.fit - a.fit);
  if (best === undefined || best.fit < BOUNDS.otherExerciseAtLeast) return null;
  if (best.fit < alignment.fit + BOUNDS.otherExerciseFit) return null;
  // A hand cannot be heard: of the two hands alone, the one that was chosen stays.
  const oneHand = chosen.hands !== 'together' && best.choice.hands !== 'together';
  const choice = oneHand ? { ...best.choice, hands: chosen.hands } : best.choice;
  const sameButHands =
    choice.key === chosen.key &&
    choice.form === chosen.form &&
    choice.octaves === chosen.octaves &&
    choice.minorScale === chosen.minorScale;
  if (sameButHands && choice.hands === chosen.hands) return null;
  const sure = !sameButHands && best.at === 0 && chance * confidenceOf(ranking) >= SURE;
  return { choice, fit: best.fit, sure };
}

/** At so many places at least the other scale's own key was struck. */
const LEAST_PLACES = 2;

/**
 * A minor scale that was played as another of the three: at every place where their keys differ and something was struck, it was the
 * other scale's key, twice at least. Null where it was played as chosen, now so and now so, or is none.
 */
function otherMinorScale(heard: Heard, alignment: Alignment): Better | null {
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
