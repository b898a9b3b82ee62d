import type { Sheet } from './sheet.ts';

/** Metres that a passage is mostly written in; any other comes with a file. */
export const TIMES: readonly Sheet['time'][] = [
  { count: 2, unit: 4 },
  { count: 3, unit: 4 },
  { count: 4, unit: 4 },
  { count: 6, unit: 8 },
];

/** "3/4" */
export const timeWords = ({ count, unit }: Sheet['time']): string => `${count}/${unit}`;

/** The other way, of those above. */
export const timeOf = (text: string): Sheet['time'] =>
  TIMES.find((time) => timeWords(time) === text) ?? { count: 4, unit: 4 };
