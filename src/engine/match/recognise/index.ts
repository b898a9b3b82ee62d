export { betterExercise } from './another.ts';
export { handSaid } from './priors.ts';
export { exerciseStretches } from './stretches.ts';
export { underWay } from './under-way.ts';
export type { ExerciseStretch, UnderWay } from './under-way.ts';
import type { ExerciseChoice } from '../../exercise/index.ts';
import type { Heard } from '../../listen/index.ts';
import { FOLLOWING } from '../costs/index.ts';
import type { Recognition, RecogniseOptions } from '../types.ts';
import type { Moment } from './moments.ts';
import { knownPianos, misreading } from './priors.ts';
import { ownTemplates } from './own.ts';
import { confidenceOf, rank } from './rank.ts';
import type { Ranked } from './rank.ts';
import { placed } from './templates.ts';

/** Below this confidence it is not said which exercise it was. */
export const LEAST_CONFIDENCE = 0.6;
const RECOGNISE_DEFAULTS: RecogniseOptions = {
  pianoCents: null,
  elsewhereCents: [],
  handsPlayed: [],
  own: [],
};

/** How many of the likeliest are told. */
const TOLD = 5;
/** A semitone's misreading less likely than this is not told among what else it may be. */
const WORTH_TELLING = 0.05;

/** What recognition goes by. */
type HeardKeys = Pick<Heard, 'notes'> & { readonly tuning: Pick<Heard['tuning'], 'cents'> };

/**
 * Heard notes → the exercise of the set that they are, going by the notes alone: the one that explains all of them with the fewest
 * faults. It cannot tell where too much is left unexplained, where another explains nearly as much, or where the piano's tuning
 * leaves open which of two keys a semitone apart was played.
 *
 * Which hand played, one hand alone, cannot be heard: it is given as a likelihood, by the register and by what is known of the player.
 */
export function recogniseFrom(heard: HeardKeys, options: Partial<RecogniseOptions> = {}): Recognition {
  const { handsPlayed, own, ...pianos } = { ...RECOGNISE_DEFAULTS, ...options };
  const read = misreading(heard.tuning.cents, knownPianos(pianos));
  const { semitones, chance, otherwise } = read;
  const ranking = rank(heard, ownTemplates(own, read));
  const [best] = ranking.ranked;
  if (best === undefined) return { choice: null, confidence: 0, octaveShift: 0, alternatives: [] };
  const isOwn = best.listed.template.choice.passage !== undefined;
  const readAs = (one: Ranked, off: number): Recognition['alternatives'][number] => ({
    choice: placed(one.listed, off, handsPlayed).choice,
    fit: shareExplained(one, ranking.moments),
  });
  // A passage of one's own that fits says itself at which pitch the piano stands.
  const confidence = (isOwn ? 1 : chance) * confidenceOf(ranking);
  const { choice, octaves, handLikelihood } = placed(best.listed, semitones, handsPlayed);
  const alternatives = [
    ...(confidence < LEAST_CONFIDENCE ? [readAs(best, semitones)] : []),
    // What somebody wrote is in no other key.
    ...(1 - chance > WORTH_TELLING && !isOwn ? [readAs(best, otherwise)] : []),
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
