import type { Exercise, Report } from '../../engine/index.ts';

/** A beat of the exercise and when it was struck, seconds. */
export interface Beat {
  readonly beat: number;
  readonly timeSec: number;
}

/** Beats that follow each other at one tempo, until the next stretch begins. */
export interface Stretch {
  readonly beat: number;
  readonly timeSec: number;
  readonly beatSec: number;
}

/** Two beats are no nearer, seconds: no tempo is played at which they would be. */
const NEAREST_SEC = 0.03;
const BEATS_A_BAR = 4;

/** Report → the beats that were struck, with the mean time of their right notes, ascending in both. */
export function beatsStruck(report: Report, exercise: Exercise): readonly Beat[] {
  const struck = exercise.steps.flatMap(({ step, beat }): readonly Beat[] => {
    if (!Number.isInteger(beat)) return [];
    const times = report.notes.flatMap((note) =>
      note.step === step && note.verdict === 'correct' ? [note.timeSec] : [],
    );
    const sum = times.reduce((total, timeSec) => total + timeSec, 0);
    return times.length === 0 ? [] : [{ beat, timeSec: sum / times.length }];
  });
  return struck.reduce<readonly Beat[]>(
    (kept, one) => (one.timeSec - (kept.at(-1)?.timeSec ?? -Infinity) < NEAREST_SEC ? kept : [...kept, one]),
    [],
  );
}

/**
 * Beats struck, and the tempo after the last one (seconds a beat) → the stretches from the start of the recording on; beats count from 0
 * there, and bars begin with every fourth. What comes before the first note is the rest of one whole bar.
 */
export function stretchesOf(beats: readonly Beat[], lastBeatSec: number): readonly Stretch[] {
  const [first] = beats;
  if (first === undefined) return [{ beat: 0, timeSec: 0, beatSec: lastBeatSec }];
  const lead = first.timeSec < NEAREST_SEC ? 0 : BEATS_A_BAR + (first.beat % BEATS_A_BAR);
  const moved = beats.map(({ beat, timeSec }) => ({ beat: beat - first.beat + lead, timeSec }));
  const start = lead === 0 ? [] : [{ beat: 0, timeSec: 0, beatSec: first.timeSec / lead }];
  return [
    ...start,
    ...moved.map((one, at) => {
      const next = moved[at + 1];
      const beatSec =
        next === undefined ? lastBeatSec : (next.timeSec - one.timeSec) / (next.beat - one.beat);
      return { ...one, beatSec };
    }),
  ];
}
