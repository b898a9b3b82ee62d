import { mean, median, standardDeviation } from '../../base/statistics.ts';
import type { Practising } from '../../exercise/index.ts';
import type { Scene } from './scene.ts';

/** Of fewer ways of one kind no ratio is told. */
const FEWEST = 2;

/**
 * How many times as long as the others the steps are that a rhythm makes longer, with its ±; null: the rhythm makes none longer, or
 * too few were heard. Medians of both kinds; the variance of a median of n is π/2n of a single one.
 */
export function ratioPlayed(
  { measured, exercise }: Scene,
  practised: Practising,
): { readonly value: number; readonly plusMinus: number } | null {
  const { rhythm } = practised.intention;
  if (rhythm === 'even' || rhythm === 'stop-on-each-step' || practised.repeats === 0) return null;
  const length = exercise.steps.length / practised.repeats;
  const long: number[] = [];
  const short: number[] = [];
  measured.strikes.forEach((to, at) => {
    const from = measured.strikes[at - 1];
    const index = to.step % length;
    if (from === undefined || index === 0 || from.step !== to.step - 1) return;
    const isLong =
      rhythm === 'long-short' || rhythm === 'short-long'
        ? (index % 2 === 1) === (rhythm === 'long-short')
        : exercise.steps[to.step]!.pauseBefore === true;
    (isLong ? long : short).push(to.timeSec - from.timeSec);
  });
  const [a, b] = [median(long), median(short)];
  if (a === undefined || b === undefined || b <= 0 || Math.min(long.length, short.length) < FEWEST)
    return null;
  const unsure = [long, short].map(
    (values) => (Math.PI / 2 / values.length) * ((standardDeviation(values) ?? 0) / mean(values)!) ** 2,
  );
  const value = a / b;
  return { value, plusMinus: value * Math.sqrt(unsure[0]! + unsure[1]!) };
}
