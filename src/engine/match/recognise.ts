import { buildExercise } from '../exercise/index.ts';
import type { ExerciseChoice } from '../exercise/index.ts';
import type { Heard } from '../listen/index.ts';
import { alignAt } from './align.ts';
import { confidenceOf } from './confidence.ts';
import type { Moment } from './moments.ts';
import { rank } from './rank.ts';
import type { Ranked } from './rank.ts';
import { placed } from './templates.ts';
import { misreading } from './tuning-prior.ts';
import type { Alignment, Recognition, RecogniseOptions } from './types.ts';
import { BOUNDS, FOLLOWING } from './weights.ts';

/** Below this confidence it is not said which exercise it was. */
export const LEAST_CONFIDENCE = 0.6;
const RECOGNISE_DEFAULTS: RecogniseOptions = { pianoCents: null };

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
 * Which hand played, one hand alone, is told by the register: the left is taken to lie an octave below the right, as it is written.
 */
export function recogniseFrom(heard: Heard, options: Partial<RecogniseOptions> = {}): Recognition {
  const { pianoCents } = { ...RECOGNISE_DEFAULTS, ...options };
  const ranking = rank(heard, FOLLOWED);
  const [best] = ranking.ranked;
  if (best === undefined) return { choice: null, confidence: 0, octaveShift: 0, alternatives: [] };
  const { semitones, chance, otherwise } = misreading(heard.tuning.cents, pianoCents);
  const confidence = chance * confidenceOf(ranking);
  const { choice, octaves } = placed(best.listed, semitones);
  const neighbour = {
    choice: placed(best.listed, otherwise).choice,
    fit: shareExplained(best, ranking.moments),
  };
  const rest = ranking.ranked.slice(1, TOLD).map((other) => ({
    choice: placed(other.listed, semitones).choice,
    fit: shareExplained(other, ranking.moments),
  }));
  const alternatives = [...(1 - chance > WORTH_TELLING ? [neighbour] : []), ...rest];
  if (confidence >= LEAST_CONFIDENCE) return { choice, confidence, octaveShift: octaves, alternatives };
  return {
    choice: null,
    confidence,
    octaveShift: octaves,
    alternatives: [{ choice, fit: shareExplained(best, ranking.moments) }, ...alternatives],
  };
}

/** 0..1: how much of the notes, or of the exercise if it has more, is left when faults and what it does not explain are taken out. */
function shareExplained({ listed, account }: Ranked, moments: readonly Moment[]): number {
  const { stretches, cost } = account;
  const heard = moments.reduce((sum, { weights }) => weights.reduce((all, weight) => all + weight, sum), 0);
  const unexplained = cost - stretches.length * FOLLOWING.begin;
  return Math.min(1, Math.max(0, 1 - unexplained / Math.max(heard, stretches.length * listed.template.size)));
}

/** An exercise of the set and how well it explains what was heard, 0..1. */
interface Explained {
  readonly choice: ExerciseChoice;
  readonly fit: number;
}

/** Another exercise that explains the notes clearly better than this alignment does; null where none does. */
export function betterChoice(heard: Heard, alignment: Alignment): Explained | null {
  const chosen = alignment.exercise.choice;
  const { semitones } = misreading(heard.tuning.cents);
  const best = rank(heard, FOLLOWED)
    .ranked.slice(0, ALIGNED)
    .map(({ listed }): Explained => {
      const { choice, octaves } = placed(listed, semitones);
      return {
        choice,
        fit: alignAt(heard, buildExercise(choice), { left: octaves, right: octaves, semitones }).fit,
      };
    })
    .sort((a, b) => b.fit - a.fit)[0];
  if (best === undefined || best.fit < BOUNDS.otherExerciseAtLeast) return null;
  if (best.fit < alignment.fit + BOUNDS.otherExerciseFit) return null;
  const { choice } = best;
  const sameButHand =
    choice.key === chosen.key &&
    choice.form === chosen.form &&
    choice.octaves === chosen.octaves &&
    choice.minorScale === chosen.minorScale &&
    (choice.hands === 'together') === (chosen.hands === 'together');
  return sameButHand ? null : best;
}
