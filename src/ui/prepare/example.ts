import {
  accentsOf,
  copiesMeant,
  groupOf,
  notesABeat,
  practisedExercise,
  stretchIn,
  WHOLE,
} from '../../engine/index.ts';
import type { Exercise, ExpectedNote, ExpectedStep, Intention } from '../../engine/index.ts';
import type { Tone } from '../../io/tone/index.ts';

/** How something that is to be practised sounds, counted in. */
export interface Example {
  readonly tones: readonly Tone[];
  readonly clicksSec: readonly number[];
}

const COUNT_IN_BEATS = 4;
const START_SEC = 0.05;
/** The last note rings for two beats. */
const LAST_BEATS = 2;
/** How much of the time to the next note sounds; staccato and detached as they are played (Bresin & Battel 2000, memory). */
const HELD_SHARE = { legato: 1.03, detached: 0.75, staccato: 0.4 } as const;
const JOINED_SHARE = 0.98;
/** Against a middling blow, dB: a step of dynamics is some 5 to 6, a swell two of them (common practice, no source). */
const SOFT_DB = -9;
const LOUD_DB = 6;
const SWELL_DB = 12;
const ACCENT_DB = 6;
const OVER_DB = 8;

/** An exercise, and how it is meant (null: as it is written), at a tempo → how it sounds, once; counted in, if not said otherwise. */
export function exampleOf(
  exercise: Exercise,
  intention: Intention | null,
  bpm: number,
  countInBeats = COUNT_IN_BEATS,
): Example {
  const meant = { ...(intention ?? WHOLE), times: 1 };
  const repeats = copiesMeant(meant, stretchIn(exercise, meant).length);
  const { steps } = practisedExercise(exercise.choice, { intention: meant, repeats });
  const beatSec = 60 / bpm;
  const fromSec = START_SEC + countInBeats * beatSec;
  const usualBeats = meant.blocked === true ? 1 : 1 / notesABeat(exercise.choice);
  const last = Math.max(1, ...steps.map(({ copy }) => copy?.place ?? 0));
  const tones = steps.flatMap((step, at): readonly Tone[] => {
    const holdSec = beatSec * heldBeats(step, steps[at + 1], usualBeats, meant);
    const share =
      holdSec / Math.max(beatSec * ((steps[at + 1]?.beat ?? step.beat + LAST_BEATS) - step.beat), 1e-3);
    return step.notes.map((note) => ({
      timeSec: fromSec + step.beat * beatSec,
      // Of a passage each note is as long as it is written.
      holdSec: note.beats === undefined ? holdSec : Math.min(share, 1) * beatSec * note.beats,
      midi: note.midi,
      louderDb: louderDb(meant, step, note, last),
    }));
  });
  const clicksSec = Array.from({ length: countInBeats }, (_, beat) => START_SEC + beat * beatSec);
  return { tones, clicksSec };
}

function heldBeats(
  { beat }: ExpectedStep,
  next: ExpectedStep | undefined,
  usualBeats: number,
  { touch, rhythm }: Intention,
): number {
  if (next === undefined) return LAST_BEATS;
  const share = touch === undefined ? JOINED_SHARE : HELD_SHARE[touch];
  // Before a stop the note is let go; the first of a group is held on.
  const stops = next.pauseBefore === true && groupOf(rhythm) === null;
  return share * (stops ? Math.min(usualBeats, next.beat - beat) : next.beat - beat);
}

function louderDb(
  { loudness }: Intention,
  { copy }: ExpectedStep,
  { hand }: ExpectedNote,
  last: number,
): number {
  const place = copy?.place ?? 0;
  switch (loudness) {
    case 'p':
      return SOFT_DB;
    case 'f':
      return LOUD_DB;
    case 'growing':
      return SWELL_DB * (place / last) + LOUD_DB - SWELL_DB;
    case 'fading':
      return LOUD_DB - SWELL_DB * (place / last);
    case 'left-over-right':
      return hand === 'left' ? 0 : -OVER_DB;
    case 'right-over-left':
      return hand === 'right' ? 0 : -OVER_DB;
    case undefined:
    case 'mf':
      return 0;
    default:
      return place % (accentsOf(loudness) ?? 1) === 0 ? ACCENT_DB : 0;
  }
}
