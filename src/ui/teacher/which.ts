import type { GivenFile, Playing, Student } from '../../io/teaching/index.ts';
import { kindOf } from './state/playings.ts';

/** Which attempts the list shows. */
export type Which = 'to-hear' | 'to-answer' | 'all';

export function shows(which: Which, { heardMs, answeredMs }: Playing): boolean {
  if (which === 'all') return true;
  return which === 'to-hear' ? heardMs === null : answeredMs === null;
}

/** Whether a student has anything in such a list; one in whose recordings nothing was found is to be answered too. */
export function isIn(
  which: Which,
  { id }: Student,
  playings: readonly Playing[],
  files: readonly GivenFile[],
): boolean {
  if (which === 'all') return true;
  const attempts = playings.filter((one) => one.studentId === id && kindOf(one) !== 'other');
  const own = files.filter((one) => one.studentId === id);
  return (
    attempts.some((one) => shows(which, one)) ||
    own.some(({ state }) => state === 'waiting') ||
    (attempts.length === 0 && own.some(({ state }) => state === 'sorted'))
  );
}
