import type { ExerciseChoice } from '../exercise/index.ts';
import type { Heard } from '../listen/index.ts';
import { alignAt } from './align.ts';
import { likelyCandidates } from './candidates.ts';
import { likelySemitones } from './shift.ts';
import type { Alignment } from './types.ts';
import { BOUNDS } from './weights.ts';

/** An exercise of the set and how well it explains what was heard, 0..1. */
export interface Explained {
  readonly choice: ExerciseChoice;
  readonly fit: number;
}

/** Candidates that are aligned note by note after the count of keys has picked them. */
const ALIGNED = 10;

/** Heard notes → exercises of the set, best explanation first. A piano read very sharp is taken to have been read a semitone low. */
export function explanations(heard: Heard): readonly Explained[] {
  if (heard.notes.length < 3) return [];
  const semitones = likelySemitones(heard.tuning.cents);
  return likelyCandidates(heard, semitones, ALIGNED)
    .map(({ exercise, octaves }) => ({
      choice: exercise.choice,
      fit: alignAt(heard, exercise, { octaves, semitones }).fit,
    }))
    .sort((a, b) => b.fit - a.fit);
}

/** The exercise that explains the notes best; null where it explains too little or another key or form does as well. */
export function bestChoice(heard: Heard): ExerciseChoice | null {
  const [best, ...rest] = explanations(heard);
  if (best === undefined || best.fit < BOUNDS.recognisedFit) return null;
  const rival = rest.find(({ choice }) => choice.key !== best.choice.key || choice.form !== best.choice.form);
  const clear = rival === undefined || best.fit - rival.fit >= BOUNDS.recognisedLead;
  return clear ? best.choice : null;
}

/** Another exercise that explains the notes clearly better than this alignment does; null where none does. */
export function betterChoice(heard: Heard, alignment: Alignment): Explained | null {
  const chosen = alignment.exercise.choice;
  const best = explanations(heard)[0];
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
