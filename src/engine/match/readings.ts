import type { ExerciseChoice } from '../exercise/index.ts';
import type { Recognition } from './types.ts';

/** Playing that is less likely than this to be any exercise is other playing. */
export const LEAST_LIKELY = 0.3;

/**
 * What playing was recognised as → what it may be, likeliest first; nothing where it is other playing, as between attempts. Whoever
 * shows what could not be told goes by this, so that page and command agree.
 */
export function likelyReadings({ choice, confidence, alternatives }: Recognition): readonly ExerciseChoice[] {
  const others = alternatives.filter(({ fit }) => fit > 0).map((one) => one.choice);
  if (choice !== null) return [choice, ...others];
  return confidence < LEAST_LIKELY ? [] : others;
}

const NEAREST = 3;
/** What explains less of the notes is not near. */
const NEAR = 0.4;

/** What playing that was not recognised comes nearest to, likeliest first, three at most. */
export function nearestReadings({ alternatives }: Recognition): readonly ExerciseChoice[] {
  return alternatives
    .filter(({ fit }) => fit >= NEAR)
    .slice(0, NEAREST)
    .map(({ choice }) => choice);
}
