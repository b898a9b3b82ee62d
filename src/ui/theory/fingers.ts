import type { Crossing, Exercise, Hand } from '../../engine/index.ts';

/** One note of a passage with its finger. */
export interface FingeredNote {
  readonly step: number;
  readonly name: string;
  readonly finger: number;
  /** how the hand crosses on the way into it; null: it does not */
  readonly crossing: Crossing['kind'] | null;
}

/** The way up of a passage of single notes and its way down, each with the note at the turn. */
export function fingersOf(
  exercise: Exercise,
  hand: Hand,
): {
  readonly up: readonly FingeredNote[];
  readonly down: readonly FingeredNote[];
} {
  const notes = exercise.steps.flatMap(({ step, notes: struck, crossings }): FingeredNote[] => {
    const note = struck.find((one) => one.hand === hand);
    if (note === undefined || note.finger === null) return [];
    const crossing = crossings.find((one) => one.hand === hand)?.kind ?? null;
    return [{ step, name: note.name, finger: note.finger, crossing }];
  });
  const turn = exercise.steps.find((step) => step.turn)?.step ?? notes.length - 1;
  return {
    up: notes.filter(({ step }) => step <= turn),
    down: notes
      .filter(({ step }) => step >= turn)
      .map((note) => (note.step === turn ? { ...note, crossing: null } : note)),
  };
}
