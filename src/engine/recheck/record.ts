import type { Hand } from '../exercise/index.ts';
import type { Answer } from './asker.ts';
import type { Recheck } from './types.ts';

/** A question, its answer and what was made of it, for the result. `midi`: the key itself. */
export function recordOf(
  step: number,
  midi: number,
  hand: Hand,
  asked: Recheck['asked'],
  blind: Recheck['blind'],
  { candidate, logOdds, timeSec, spreadSec }: Answer,
  decision: Recheck['decision'],
): Recheck {
  const blindProbability = candidate?.probability ?? 0;
  return { step, midi, hand, asked, blind, blindProbability, logOdds, timeSec, spreadSec, decision };
}
