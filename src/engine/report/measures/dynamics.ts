import type { Hand } from '../../exercise/index.ts';
import type { Estimate } from '../types.ts';
import { lineThrough } from './line.ts';
import type { Loudness } from './loudness.ts';

/**
 * How loudness goes along the attempt, each told apart from the piano: a key is compared with itself, where it was struck louder
 * and where softer, so that neither the levels of the keys nor their slope over pitch, neither room nor finger can look like it.
 * A swell to the top and back is louder at the same keys both ways; it shows only where the keys of this piano are known.
 */
export interface Dynamics {
  /** from beginning to end (+: louder), dB */
  readonly courseDb: Estimate | null;
  /** from the ends to the turn (+: louder there), dB; null also where the keys are not known */
  readonly swellDb: Estimate | null;
  /** every so-manieth step against the others, dB: the pattern that stands out most */
  readonly accents: { readonly every: number; readonly from: number; readonly byDb: Estimate } | null;
}

/** Accents come on every second, third or fourth note, from any of them on. */
const GROUPS = [2, 3, 4] as const;
/** So many patterns are tried, of which the one that stands out most is told. */
export const PATTERNS = GROUPS.reduce<number>((sum, every) => sum + every, 0);
/** Fewer notes than this beyond the keys (or their one mean) tell nothing. */
const LEAST_FREEDOM = 5;

/** One hand's notes with their levels; `keysKnown`: that of each key is taken out already. */
export interface HandLoudness {
  readonly hand: Hand;
  readonly loudness: readonly Loudness[];
}

export function dynamicsOf(
  hands: readonly HandLoudness[],
  turn: number | undefined,
  last: number,
  keysKnown: boolean,
): Dynamics {
  const notes = hands.flatMap(({ hand, loudness }) =>
    loudness.map(({ step, key, levelDb }) => ({
      step,
      levelDb,
      key: keysKnown ? hand : `${hand} ${key.expected.midi}`,
    })),
  );
  const against = (of: (step: number) => number): Estimate | null => differenceWithin(notes, of);
  const patterns = GROUPS.flatMap((every) =>
    Array.from({ length: every }, (_, from) => {
      const byDb = against((step) => (step % every === from ? 1 : 0));
      return byDb === null || byDb.value <= 0 ? [] : [{ every, from, byDb }];
    }).flat(),
  );
  const clear = ({ value, plusMinus = 0 }: Estimate): number => value / Math.max(plusMinus, 1e-9);
  return {
    courseDb: against((step) => step / last),
    swellDb:
      keysKnown && turn !== undefined
        ? against((step) => (step <= turn ? step / turn : (last - step) / (last - turn)))
        : null,
    accents: patterns.reduce<Dynamics['accents']>(
      (a, b) => (a === null || clear(b.byDb) > clear(a.byDb) ? b : a),
      null,
    ),
  };
}

interface Note {
  readonly step: number;
  readonly levelDb: number;
  /** notes of one key are compared with each other only */
  readonly key: string;
}

/**
 * Change of level for a change of `of` by 1, dB, among notes of the same key (analysis of covariance, a mean for every key); ± from
 * the scatter about it. Null: it is the same at all notes of each key, or they are too few.
 */
export function differenceWithin(notes: readonly Note[], of: (step: number) => number): Estimate | null {
  const groups = new Map<string, Note[]>();
  for (const note of notes) groups.set(note.key, [...(groups.get(note.key) ?? []), note]);
  const points = [...groups.values()].flatMap((own) => {
    const centre = (value: (note: Note) => number): number =>
      own.reduce((sum, note) => sum + value(note), 0) / own.length;
    const [x, y] = [centre(({ step }) => of(step)), centre(({ levelDb }) => levelDb)];
    return own.map(({ step, levelDb }) => ({ x: of(step) - x, y: levelDb - y }));
  });
  const freedom = points.length - groups.size - 1;
  if (freedom < LEAST_FREEDOM) return null;
  const line = lineThrough(
    points.map(({ x }) => x),
    points.map(({ y }) => y),
  );
  if (line === undefined || points.every(({ x }) => Math.abs(x) < 1e-9)) return null;
  // The line is fitted as if there were one mean and not one for each key.
  return { value: line.slope, plusMinus: line.slopeSd * Math.sqrt((points.length - 2) / freedom) };
}
