import type { ExpectedNote } from '../exercise/index.ts';
import type { Heard } from '../listen/index.ts';
import type { Alignment, MatchedNote } from './types.ts';
import { BOUNDS } from './costs/index.ts';

/**
 * Alignment → the same, with common tones that were perhaps held over left unsure instead of missed: a key that the same
 * finger struck in the step before (or held over from there), whose tone lasts past the middle of the step. Holding it is good
 * playing, leaving it out is not, and by ear alone they are alike. The hand's other common tones speak too: who
 * strikes none of them again holds them, whatever end of the tone was heard, and where none was heard, who strikes most of them
 * again has missed this one.
 *
 * To be applied last, when it is settled which keys were not struck: this asks only what that means.
 */
export function heldOver(heard: Heard, alignment: Alignment): Alignment {
  const settled: MatchedNote[] = [];
  for (const note of alignment.matched) {
    const held = isAbsent(note) && isHeldOver(note, settled, heard, alignment);
    settled.push(held ? unsure(note) : note);
  }
  return { ...alignment, matched: settled };
}

function unsure({ step, expected }: MatchedNote): MatchedNote {
  const reason = { notice: 'may-be-held-over', name: expected.name } as const;
  return { step, expected, verdict: 'unsure', reason, heldOver: true };
}

function isHeldOver(
  note: MatchedNote,
  before: readonly MatchedNote[],
  heard: Heard,
  { matched }: Alignment,
): boolean {
  const [onsetSec, beforeSec, afterSec] = [0, -1, 1].map((by) => onsetOf(note.step + by, matched, heard));
  const struck = lastStruck(note, before);
  if (struck === undefined || onsetSec === undefined || beforeSec === undefined) return false;
  const others = matched.filter(
    (other) =>
      other !== note &&
      other.expected.hand === note.expected.hand &&
      sameFingerBefore(other, matched) !== undefined,
  );
  const absent = others.filter(isAbsent).length;
  const struckAgain = others.filter(({ verdict }) => verdict === 'correct').length;
  const { releaseSec } = heard.notes[struck]!;
  if (releaseSec === null || absent > struckAgain) return absent >= struckAgain;
  const stepSec = (afterSec ?? 2 * onsetSec - beforeSec) - onsetSec;
  return releaseSec >= onsetSec + BOUNDS.heldShareOfStep * stepSec;
}

/** When the first key of a step was struck, s. */
function onsetOf(step: number, matched: readonly MatchedNote[], heard: Heard): number | undefined {
  const onsets = matched.flatMap((note) =>
    note.step === step && 'played' in note ? [heard.notes[note.played!]!.timeSec] : [],
  );
  return onsets.length === 0 ? undefined : Math.min(...onsets);
}

/** The stroke of the same key by the same finger in the step before, or before that if it was held over there. */
function lastStruck(note: MatchedNote, before: readonly MatchedNote[]): number | undefined {
  const same = sameFingerBefore(note, before);
  if (same === undefined) return undefined;
  if (same.verdict === 'correct') return same.played;
  return same.verdict === 'unsure' && same.heldOver === true ? lastStruck(same, before) : undefined;
}

/** The place in the chord before where the same finger has the same key, so that it can stay down. */
function sameFingerBefore(note: MatchedNote, matched: readonly MatchedNote[]): MatchedNote | undefined {
  return matched.find((other) => other.step === note.step - 1 && isSameFinger(other.expected, note.expected));
}

function isSameFinger(a: ExpectedNote, b: ExpectedNote): boolean {
  return a.midi === b.midi && a.hand === b.hand && a.finger === b.finger;
}

function isAbsent(note: MatchedNote): boolean {
  return note.verdict === 'missed' || (note.verdict === 'unsure' && note.played === undefined);
}
