import { mean } from '../../base/statistics.ts';
import type { Learnt } from './types.ts';

/** strikes beyond this count no more: a piano drifts with the seasons, and what is new must keep its say */
const MOST_COUNT = 60;

/** Single readings → what they teach; `eachPlusMinus` is one reading's own ±. `readings` must not be empty. */
export function learn(readings: readonly number[], eachPlusMinus: number): Learnt {
  const value = mean(readings)!;
  return { value, plusMinus: eachPlusMinus / Math.sqrt(readings.length), count: readings.length };
}

/** Two findings of one thing → one: each weighs by the square of its certainty (the least-squares mean of two readings). */
export function join(older: Learnt, newer: Learnt): Learnt {
  const aged =
    older.count <= MOST_COUNT ? older.plusMinus : older.plusMinus * Math.sqrt(older.count / MOST_COUNT);
  const before = 1 / aged ** 2;
  const now = 1 / newer.plusMinus ** 2;
  return {
    value: (before * older.value + now * newer.value) / (before + now),
    plusMinus: 1 / Math.sqrt(before + now),
    count: Math.min(older.count, MOST_COUNT) + newer.count,
  };
}

/** How many of their common ± two findings lie apart. */
export function apart(one: Learnt, other: Learnt): number {
  return Math.abs(one.value - other.value) / Math.hypot(one.plusMinus, other.plusMinus);
}
