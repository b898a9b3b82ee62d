import { probabilityOf } from '../base/odds.ts';
import { densityOf } from '../base/statistics.ts';
import type { Alignment, MatchedNote } from '../match/index.ts';
import type { Asker } from './asker.ts';
import { everyMoment } from './moments.ts';
import { recordOf } from './record.ts';
import type { Recheck } from './types.ts';

/**
 * The highest log odds of the closer look between the notes beside a step: where its note was struck and the blind ear, made to, said
 * nothing of it (240 notes, the least 2.1), and where it was left out (179). Development piano, lines of one hand at 1.8 to 8 notes a
 * second, rooms and noise of homes, one in seven with the pedal.
 */
const STRUCK = { mean: 7.2, sd: 2.5 } as const;
const LEFT_OUT = { mean: -4.5, sd: 2 } as const;
/** Of notes not heard so many were left out for each that was struck: a student leaves out one in a hundred, the ear passes over three in ten thousand. */
const OFTENER = 30;

/** How likely it is that a note was left out, 0..1. */
function sureOfMissing(logOdds: number): number {
  const leftOut = OFTENER * densityOf(Math.max(logOdds, LEFT_OUT.mean), LEFT_OUT);
  return leftOut / (leftOut + densityOf(logOdds, STRUCK));
}

/**
 * Steps shorter than this, s, the blind ear may pass over whole. Two development pianos, one hand and both, shortest interval beside the step:
 * under 70 ms 38 of 867 steps, to 80 ms 22 of 879, to 100 ms 11 of 1261, above that none of 1827 — where a player leaves out
 * one or two in a hundred. There a note counts as missing by the closer look alone, and where that cannot look, as likely as not.
 */
const PASSED_OVER_SEC = 0.13;
const AS_LIKELY_AS_NOT = 0.5;

/** What was made of the steps of which nothing was heard: the matched notes, and what was asked. */
export interface Unheard {
  readonly matched: readonly MatchedNote[];
  readonly rechecks: readonly Recheck[];
}

/** Whether the first listening heard nothing of a step: no key, right or wrong. */
export function isUnheard({ matched }: Alignment, step: number): boolean {
  return matched.every(
    (note) => note.step !== step || (note.verdict === 'missed' && note.sure === undefined),
  );
}

/**
 * Steps of which the first listening heard nothing, looked at all the way from the note before to the note after: that a note was not
 * heard is no evidence that it was not struck. It stays missing, as sure as nothing there looks like it. More steps than one at an
 * end were not played, or not recorded, and are left alone.
 */
export function lookAtUnheard(alignment: Alignment, asker: Asker): Unheard {
  const rechecks: Recheck[] = [];
  const isFast = (asker.usualStepSec ?? Infinity) < PASSED_OVER_SEC;
  const matched = alignment.matched.map((note, place): MatchedNote => {
    if (note.verdict !== 'missed' || !isUnheard(alignment, note.step)) return note;
    const answers = everyMoment(asker.steps, note.step).map((timeSec) => asker.askAt(place, timeSec));
    const [first, ...others] = answers;
    if (first === undefined) return isFast ? { ...note, sure: AS_LIKELY_AS_NOT } : note;
    const likest = others.reduce((a, b) => (b.logOdds > a.logOdds ? b : a), first);
    const sure = isFast ? probabilityOf(-likest.logOdds) : sureOfMissing(likest.logOdds);
    const { midi, hand } = note.expected;
    const decision = sure > 0.5 ? 'not-struck' : 'unsure';
    rechecks.push(recordOf(note.step, midi, hand, 'written', 'missed', likest, decision));
    return { ...note, sure };
  });
  return { matched, rechecks };
}
