import type { Wording } from '../english/index.ts';
import { COURSE } from './course.ts';
import { PLAYING } from './playing.ts';
import { PROGRESS } from './progress.ts';
import { USABLE } from './usable.ts';
import { WRONG } from './wrong.ts';

/** The words of the report in German; says "du". */
export const GERMAN_WORDS: Wording = {
  ...USABLE,
  ...COURSE,
  ...WRONG,
  ...PLAYING,
  ...PROGRESS,
  natural: (letter) => `${letter} ohne Vorzeichen`,
  figure: (value, digits) => value.toFixed(digits).replace('.', ','),
};
