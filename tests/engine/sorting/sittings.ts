import type { ExerciseChoice } from '../../../src/engine/exercise/index.ts';
import { buildExercise } from '../../../src/engine/exercise/index.ts';
import type { Heard, PlayedNote } from '../../../src/engine/listen/index.ts';
import { heardOf, played } from '../match/simulated.ts';

/** Something played, beginning so long after the last stroke before it. */
export interface Piece {
  readonly afterSec: number;
  readonly notes: readonly PlayedNote[];
}

/** An exercise as written at so many steps a second, its first stroke at 0. */
export function asWritten(choice: ExerciseChoice, octaves = 0, stepSec = 0.4): readonly PlayedNote[] {
  return buildExercise(choice).steps.flatMap(({ step, notes }) =>
    notes.map(({ midi }) => played(step * stepSec, midi + 12 * octaves)),
  );
}

/** Keys one after the other, the first at 0. */
export function line(keys: readonly number[], stepSec = 0.3): readonly PlayedNote[] {
  return keys.map((midi, at) => played(at * stepSec, midi));
}

/** Pieces one after the other → what was heard, and where each begins and ends. */
export function sitting(pieces: readonly Piece[]): {
  readonly heard: Heard;
  readonly spans: readonly { readonly firstSec: number; readonly lastSec: number }[];
} {
  let clockSec = 0;
  const notes: PlayedNote[] = [];
  const spans = pieces.map(({ afterSec, notes: own }) => {
    const firstSec = clockSec + afterSec;
    notes.push(...own.map((note) => later(note, firstSec)));
    clockSec = firstSec + Math.max(...own.map(({ timeSec }) => timeSec));
    return { firstSec, lastSec: clockSec };
  });
  return { heard: heardOf(notes), spans };
}

export function later(note: PlayedNote, sec: number): PlayedNote {
  return {
    ...note,
    timeSec: note.timeSec + sec,
    releaseSec: note.releaseSec === null ? null : note.releaseSec + sec,
  };
}
