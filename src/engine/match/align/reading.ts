import type { Exercise, Hand } from '../../exercise/index.ts';
import { BOUNDS } from '../costs/index.ts';
import { placesOf } from './notes.ts';
import type { ExpectedPlace, IndexedNote } from './notes.ts';
import { cheapestPath } from './path.ts';
import type { Answer } from './path.ts';
import { bestRun, runsOf } from './runs.ts';
import type { Run } from './runs.ts';
import { guessBeatSec, localBeatSec, playsChords, spanBeatSec } from './tempo.ts';
import type { Anchor, BeatSec } from './tempo.ts';

/** Struck notes read as playings of an exercise. */
export interface Reading {
  /** in order of time */
  readonly runs: readonly Run[];
  readonly beatSec: BeatSec;
}

/**
 * Struck notes and exercise → its runs. The beat is guessed from the strokes and then followed; where that leaves much
 * unanswered, or anything of chords, which may be so broken that their notes look like steps, it is also guessed from the length of
 * the whole, and the reading that answers more is taken.
 */
export function readTogether(
  struck: readonly IndexedNote[],
  exercise: Exercise,
  places: readonly ExpectedPlace[],
): Reading {
  const first = readAt(struck, exercise, places, guessBeatSec(struck, exercise));
  const enough = playsChords(exercise) ? 1 : BOUNDS.answeredShare;
  if (answered(first) >= enough * places.length) return first;
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
function answered({ runs }: Reading): number {
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

/**
 * Struck notes and an exercise of both hands → one run in which each hand was followed by itself, as if the other were not
 * there: a hand may be late, a step ahead, wrong throughout or not there at all without harm to the other. The hand that finds
 * more of its notes takes them first; the other is looked for among what is left.
 */
export function readApart(
  struck: readonly IndexedNote[],
  exercise: Exercise,
  places: readonly ExpectedPlace[],
): Reading {
  const all = struck.map((_, index) => index);
  const alone = (['right', 'left'] as const).map((hand) => ({
    hand,
    reading: readHand(struck, all, exercise, places, hand),
  }));
  const [leader, other] = alone.sort((a, b) => answered(b.reading) - answered(a.reading));
  const led = bestRun(leader!.reading.runs);
  if (led === undefined) return leader!.reading;
  const taken = new Set([...led.answers, ...led.again].map((note) => note.struck));
  const left = all.filter((index) => !taken.has(index));
  const followed = bestRun(readHand(struck, left, exercise, places, other!.hand).runs);
  return { ...leader!.reading, runs: [followed === undefined ? led : joined(led, followed)] };
}

/** One hand's part among some of the struck notes; its answers stand in the places of both hands. */
function readHand(
  struck: readonly IndexedNote[],
  among: readonly number[],
  exercise: Exercise,
  places: readonly ExpectedPlace[],
  hand: Hand,
): Reading {
  const part = {
    ...exercise,
    steps: exercise.steps.map((step) => ({
      ...step,
      notes: step.notes.filter((note) => note.hand === hand),
    })),
  };
  const own = places.filter((place) => place.note.hand === hand);
  const { runs, beatSec } = readTogether(
    among.map((index) => struck[index]!),
    part,
    placesOf(part),
  );
  return {
    beatSec,
    runs: runs.map((run) => ({
      ...run,
      answers: run.answers.map((answer) => ({
        ...answer,
        struck: among[answer.struck]!,
        place: own[answer.place.place]!,
      })),
      again: run.again.map((note) => ({ ...note, struck: among[note.struck]! })),
    })),
  };
}

function joined(led: Run, followed: Run): Run {
  return {
    answers: [...led.answers, ...followed.answers].sort((a, b) => a.place.place - b.place.place),
    again: [...led.again, ...followed.again].sort((a, b) => a.struck - b.struck),
    goingsBack: led.goingsBack,
  };
}
