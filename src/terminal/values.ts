import { nearest } from './hints.ts';
import type { Messages } from './language/index.ts';
import { usageProblem } from './problems.ts';

/* What stands after an option → its value. Each throws Problem (wrong usage). */

/** ' Did you mean "arpeggio"?', or '' where nothing is near. */
export function hint(t: Messages, word: string, accepted: readonly string[]): string {
  const near = nearest(word, accepted);
  return near === null ? '' : t.didYouMean(near);
}

export function readWord<Word extends string>(option: string, text: string, accepted: readonly Word[]): Word {
  const found = accepted.find((word) => word === text.toLowerCase());
  if (found !== undefined) return found;
  throw usageProblem((t, all) => t.noWord(`--${option}`, text, accepted, hint(all, text, accepted)));
}

const WHOLE: readonly string[] = ['octaves', 'workers', 'times'];

export function readNumber(option: string, text: string, least: number, most: number): number {
  const value = Number(text);
  const whole = WHOLE.includes(option);
  if (text.trim() !== '' && (!whole || Number.isInteger(value)) && value >= least && value <= most)
    return value;
  throw usageProblem((t) => t.noNumber(`--${option}`, text, whole, least, most));
}
