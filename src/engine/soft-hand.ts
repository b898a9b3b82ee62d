import { buildExercise } from './exercise/index.ts';
import type { HandsAlone, Heard, KeptSound } from './listen/index.ts';
import { matchNotes } from './match/index.ts';
import type { Recognition } from './match/index.ts';
import { hearsBothHands } from './recheck/index.ts';

/**
 * Both hands must explain so much where one alone explains more, 0..1. Of 27 attempts of both hands on the development piano that were read
 * as one, the upper hand 6 to 12 dB softer, 26 reach it and 25 are both to the closer look; of 180 of one hand alone 30 reach it, and none is.
 */
const LEAST_FIT = 0.75;

/**
 * Recognition goes by the notes that were heard blind, and a soft upper hand is covered by the lower one's partials: both hands are then read as the
 * lower alone. Where both of the same exercise explain nearly as much, the closer look is asked whether both are there.
 */
export function withSoftHand(
  heard: Heard,
  recognition: Recognition,
  sound: KeptSound | null,
  alone: HandsAlone | null = null,
): Recognition {
  const { choice, alternatives } = recognition;
  if (sound === null || choice === null || choice.hands === 'together') return recognition;
  const both = alternatives.find(
    ({ fit, choice: other }) =>
      fit >= LEAST_FIT &&
      other.hands === 'together' &&
      other.key === choice.key &&
      other.form === choice.form &&
      other.octaves === choice.octaves &&
      other.passage === undefined,
  );
  if (both === undefined) return recognition;
  const alignment = matchNotes(heard, buildExercise(both.choice));
  if (!hearsBothHands(heard, alignment, sound, alone)) return recognition;
  const { handLikelihood: _, ...rest } = recognition;
  return {
    ...rest,
    choice: both.choice,
    octaveShift: alignment.octaveShift,
    alternatives: alternatives.filter((one) => one !== both),
  };
}
