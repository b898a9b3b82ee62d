import type { Heard, PlayedNote } from '../listen/index.ts';
import type { Alignment, MatchedNote } from '../match/index.ts';
import type { Notice } from '../notices/index.ts';
import type { Answer, Asker } from './asker.ts';
import { MISTAKEN_FOR, RECHECK_BOUNDS } from './bounds.ts';
import type { HeardExtra } from './extras.ts';
import { noteOf } from './found.ts';
import { recordOf } from './record.ts';
import type { Recheck } from './types.ts';

/** What became of one written note. */
export interface Settled {
  readonly verdict: MatchedNote['verdict'];
  /** the note that stands for it now; null: none */
  readonly note: PlayedNote | null;
  /** the note that stood for it before; null: none, or it stands for something else now */
  readonly before: PlayedNote | null;
  /** null: of one that is sure */
  readonly reason: Notice | null;
  /** a note that had been taken for the mistake here, and is an extra since the written one was struck */
  readonly freed: HeardExtra | null;
}

/** One written note, listened for again. What is asked is added to `rechecks`. */
export function settle(
  asker: Asker,
  heard: Heard,
  { semitoneShift }: Alignment,
  matched: MatchedNote,
  place: number,
  rechecks: Recheck[],
): Settled {
  const { step, expected, verdict } = matched;
  const { hand } = expected;
  const midi = expected.midi - semitoneShift;
  const before = 'played' in matched && matched.played !== undefined ? heard.notes[matched.played]! : null;
  const asBefore: Settled = {
    verdict,
    note: before,
    before,
    reason: verdict === 'unsure' ? matched.reason : null,
    freed: null,
  };
  const answer = asker.askWritten(place);
  if (answer === null) return asBefore;
  const reported = verdict === 'correct';
  const decision = decide(answer.logOdds, reported);
  rechecks.push(recordOf(step, midi + semitoneShift, hand, 'written', verdict, answer, decision));

  const reason = asBefore.reason ?? ({ notice: 'too-faint', name: expected.name } as const);
  if (reported && before !== null) {
    if (decision === 'not-struck') return { ...asBefore, verdict: 'missed', note: null };
    const note = moved(before, answer);
    return decision === 'struck' ? { ...asBefore, note } : { ...asBefore, verdict: 'unsure', note, reason };
  }
  if (decision !== 'not-struck' && !asker.hands.includes(hand)) return asBefore;
  if (decision === 'struck') {
    const freed = before === null ? null : { note: before, kind: kindBeside(asker, step, before), step };
    return { ...asBefore, verdict: 'correct', note: noteOf(heard, midi, answer), before: null, freed };
  }
  // Something was struck in its place: that stands.
  if (before !== null) return asBefore;
  if (decision === 'unsure') return { ...asBefore, verdict: 'unsure', reason };
  const other = inItsPlace(asker, heard, step, midi, hand);
  if (other === null) return { ...asBefore, verdict: 'missed' };
  rechecks.push(
    recordOf(step, other.midi + semitoneShift, hand, 'in-its-place', 'not-heard', other.answer, 'struck'),
  );
  return { ...asBefore, verdict: 'wrong', note: noteOf(heard, other.midi, other.answer) };
}

/** A key that was struck in place of a note that was not. */
function inItsPlace(
  asker: Asker,
  heard: Heard,
  step: number,
  midi: number,
  hand: 'left' | 'right',
): { readonly midi: number; readonly answer: Answer } | null {
  const { written, timeSec } = asker.steps[step]!;
  const near = heard.notes.filter((one) => Math.abs(one.timeSec - timeSec!) < RECHECK_BOUNDS.nearSec);
  for (const semitones of MISTAKEN_FOR) {
    const other = midi + semitones;
    if (written.includes(other) || near.some((one) => one.midi === other)) continue;
    const answer = asker.askUnwritten(step, other, hand);
    if (answer !== null && answer.logOdds > RECHECK_BOUNDS.inItsPlace) return { midi: other, answer };
  }
  return null;
}

function kindBeside(asker: Asker, step: number, { midi }: PlayedNote): 'slip' | 'other' {
  return asker.steps[step]!.written.some((key) => Math.abs(key - midi) <= RECHECK_BOUNDS.slipSemitones)
    ? 'slip'
    : 'other';
}

function decide(logOdds: number, reported: boolean): Recheck['decision'] {
  const { struck, notStruck, doubtful, overruled } = RECHECK_BOUNDS;
  if (logOdds > (reported ? doubtful : struck)) return 'struck';
  return logOdds < (reported ? overruled : notStruck) ? 'not-struck' : 'unsure';
}

/** The same note at the moment that the closer look gives it, if that is not far away. */
function moved(note: PlayedNote, { timeSec }: Answer): PlayedNote {
  return Math.abs(timeSec - note.timeSec) > RECHECK_BOUNDS.mostMovedSec ? note : { ...note, timeSec };
}
