import type { Exercise } from '../exercise/index.ts';
import { cheapestPath } from './path.ts';
import type { Answer } from './path.ts';
import { runsOf } from './runs.ts';
import type { Run } from './runs.ts';
import type { ExpectedPlace, IndexedNote } from './struck.ts';
import { bestRun } from './surroundings.ts';
import { guessBeatSec, localBeatSec, spanBeatSec } from './tempo.ts';
import type { Anchor, BeatSec } from './tempo.ts';
import { BOUNDS } from './weights.ts';

/** Struck notes read as playings of an exercise. */
export interface Reading {
  /** in order of time */
  readonly runs: readonly Run[];
  readonly beatSec: BeatSec;
}

/**
 * Struck notes and exercise → its runs. The beat is guessed from the strokes and then followed; where that leaves much
 * unanswered, as with chords so broken that their notes look like steps, it is guessed from the length of the whole instead.
 */
export function readTogether(
  struck: readonly IndexedNote[],
  exercise: Exercise,
  places: readonly ExpectedPlace[],
): Reading {
  const first = readAt(struck, exercise, places, guessBeatSec(struck, exercise));
  if (answered(first) >= BOUNDS.answeredShare * places.length) return first;
  const second = readAt(struck, exercise, places, spanBeatSec(struck, exercise));
  return answered(second) > answered(first) ? second : first;
}

function readAt(
  struck: readonly IndexedNote[],
  exercise: Exercise,
  places: readonly ExpectedPlace[],
  guessSec: number,
): Reading {
  const firstTry = cheapestPath(struck, exercise, places, () => guessSec);
  const beatSec = localBeatSec(anchorsByLeg(firstTry, struck), guessSec);
  const path = cheapestPath(struck, exercise, places, beatSec);
  return { runs: runsOf(path, exercise.steps.length - 1), beatSec };
}

/** Notes answered by the best run. */
export function answered({ runs }: Reading): number {
  return bestRun(runs)?.answers.length ?? 0;
}

function anchorsByLeg(answers: readonly Answer[], struck: readonly IndexedNote[]): Anchor[][] {
  const legs: Anchor[][] = [];
  for (const { struck: index, place, leg } of answers) {
    const anchors = (legs[leg] ??= []);
    if (anchors.at(-1)?.beat !== place.beat)
      anchors.push({ beat: place.beat, timeSec: struck[index]!.timeSec });
  }
  return legs;
}
