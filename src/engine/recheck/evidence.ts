import { mean, median } from '../base/statistics.ts';
import type { Candidate, Heard } from '../listen/index.ts';
import type { Alignment, MatchedNote } from '../match/index.ts';
import type { Evidence } from './types.ts';
import { RECHECK_BOUNDS, RECHECK_WEIGHTS } from './weights.ts';

/** An expected note that match left in doubt, with what the blind ear has to say about it. */
export interface Doubt {
  /** index into Alignment.matched */
  readonly place: number;
  readonly blind: 'missed' | 'unsure';
  /** the strike that it may have been; null where the ear heard nothing of it */
  readonly candidate: Candidate | null;
  readonly evidence: Evidence;
}

/**
 * The notes left missed or unsure of steps in which another note was heard right: their moment is known, and the ear's faint
 * candidates there are weighed. A candidate that already answers another expected note, or is an extra, speaks for that one.
 */
export function doubtsIn(heard: Heard, alignment: Alignment): readonly Doubt[] {
  const candidates = heard.candidates ?? [];
  if (candidates.length === 0) return [];
  const { matched, extras } = alignment;
  const spoken = new Set([
    ...matched.flatMap((note) => ('played' in note ? [nameOf(heard.notes[note.played]!)] : [])),
    ...extras.map(({ played }) => nameOf(heard.notes[played]!)),
  ]);
  const free = candidates.filter((candidate) => !spoken.has(nameOf(candidate)));
  const believed = new Map(candidates.map((candidate) => [nameOf(candidate), candidate]));
  return matched.flatMap((note, place) => {
    const { verdict, expected } = note;
    if (verdict !== 'missed' && (verdict !== 'unsure' || note.played !== undefined)) return [];
    const dueSec = mean(
      matched
        .filter((other) => other.step === note.step)
        .flatMap((other) => (other.verdict === 'correct' ? [heard.notes[other.played]!.timeSec] : [])),
    );
    if (dueSec === undefined) return [];
    const midi = expected.midi - alignment.semitoneShift;
    const candidate = free
      .filter((one) => one.midi === midi && Math.abs(one.timeSec - dueSec) <= RECHECK_BOUNDS.nearSec)
      .reduce<Candidate | null>(
        (best, one) => (best && best.probability >= one.probability ? best : one),
        null,
      );
    const sameHand = heardOfHand(matched, note, heard, believed);
    return [{ place, blind: verdict, candidate, evidence: evidenceFor(candidate, sameHand) }];
  });
}

/** Evidence → the probability that the key was struck. */
export function chanceOf(evidence: Evidence): number {
  const logOdds =
    RECHECK_WEIGHTS.belief * evidence.belief +
    RECHECK_WEIGHTS.softness * evidence.softness +
    RECHECK_WEIGHTS.bias;
  return 1 / (1 + Math.exp(-logOdds));
}

function evidenceFor(candidate: Candidate | null, sameHand: readonly Candidate[]): Evidence {
  const { leastBelief, mostBelief, softest, loudest } = RECHECK_BOUNDS;
  const belief = Math.min(Math.max(candidate?.probability ?? leastBelief, leastBelief), mostBelief);
  const enough = sameHand.length >= RECHECK_BOUNDS.leastHeard;
  const usualDb = median(sameHand.map(({ loudnessDb }) => loudnessDb)) ?? 0;
  const softness =
    candidate === null
      ? softest
      : enough
        ? (candidate.loudnessDb - usualDb) / 6
        : RECHECK_BOUNDS.usualSoftness;
  return {
    belief: Math.log(belief / (1 - belief)),
    softness: Math.min(Math.max(softness, softest), loudest),
  };
}

/** What the ear believed of the notes that this hand was heard to play right. */
function heardOfHand(
  matched: readonly MatchedNote[],
  { expected }: MatchedNote,
  heard: Heard,
  believed: ReadonlyMap<string, Candidate>,
): readonly Candidate[] {
  return matched.flatMap((other) => {
    if (other.verdict !== 'correct' || other.expected.hand !== expected.hand) return [];
    const candidate = believed.get(nameOf(heard.notes[other.played]!));
    return candidate === undefined ? [] : [candidate];
  });
}

/** A key strikes once at a time: key and moment name a strike, in notes and candidates alike. */
function nameOf({ midi, timeSec }: { readonly midi: number; readonly timeSec: number }): string {
  return `${midi}@${timeSec}`;
}
