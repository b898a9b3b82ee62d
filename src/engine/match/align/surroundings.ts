import type { Exercise } from '../../exercise/index.ts';
import type { Passage } from '../../listen/index.ts';
import type { Run } from './runs.ts';
import type { IndexedNote } from './notes.ts';
import type { BeatSec } from './tempo.ts';
import { BOUNDS } from '../costs/index.ts';

/** What belongs to one run, and what to others. */
export interface Surroundings {
  readonly run: Passage;
  /** struck notes that belong to this attempt */
  readonly within: readonly number[];
  readonly again: Run['again'];
  readonly abandoned: readonly Run[];
  readonly others: readonly Passage[];
}

/**
 * What belongs to the chosen run: beginnings broken off straight before it (their notes count as a restart) and single
 * notes close around it. Whole runs before it, and all that comes after it, are other runs.
 */
export function surroundings(
  runs: readonly Run[],
  chosen: Run | undefined,
  exercise: Exercise,
  struck: readonly IndexedNote[],
  beatSec: BeatSec,
  durationSec: number,
): Surroundings {
  if (chosen === undefined)
    return {
      run: { startSec: 0, endSec: durationSec },
      within: struck.map((_, index) => index),
      again: [],
      abandoned: [],
      others: [],
    };
  const at = runs.indexOf(chosen);
  const last = exercise.steps.length - 1;
  let from = at;
  while (from > 0 && reached(runs[from - 1]!) < last) from--;
  const abandoned = runs.slice(from, at);
  const spans = runs.map((run) => spanOf(run, struck));
  const own = { startSec: spans[from]!.startSec, endSec: spans[at]!.endSec };
  const before = from > 0 ? spans[from - 1]!.endSec : -Infinity;
  const after = spans[at + 1]?.startSec ?? Infinity;
  const aroundSec = (timeSec: number): number =>
    Math.max(BOUNDS.aroundRunSec, BOUNDS.aroundRunBeats * beatSec(timeSec));
  const startSec = Math.max(own.startSec - aroundSec(own.startSec), before + 1e-6);
  const endSec = Math.min(own.endSec + aroundSec(own.endSec), after - 1e-6);
  const within = struck.flatMap((note, index) =>
    note.timeSec >= startSec && note.timeSec <= endSec ? [index] : [],
  );
  const lastSec = struck[within.at(-1)!]!.timeSec;
  return {
    run: {
      startSec: struck[within[0]!]!.timeSec,
      endSec: Math.max(lastSec, Math.min(lastSec + aroundSec(lastSec), durationSec, after)),
    },
    within,
    again: [
      ...abandoned.flatMap((run) => [
        ...run.answers.map(
          ({ struck: index, place }) => ({ struck: index, kind: 'restart', step: place.step }) as const,
        ),
        ...run.again,
      ]),
      ...chosen.again,
    ],
    abandoned,
    others: spans.filter((_, index) => index < from || index > at),
  };
}

function reached(run: Run): number {
  return Math.max(...run.answers.map((answer) => answer.place.step));
}

function spanOf(run: Run, struck: readonly IndexedNote[]): Passage {
  const times = [...run.answers, ...run.again].map(({ struck: index }) => struck[index]!.timeSec);
  return { startSec: Math.min(...times), endSec: Math.max(...times) };
}
