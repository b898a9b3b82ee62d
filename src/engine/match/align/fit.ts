import { BOUNDS } from '../costs/index.ts';
import type { MatchedNote } from '../types.ts';
import type { IndexedNote } from './notes.ts';
import type { Filled } from './substitutes.ts';
import type { Surroundings } from './surroundings.ts';
import type { BeatSec } from './tempo.ts';
import { looksLikeGhost } from './verdicts.ts';

/**
 * How well the exercise explains what was heard: 2 · right / (expected + played), 0..1. Played are all notes but those of other
 * runs, those played again, and findings too weak to be notes: what is not reported as an extra still speaks against the
 * exercise. Scattered chords count as not right.
 */
export function fitOf(
  matched: readonly MatchedNote[],
  filled: readonly Filled[],
  struck: readonly IndexedNote[],
  around: Surroundings,
  scattered: number,
): number {
  const right = matched.filter((note) => note.verdict === 'correct').length;
  const explained = new Set([...filled, ...around.again].map((note) => note.struck));
  const unexplained = struck.filter(
    (note, index) =>
      !explained.has(index) &&
      note.confidence >= BOUNDS.extraConfidence &&
      (note.confidence >= BOUNDS.ghostConfidence || !looksLikeGhost(note, struck, filled)) &&
      !around.others.some(({ startSec, endSec }) => note.timeSec >= startSec && note.timeSec <= endSec),
  ).length;
  return Math.max(0, 2 * right - scattered) / (matched.length + filled.length + unexplained);
}

/** Notes of chords that come so late after the first of their hand that no chord was struck, as in a broken triad. */
export function scatteredNotes(
  filled: readonly Filled[],
  struck: readonly IndexedNote[],
  beatSec: BeatSec,
  beatsAStep: number,
): number {
  return filled.filter(({ place, struck: index }) => {
    const chord = filled.filter(
      (other) => other.place.step === place.step && other.place.note.hand === place.note.hand,
    );
    const firstSec = Math.min(...chord.map((other) => struck[other.struck]!.timeSec));
    const stepSec = beatSec(firstSec) * beatsAStep;
    return struck[index]!.timeSec - firstSec > BOUNDS.scatteredShareOfStep * stepSec;
  }).length;
}
