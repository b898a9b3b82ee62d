import { COURSE } from './course.ts';
import { PLAYING } from './playing.ts';
import { PROGRESS } from './progress.ts';
import { USABLE } from './usable.ts';
import { WRONG } from './wrong.ts';

/** The words of the report in English. What it can say is what every language must be able to say. */
export const ENGLISH_WORDS = {
  ...USABLE,
  ...COURSE,
  ...WRONG,
  ...PLAYING,
  ...PROGRESS,
  /** "C natural", beside C♯, in a naming where both are called C */
  natural: (letter: string): string => `${letter} natural`,
  figure: (value: number, digits: number): string => value.toFixed(digits),
};

export type Wording = typeof ENGLISH_WORDS;
