/** A note as far as matching is concerned. */
export interface Timed {
  readonly timeSec: number;
  readonly midi: number;
}

export interface NotePair {
  /** indices into heard and truth */
  readonly heard: number;
  readonly truth: number;
  readonly errorMs: number;
}

/**
 * One-to-one maximum matching of heard notes with true ones: pitch exact, onset within ±`windowMs` (the criterion of
 * MIREX and mir_eval, there 50 ms). With one window for all, walking each key's notes in order of time and taking the
 * first that fits is a maximum matching.
 */
export function matchToTruth(
  heard: readonly Timed[],
  truth: readonly Timed[],
  windowMs: number,
): readonly NotePair[] {
  const pairs: NotePair[] = [];
  const order = (notes: readonly Timed[], midi: number): number[] =>
    notes
      .map((_, index) => index)
      .filter((index) => notes[index]!.midi === midi)
      .sort((a, b) => notes[a]!.timeSec - notes[b]!.timeSec);
  for (const midi of new Set(truth.map((note) => note.midi))) {
    const free = order(heard, midi);
    for (const wanted of order(truth, midi)) {
      const at = free.findIndex(
        (index) => Math.abs(heard[index]!.timeSec - truth[wanted]!.timeSec) * 1000 <= windowMs,
      );
      if (at < 0) continue;
      const [index] = free.splice(at, 1);
      pairs.push({
        heard: index!,
        truth: wanted,
        errorMs: (heard[index!]!.timeSec - truth[wanted]!.timeSec) * 1000,
      });
    }
  }
  return pairs;
}

/** Counts of one or many attempts. */
export interface NoteCounts {
  readonly matched: number;
  readonly heard: number;
  readonly truth: number;
}

export function addCounts(counts: readonly NoteCounts[]): NoteCounts {
  const sum = (of: (counts: NoteCounts) => number): number => counts.reduce((all, one) => all + of(one), 0);
  return { matched: sum((c) => c.matched), heard: sum((c) => c.heard), truth: sum((c) => c.truth) };
}

export const recall = ({ matched, truth }: NoteCounts): number => matched / Math.max(truth, 1);
export const precision = ({ matched, heard }: NoteCounts): number => matched / Math.max(heard, 1);
export const fMeasure = ({ matched, heard, truth }: NoteCounts): number =>
  (2 * matched) / Math.max(heard + truth, 1);

/**
 * Heard notes moved by the one semitone (−1, 0, +1) that answers the truth best. A piano 50 cents flat or more sounds just
 * like one that is a little sharp and played a semitone lower; only the exercise tells which. Reported beside the plain
 * score, never in its place.
 */
export function bestSemitone(
  heard: readonly Timed[],
  truth: readonly Timed[],
): { readonly semitones: number; readonly notes: readonly Timed[] } {
  const tries = [0, 1, -1].map((semitones) => ({
    semitones,
    notes: heard.map(({ timeSec, midi }) => ({ timeSec, midi: midi + semitones })),
  }));
  return tries.reduce((best, other) =>
    matchToTruth(other.notes, truth, 50).length > matchToTruth(best.notes, truth, 50).length ? other : best,
  );
}
