import { buildExercise } from '../exercise/index.ts';
import type { Heard } from '../listen/index.ts';
import { alignAt } from './align.ts';
import { confidenceOf } from './confidence.ts';
import type { Moment } from './moments.ts';
import { rank } from './rank.ts';
import type { Ranked } from './rank.ts';
import { placed } from './templates.ts';
import { misreading } from './tuning-prior.ts';
import type { Alignment, Better, Recognition, RecogniseOptions } from './types.ts';
import { BOUNDS, FOLLOWING } from './weights.ts';

/** Below this confidence it is not said which exercise it was. */
export const LEAST_CONFIDENCE = 0.6;
const RECOGNISE_DEFAULTS: RecogniseOptions = { pianoCents: null, handsPlayed: [] };

/** Exercises that are followed after a count of keys has picked them, and how many of the best are told or aligned. */
const FOLLOWED = 24;
const TOLD = 5;
const ALIGNED = 3;
/** A semitone's misreading less likely than this is not told among what else it may be. */
const WORTH_TELLING = 0.05;

/**
 * Heard notes → the exercise of the set that they are, going by the notes alone: the one that explains all of them with the fewest
 * faults. It cannot tell where too much is left unexplained, where another explains nearly as much, or where the piano's tuning
 * leaves open which of two keys a semitone apart was played.
 *
 * Which hand played, one hand alone, cannot be heard: it is given as a likelihood, by the register and by what is known of the player.
 */
export function recogniseFrom(heard: Heard, options: Partial<RecogniseOptions> = {}): Recognition {
  const { pianoCents, handsPlayed } = { ...RECOGNISE_DEFAULTS, ...options };
  const ranking = rank(heard, FOLLOWED);
  const [best] = ranking.ranked;
  if (best === undefined) return { choice: null, confidence: 0, octaveShift: 0, alternatives: [] };
  const { semitones, chance, otherwise } = misreading(heard.tuning.cents, pianoCents);
  const readAs = (one: Ranked, off: number): Recognition['alternatives'][number] => ({
    choice: placed(one.listed, off, handsPlayed).choice,
    fit: shareExplained(one, ranking.moments),
  });
  const confidence = chance * confidenceOf(ranking);
  const { choice, octaves, handLikelihood } = placed(best.listed, semitones, handsPlayed);
  const alternatives = [
    ...(confidence < LEAST_CONFIDENCE ? [readAs(best, semitones)] : []),
    ...(1 - chance > WORTH_TELLING ? [readAs(best, otherwise)] : []),
    ...ranking.ranked.slice(1, TOLD).map((other) => readAs(other, semitones)),
  ];
  return {
    choice: confidence < LEAST_CONFIDENCE ? null : choice,
    confidence,
    octaveShift: octaves,
    alternatives,
    ...(handLikelihood !== undefined && { handLikelihood }),
  };
}

/** 0..1: how much of the notes, or of the exercise if it has more, is left when faults and what it does not explain are taken out. */
function shareExplained({ listed, account }: Ranked, moments: readonly Moment[]): number {
  const { stretches, cost } = account;
  const heard = moments.reduce((sum, { weights }) => weights.reduce((all, weight) => all + weight, sum), 0);
  const unexplained = cost - stretches.length * FOLLOWING.begin;
  return Math.min(1, Math.max(0, 1 - unexplained / Math.max(heard, stretches.length * listed.template.size)));
}

/** So sure must recognition be, and so likely the piano read at its pitch, that it is said to have been another exercise. */
const SURE = 0.9;

/** Another exercise that explains the notes clearly better than this alignment does; null where none does. */
export function betterChoice(heard: Heard, alignment: Alignment): Better | null {
  const chosen = alignment.exercise.choice;
  const { semitones, chance } = misreading(heard.tuning.cents);
  const ranking = rank(heard, FOLLOWED);
  const [best] = ranking.ranked
    .slice(0, ALIGNED)
    .map(({ listed }, at) => {
      const { choice, octaves } = placed(listed, semitones, []);
      const shift = { left: octaves, right: octaves, semitones };
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
