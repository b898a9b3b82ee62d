import type { Exercise } from '../../exercise/index.ts';
import type { Estimate } from '../types.ts';
import { differenceWithin } from './dynamics.ts';
import { louderDb } from './loudness.ts';
import type { Loudness } from './loudness.ts';

/** How much louder what was practised becomes from its first note to its last. */
export interface Growth {
  /** dB over one copy, + louder */
  readonly growsDb: Estimate;
  /** how far the middle lies above (+) the straight line from first to last, dB: most of it comes early; null: not told */
  readonly bowDb: Estimate | null;
}

/** Where the keys are known their levels are taken out already; else each is compared with itself alone. */
const notesOf = (loudness: readonly Loudness[], keysKnown: boolean) =>
  loudness.map(({ step, key, levelDb }) => ({
    step,
    levelDb,
    key: `${key.expected.hand} ${keysKnown ? '' : key.expected.midi}`,
  }));

/**
 * Levels → growth over one copy of what was practised, against the place in it; null: it cannot be told, as on one way alone of a piano
 * that is not known. A bow is what is left of the straight line; over places evenly spread both go their own ways.
 */
export function growthOf(
  loudness: readonly Loudness[],
  { steps }: Exercise,
  keysKnown: boolean,
): Growth | null {
  const last = Math.max(1, ...steps.map(({ copy }) => copy?.place ?? 0));
  const at = (step: number): number => (steps[step]?.copy?.place ?? 0) / last;
  const notes = notesOf(loudness, keysKnown);
  const growsDb = differenceWithin(notes, at);
  if (growsDb === null) return null;
  const left = notes.map((note) => ({ ...note, levelDb: note.levelDb - growsDb.value * at(note.step) }));
  return { growsDb, bowDb: differenceWithin(left, (step) => 4 * at(step) * (1 - at(step))) };
}

/**
 * How much louder some notes are than the others, dB; null: it cannot be told. Against the others at the same pitch (`louderDb`), or where
 * the keys are not known and come both ways, each key against itself, whichever tells it the more surely.
 */
export function accentDb(
  loudness: readonly Loudness[],
  isOne: (step: number) => boolean,
  keysKnown: boolean,
): Estimate | null {
  const among = louderDb(loudness, ({ step }) => isOne(step));
  const within = keysKnown
    ? null
    : differenceWithin(notesOf(loudness, false), (step) => (isOne(step) ? 1 : 0));
  if (among === null || within === null) return among ?? within;
  return (among.plusMinus ?? 0) < (within.plusMinus ?? 0) ? among : within;
}
