import { octavesUp } from '../../exercise/index.ts';
import type { Exercise, ExpectedNote, Hand, Hands } from '../../exercise/index.ts';
import type { Heard } from '../../listen/index.ts';

/** A played note as the matching sees it: its place in Heard.notes and the key that was struck. */
export interface IndexedNote {
  /** index into Heard.notes */
  readonly played: number;
  readonly timeSec: number;
  /** heard key plus the semitones that the listener read too few */
  readonly midi: number;
  readonly confidence: number;
  readonly levelDb: number;
}

/** By how much the keys struck lie away from the written ones: octaves of each hand, and semitones that the listener read too few. */
export interface Shift extends Readonly<Record<Hand, number>> {
  readonly semitones: number;
}

export const AS_WRITTEN: Shift = { left: 0, right: 0, semitones: 0 };

/** Octaves by which all that is played lies away from what is written; what a hand lies beyond that is its own. */
export function sharedOctaves({ left, right }: Shift, hands: Hands): number {
  if (hands !== 'together') return hands === 'left' ? left : right;
  return left * right > 0 ? Math.sign(left) * Math.min(Math.abs(left), Math.abs(right)) : 0;
}

/** The exercise where it was played: each hand's notes so many octaves away from where they are written. */
export function exerciseAt(exercise: Exercise, shift: Shift): Exercise {
  if (shift.left === 0 && shift.right === 0) return exercise;
  const steps = exercise.steps.map((step) => ({
    ...step,
    notes: step.notes.map((note) => inOctave(note, shift[note.hand])).sort((a, b) => a.midi - b.midi),
  }));
  return { ...exercise, steps };
}

/** The same note some octaves away, its name's octave number moved with it. */
function inOctave(note: ExpectedNote, octaves: number): ExpectedNote {
  return { ...note, midi: note.midi + 12 * octaves, name: octavesUp(note.name, octaves) };
}

/** One expected note and where it stands. `place` counts the exercise's notes by step, then pitch. */
export interface ExpectedPlace {
  readonly place: number;
  readonly step: number;
  readonly beat: number;
  readonly note: ExpectedNote;
}

/** The exercise's notes in one row, by step, then pitch. */
export function placesOf(exercise: Exercise): readonly ExpectedPlace[] {
  const places: ExpectedPlace[] = [];
  for (const step of exercise.steps)
    for (const note of step.notes)
      places.push({ place: places.length, step: step.step, beat: step.beat, note });
  return places;
}

/** Heard notes → the keys struck, in order of time. */
export function indexedNotes(heard: Heard, semitones: number): readonly IndexedNote[] {
  return heard.notes
    .map((note, played) => ({
      played,
      timeSec: note.timeSec,
      midi: note.midi + semitones,
      confidence: note.confidence,
      levelDb: note.levelDb,
    }))
    .sort((a, b) => a.timeSec - b.timeSec || a.midi - b.midi);
}
