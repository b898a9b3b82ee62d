import { mean, standardDeviation } from '../../base/statistics.ts';
import type { PianoProfile } from '../../listen/index.ts';
import { notMeasured } from './estimate.ts';
import { levelDbOf } from './loudness.ts';
import type { Figure } from '../types.ts';
import type { Strike, StruckKey } from './strikes.ts';

/** An inner note of a chord against the outer ones of the same chord, dB (negative: softer). */
interface InnerNote {
  readonly step: number;
  readonly key: StruckKey;
  readonly againstOuterDb: number;
}

/** Strikes of one hand → the inner notes of its chords of three keys or more, each against the mean of the outer two. */
function innerNotes(strikes: readonly Strike[], piano: PianoProfile | null): readonly InnerNote[] {
  return strikes.flatMap(({ step, notes: keys }): InnerNote[] => {
    if (keys.length < 3) return [];
    const outerDb = (levelDbOf(keys[0]!, piano) + levelDbOf(keys.at(-1)!, piano)) / 2;
    return keys.slice(1, -1).map((key) => ({ step, key, againstOuterDb: levelDbOf(key, piano) - outerDb }));
  });
}

/**
 * Inner balance: mean level of the inner notes of chords − mean of the outer two of the same chord, dB; these lie about as
 * high on the average, so that no line over pitch is needed; each key's own level is taken out where it is known. ± from the scatter over the chords of all hands.
 */
export function innerBalanceDb(
  byHand: readonly { readonly strikes: readonly Strike[] }[],
  piano: PianoProfile | null,
): Figure {
  const values = byHand
    .flatMap(({ strikes }) => innerNotes(strikes, piano))
    .map((note) => note.againstOuterDb);
  const sd = standardDeviation(values);
  if (sd === undefined) return notMeasured({ notice: 'needs-chords-of-three' });
  return { value: mean(values)!, plusMinus: sd / Math.sqrt(values.length) };
}
