import { Note } from 'tonal';
import { fingered } from './places.ts';
import type { Place } from './places.ts';
import { upAndDown } from './runs.ts';
import type { Part } from './types.ts';

const INTERVALS = {
  major: ['1P', '2M', '3M', '4P', '5P'],
  minor: ['1P', '2M', '3m', '4P', '5P'],
} as const;

/** The first five notes of the key up and down, a finger each: the hand stays where it lies. */
export function fiveFingerPlaces({ key: { mode }, hand, start }: Part): readonly Place[] {
  const names = INTERVALS[mode].map((interval) => Note.transpose(start, interval));
  const up = fingered(names, hand === 'right' ? [1, 2, 3, 4, 5] : [5, 4, 3, 2, 1]);
  return upAndDown(up, up);
}
