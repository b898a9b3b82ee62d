import { median } from '../../base/statistics.ts';
import { BOUNDS, GHOST_SEMITONES } from '../costs/index.ts';
import type { ExtraKind, MatchedNote } from '../types.ts';
import type { ExpectedPlace, IndexedNote } from './notes.ts';
import type { Filled } from './substitutes.ts';

/** One expected note → its verdict. */
export function verdictOn(
  place: ExpectedPlace,
  filled: readonly Filled[],
  struck: readonly IndexedNote[],
): MatchedNote {
  const { note: expected, step } = place;
  const answer = filled.find((entry) => entry.place === place);
  if (answer === undefined) {
    return isCovered(place, filled, struck)
      ? { step, expected, verdict: 'unsure', reason: { notice: 'may-be-covered', name: expected.name } }
      : { step, expected, verdict: 'missed' };
  }
  const { played, midi, confidence } = struck[answer.struck]!;
  if (midi === expected.midi) return { step, expected, verdict: 'correct', played };
  if (confidence >= BOUNDS.wrongConfidence) return { step, expected, verdict: 'wrong', played };
  const reason = { notice: 'too-faint-to-name', name: expected.name } as const;
  return { step, expected, verdict: 'unsure', reason, played };
}

/**
 * A note whose own octave below was struck in the same step by the other hand: all its partials are among that note's, and a
 * listener who does not know the exercise often cannot tell. It is left unsure, not called missed.
 */
function isCovered(place: ExpectedPlace, filled: readonly Filled[], struck: readonly IndexedNote[]): boolean {
  return filled.some(({ place: other, struck: index }) => {
    const below = place.note.midi - struck[index]!.midi;
    return other.step === place.step && other.note.hand !== place.note.hand && (below === 12 || below === 24);
  });
}

/**
 * What an unanswered note was, and the step during which it sounded; null: not to be reported. Not reported are findings too
 * weak to call somebody's mistake, those that other notes explain, keys out of the hand's reach, and keys before the first note of the run or after its last
 * that are neither caught with it nor its repetition: they are not part of the attempt.
 */
export function extraKind(
  index: number,
  struck: readonly IndexedNote[],
  filled: readonly Filled[],
): { readonly kind: ExtraKind; readonly step: number } | null {
  const note = struck[index]!;
  if (note.confidence < BOUNDS.extraConfidence || isExplained(note, struck, filled)) return null;
  if (note.levelDb < usualLevelDb(struck, filled) - BOUNDS.faintDb) return null;
  const caughtWith = filled
    .filter((entry) => isBeside(note, struck[entry.struck]!))
    .sort((a, b) => apartFrom(note, struck[a.struck]!) - apartFrom(note, struck[b.struck]!))[0];
  if (caughtWith !== undefined) return { kind: 'slip', step: caughtWith.place.step };
  const before = lastBefore(note, struck, filled);
  if (before === undefined) return null;
  const step = before.place.step;
  const again = filled.some((other) => other.place.step === step && struck[other.struck]!.midi === note.midi);
  if (again) return { kind: 'repeat', step };
  const isLast = filled.every((other) => struck[other.struck]!.timeSec <= note.timeSec);
  return isLast || outOfReach(note, step, struck, filled) ? null : { kind: 'other', step };
}

/** Further from every key struck about its step than a hand stretches. */
function outOfReach(
  note: IndexedNote,
  step: number,
  struck: readonly IndexedNote[],
  filled: readonly Filled[],
): boolean {
  return filled
    .filter(({ place }) => Math.abs(place.step - step) <= 2)
    .every((other) => Math.abs(struck[other.struck]!.midi - note.midi) > BOUNDS.reachSemitones);
}

function apartFrom(note: IndexedNote, other: IndexedNote): number {
  return Math.abs(note.timeSec - other.timeSec);
}

function lastBefore(
  note: IndexedNote,
  struck: readonly IndexedNote[],
  filled: readonly Filled[],
): Filled | undefined {
  let latest: Filled | undefined;
  for (const other of filled) {
    const timeSec = struck[other.struck]!.timeSec;
    if (timeSec <= note.timeSec && (latest === undefined || timeSec >= struck[latest.struck]!.timeSec))
      latest = other;
  }
  return latest;
}

/** A neighbouring key caught with a right one. */
function isBeside(note: IndexedNote, right: IndexedNote): boolean {
  const apart = Math.abs(right.midi - note.midi);
  return (
    apart >= 1 && apart <= BOUNDS.slipSemitones && Math.abs(right.timeSec - note.timeSec) <= BOUNDS.slipSec
  );
}

/** Whether the notes that answer the exercise explain a finding, so that it is nobody's: a ghost, or a tone that rings on. */
export function isExplained(
  note: IndexedNote,
  struck: readonly IndexedNote[],
  filled: readonly Filled[],
): boolean {
  return looksLikeGhost(note, struck, filled) || ringsOn(note, struck);
}

/**
 * A finding in the instant of a chord and on a partial of one of its notes, or an octave below it: a listener's ghost rather
 * than a key. However sure the listener is, octaves struck by mistake with a right note are rarer than ghosts of that kind.
 * Not so a key beside a right one of which the listener is sure: that is how slips lie, and a slip is not explained away.
 */
export function looksLikeGhost(
  note: IndexedNote,
  struck: readonly IndexedNote[],
  filled: readonly Filled[],
): boolean {
  const sure = note.confidence >= BOUNDS.ghostConfidence;
  if (sure && filled.some((entry) => isBeside(note, struck[entry.struck]!))) return false;
  return filled.some(({ place, struck: other }) => {
    if (!GHOST_SEMITONES.includes(note.midi - struck[other]!.midi)) return false;
    const chordSec = filled
      .filter((entry) => entry.place.step === place.step)
      .map((entry) => struck[entry.struck]!.timeSec);
    return (
      note.timeSec >= Math.min(...chordSec) - BOUNDS.ghostSec &&
      note.timeSec <= Math.max(...chordSec) + BOUNDS.ghostSec
    );
  });
}

/** The same key again, soon and much softer. */
function ringsOn(note: IndexedNote, struck: readonly IndexedNote[]): boolean {
  return struck.some(
    (other) =>
      other.midi === note.midi &&
      other.timeSec < note.timeSec &&
      note.timeSec - other.timeSec <= BOUNDS.ringingSec &&
      other.levelDb - note.levelDb >= BOUNDS.ringingSofterDb,
  );
}

function usualLevelDb(struck: readonly IndexedNote[], filled: readonly Filled[]): number {
  return median(filled.map((entry) => struck[entry.struck]!.levelDb)) ?? -Infinity;
}
