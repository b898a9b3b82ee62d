import type { Exercise, ExpectedNote, Hand } from '../exercise/index.ts';
import type { Heard } from '../listen/index.ts';

/** A played note as the matching sees it: its place in Heard.notes and the key after shifts are taken out. */
export interface StruckNote {
  /** index into Heard.notes */
  readonly played: number;
  readonly timeSec: number;
  /** in the written octave: heard key less the octave shift, plus the semitone shift */
  readonly midi: number;
  readonly confidence: number;
  readonly levelDb: number;
}

/** By how much the written exercise and the heard keys differ as a whole. */
export interface Shift {
  readonly octaves: number;
  readonly semitones: number;
  /** of two hands the one that lies in another octave than the other asks for */
  readonly hand?: HandShift;
}

export interface HandShift {
  readonly hand: Hand;
  readonly octaves: number;
}

/** One expected note and where it stands. `place` counts the exercise's notes by step, then pitch. */
export interface Place {
  readonly place: number;
  readonly step: number;
  readonly beat: number;
  readonly note: ExpectedNote;
}

/** The exercise's notes in one row, by step, then pitch. */
export function placesOf(exercise: Exercise): readonly Place[] {
  const places: Place[] = [];
  for (const step of exercise.steps)
    for (const note of step.notes)
      places.push({ place: places.length, step: step.step, beat: step.beat, note });
  return places;
}

/** Heard notes with the shift taken out, in order of time. */
export function struckNotes(heard: Heard, shift: Shift): readonly StruckNote[] {
  return heard.notes
    .map((note, played) => ({
      played,
      timeSec: note.timeSec,
      midi: note.midi + shift.semitones - 12 * shift.octaves,
      confidence: note.confidence,
      levelDb: note.levelDb,
    }))
    .sort((a, b) => a.timeSec - b.timeSec || a.midi - b.midi);
}
