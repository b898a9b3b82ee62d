import { dynamicsOf, PATTERNS, surelyOver } from '../measures/index.ts';
import type { Dynamics } from '../measures/index.ts';
import type { Estimate } from '../types.ts';
import type { Found, Scene, Situation, Situations } from './scene.ts';
import { isChordForm } from './scene.ts';

/*
 * What is shaped in loudness, and the pedal: named beside the rest, never blamed, and never in place of what time and notes say. In
 * chords, and in a stretch that comes again and again, levels are not compared: each note sounds among others.
 */

/** What is told lies surely over this: well heard, since a change of 0.7 to 1.2 dB is just audible (Slade et al. 2022, piano tones). */
const TOLD_DB = 2;

/** An attempt's loudness, where it can be compared with itself. */
function dynamicsIn({ exercise, measured }: Scene): Dynamics | null {
  if (isChordForm(exercise) || exercise.practised !== undefined) return null;
  const turn = exercise.steps.find((step) => step.turn)?.step;
  const keysKnown = measured.measures.keysKnown === true;
  return dynamicsOf(measured.loudness, turn, exercise.steps.length - 1, keysKnown);
}

const size = ({ value, plusMinus }: Estimate): Estimate => ({
  value: Math.abs(value),
  plusMinus: plusMinus!,
});

const told = (statement: Found['statement']): Found => ({
  statement,
  advice: { step: 'the-same-again', inARow: null },
});

const shapedLoudness: Situation = (scene) => {
  const { courseDb = null, swellDb = null } = dynamicsIn(scene) ?? {};
  const found = (['swell', 'course'] as const).find((which) => {
    const figure = which === 'swell' ? swellDb : courseDb;
    return figure !== null && surelyOver(size(figure), TOLD_DB, scene.criteria, 2);
  });
  if (found === undefined) return null;
  const { value } = (found === 'swell' ? swellDb : courseDb)!;
  const way =
    found === 'swell' ? (value > 0 ? 'to-the-turn' : 'from-the-turn') : value > 0 ? 'louder' : 'softer';
  return told({ situation: 'loudness-shaped', steps: [], faults: 0, way, byDb: Math.abs(value) });
};

const accented: Situation = (scene) => {
  const accents = dynamicsIn(scene)?.accents ?? null;
  if (accents === null || !surelyOver(accents.byDb, TOLD_DB, scene.criteria, PATTERNS)) return null;
  const { every, byDb } = accents;
  return told({ situation: 'accented-in-groups', steps: [], faults: 0, every, byDb: byDb.value });
};

const pedal: Situation = ({ measured }) =>
  measured.measures.pedalHeld === true ? told({ situation: 'pedal-held', steps: [], faults: 0 }) : null;

export const BESIDES: Situations = {
  'loudness-shaped': shapedLoudness,
  'accented-in-groups': accented,
  'pedal-held': pedal,
};
