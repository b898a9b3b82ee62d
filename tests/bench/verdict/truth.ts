import { damperSec } from '../../support/piano/play.ts';
import { createRandom } from '../../support/random.ts';
import type { TrueNote, Truth } from '../../support/render.ts';
import { HOME_DEFAULTS } from '../../support/home/knobs.ts';
import { STUDENT_DEFAULTS } from '../../support/student/knobs.ts';
import { DB_PER_VELOCITY } from '../../support/student/perform.ts';
import type { Played } from './attempts.ts';

/** A middling blow as it arrives, dB. */
const MIDDLE_DB = -24;
const MIDDLE_VELOCITY = 64;
/** what room and microphone add to the differences of the piano's own keys, SD in dB (72 rendered attempts of the development piano) */
const ROOM_SD_DB = 1.5;

/** Keys as they were struck → the truth about them as a renderer would tell it, without any sound. */
export function truthOf({ performance, spec }: Played): Truth {
  const home = { ...HOME_DEFAULTS, ...spec.home };
  const random = createRandom(spec.seed).fork('levels');
  const keySdDb = Math.hypot(home.keyLevelSdDb ?? 0, ROOM_SD_DB);
  const keysDb = Array.from({ length: 128 }, () => random.normal(keySdDb));
  const slopeDb = random.normal(0.1);
  const notes = performance.strokes.map((stroke): TrueNote => {
    const { midi, velocity } = stroke;
    const undamped = performance.pedal === 'held' || damperSec(midi) === null;
    return {
      ...stroke,
      cents: 0,
      levelDb:
        MIDDLE_DB + (velocity - MIDDLE_VELOCITY) * DB_PER_VELOCITY + keysDb[midi]! + slopeDb * (midi - 60),
      releaseSec: undamped ? null : stroke.releaseSec,
    };
  });
  return {
    exercise: spec.exercise,
    notes,
    missed: performance.missed,
    tuningCents: home.tuningCents,
    seed: spec.seed,
    piano: spec.piano,
    student: { ...STUDENT_DEFAULTS, ...spec.student },
    home,
  };
}

/** The same attempt as if every key and the room answered a blow alike: what the player did. */
export function byForce(truth: Truth): Truth {
  const notes = truth.notes.map((note) => ({ ...note, levelDb: note.velocity * DB_PER_VELOCITY }));
  return { ...truth, notes };
}
