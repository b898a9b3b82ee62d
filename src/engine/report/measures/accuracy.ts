import type { Alignment } from '../../match/index.ts';
import { notMeasured } from './estimate.ts';
import type { Figure } from '../types.ts';

/** Note accuracy: correct / expected, per cent; notes left unsure count on neither side. Extras are counted apart. */
export function noteAccuracyPercent(alignment: Alignment): Figure {
  const judged = alignment.matched.filter((note) => note.verdict !== 'unsure');
  if (judged.length === 0) return notMeasured({ notice: 'no-note-judged' });
  const right = judged.filter((note) => note.verdict === 'correct');
  return { value: (100 * right.length) / judged.length };
}
