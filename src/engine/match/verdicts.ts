import type { Filled } from './leftovers.ts';
import type { ExpectedPlace, IndexedNote } from './struck.ts';
import type { MatchedNote } from './types.ts';
import { BOUNDS } from './weights.ts';

/** One expected note → its verdict. */
export function verdictOn(
  place: ExpectedPlace,
  filled: readonly Filled[],
  struck: readonly IndexedNote[],
): MatchedNote {
  const { note: expected, step } = place;
  const answer = filled.find((entry) => entry.place === place);
  if (answer === undefined) {
    const reason = `${expected.name} may be covered by the same note an octave below it, which was struck with it`;
    return isCovered(place, filled, struck)
      ? { step, expected, verdict: 'unsure', reason }
      : { step, expected, verdict: 'missed' };
  }
  const { played, midi, confidence } = struck[answer.struck]!;
  if (midi === expected.midi) return { step, expected, verdict: 'correct', played };
  if (confidence >= BOUNDS.wrongConfidence) return { step, expected, verdict: 'wrong', played };
  const reason = `something sounded where ${expected.name} belongs, too faint to say which key`;
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
