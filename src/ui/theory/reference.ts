import type { Exercise } from '../../engine/index.ts';
import type { Tone } from '../../io/tone/index.ts';

/** A calm tempo to listen to; broken triads go three to a beat. */
const REFERENCE_BPM = 72;
/** Connected, and the last note rings for two beats. */
const HELD_SHARE = 0.98;
const LAST_BEATS = 2;

/** An exercise → how it sounds, played evenly. */
export function referenceOf({ steps }: Exercise): readonly Tone[] {
  const beatSec = 60 / REFERENCE_BPM;
  return steps.flatMap(({ beat, notes }, at) => {
    const next = steps[at + 1];
    const holdSec = (next === undefined ? LAST_BEATS : (next.beat - beat) * HELD_SHARE) * beatSec;
    return notes.map(({ midi }) => ({ timeSec: 0.05 + beat * beatSec, holdSec, midi }));
  });
}
