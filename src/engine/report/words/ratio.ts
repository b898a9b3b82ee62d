import { mean, middle, standardDeviation } from '../../base/statistics.ts';
import type { Practising, Rhythm } from '../../exercise/index.ts';
import type { Scene } from './scene.ts';

/** Rhythms that make no step longer than another. */
const WITHOUT_LONG: readonly Rhythm[] = ['even', 'stop-on-each-step', 'prepared-silently', 'one-note-more'];
/** Of fewer ways of one kind no ratio is told. */
const FEWEST = 2;

/**
 * How many times as long as the others the steps are that a rhythm makes longer, with its ±; null: the rhythm makes none longer, or
 * too few were heard. The middle of either kind; its variance of n is π/3n of a single one.
 */
export function ratioPlayed(
  { measured, exercise }: Scene,
  practised: Practising,
): { readonly value: number; readonly plusMinus: number } | null {
  const { rhythm } = practised.intention;
  if (WITHOUT_LONG.includes(rhythm) || practised.repeats === 0) return null;
  const long: number[] = [];
  const short: number[] = [];
  measured.strikes.forEach((to, at) => {
    const from = measured.strikes[at - 1];
    const { copy, pauseBefore } = exercise.steps[to.step]!;
    const place = copy?.place ?? 0;
    if (from === undefined || place === 0 || from.step !== to.step - 1) return;
    const isLong =
      rhythm === 'long-short' || rhythm === 'short-long'
        ? (place % 2 === 1) === (rhythm === 'long-short')
        : pauseBefore === true;
    (isLong ? long : short).push(to.timeSec - from.timeSec);
  });
  const [a, b] = [middle(long), middle(short)];
  if (a === undefined || b === undefined || b <= 0 || Math.min(long.length, short.length) < FEWEST)
    return null;
  const unsure = [long, short].map(
    (values) => (Math.PI / 3 / values.length) * ((standardDeviation(values) ?? 0) / mean(values)!) ** 2,
  );
  const value = a / b;
  return { value, plusMinus: value * Math.sqrt(unsure[0]! + unsure[1]!) };
}
