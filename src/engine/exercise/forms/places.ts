import type { Principle } from '../types.ts';

/** One key under one finger, not yet given to a hand. */
export interface FingeredName {
  /** spelt, with its octave */
  readonly name: string;
  readonly finger: number;
}

/** One place of one hand's part: a single key or a chord, lowest note first. */
export interface Place {
  readonly keys: readonly FingeredName[];
  readonly turn: boolean;
  readonly label?: string;
}

/** Names and fingers side by side. */
export function fingered(names: readonly string[], fingers: readonly number[]): readonly FingeredName[] {
  return names.map((name, index) => ({ name, finger: fingers[index]! }));
}

/** Fingers going up → the same, on a black key begun with 2 where that is the principle: so many as lie before the first thumb move down. */
export function begun(fingers: readonly number[], principle: Principle | null): readonly number[] {
  if (principle !== 'second-first' || !canBeginWithSecond(fingers)) return fingers;
  const before = fingers.indexOf(1);
  return fingers.map((finger, at) => (at < before ? at + 2 : finger));
}

/** Whether they begin with a higher finger than 2, soon before a thumb. */
export function canBeginWithSecond(fingers: readonly number[]): boolean {
  const before = fingers.indexOf(1);
  return before > 0 && fingers[0]! > 2 && fingers[0]! < 5 && fingers[before - 1]! >= fingers[0]!;
}
