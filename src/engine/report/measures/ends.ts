import { mean } from '../../base/statistics.ts';
import type { Exercise } from '../../exercise/index.ts';
import { notMeasured } from './estimate.ts';
import type { Figure } from '../types.ts';
import type { Loudness } from './loudness.ts';

/** The two places where weight is lost, against the rest, dB (negative: softer). */
export interface Ends {
  /** the turn at the top and the steps beside it */
  readonly topDb: Figure;
  /** the last two steps, at the bottom */
  readonly bottomDb: Figure;
}

const LEAST_MIDDLE = 3;

/**
 * Ends: mean level of the top (turn and its neighbours) and of the bottom (last two steps) − mean level of the middle (all but these and the first two), dB.
 * Levels as heard, without the line over pitch, which would take the fading out; a piano whose treble is by itself some dB softer
 * therefore shows in the top's figure.
 */
export function endsOf(loudness: readonly Loudness[], exercise: Exercise): Ends {
  const last = exercise.steps.length - 1;
  const turn = exercise.steps.find((step) => step.turn)?.step;
  const atTop = (step: number): boolean => turn !== undefined && Math.abs(step - turn) <= 1;
  const atBottom = (step: number): boolean => step >= last - 1;
  const atStart = (step: number): boolean => step <= 1;
  const rest = loudness.filter(({ step }) => !atTop(step) && !atBottom(step) && !atStart(step));
  return {
    topDb: against(
      loudness.filter((note) => atTop(note.step)),
      rest,
    ),
    bottomDb: against(
      loudness.filter((note) => atBottom(note.step) && !atTop(note.step)),
      rest,
    ),
  };
}

/** The softer end against the middle, dB (negative: it fades). */
export function endsFadeDb({ topDb, bottomDb }: Ends): Figure {
  if ('notMeasured' in topDb) return bottomDb;
  if ('notMeasured' in bottomDb) return topDb;
  return topDb.value < bottomDb.value ? topDb : bottomDb;
}

/**
 * ± from the error of each level as it is heard, which is alike each time a key is struck: the figure is told as heard, so that what keys
 * and blows differ by is in it.
 */
function against(end: readonly Loudness[], rest: readonly Loudness[]): Figure {
  if (end.length === 0 || rest.length < LEAST_MIDDLE) return notMeasured({ notice: 'too-few-between-ends' });
  const level = (notes: readonly Loudness[]): number => mean(notes.map((note) => note.levelDb))!;
  const error = (notes: readonly Loudness[]): number => {
    const keys = new Set(notes.map(({ key }) => key.expected.midi)).size;
    return Math.sqrt(mean(notes.map(({ levelSdDb }) => levelSdDb ** 2))! / keys);
  };
  return { value: level(end) - level(rest), plusMinus: Math.hypot(error(end), error(rest)) };
}
