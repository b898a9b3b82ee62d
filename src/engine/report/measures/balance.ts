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

/**
 * The level of a soft note holds some of its chord's: 10^(−13/10) of the power of the outer notes, ± 10^(−15/10) (five attempts of
 * weak inner notes, development piano: those 13 to 20 dB softer were heard 8 to 13 dB so). It is taken out, down to a quarter of
 * what was heard at most.
 */
const LEAK = 0.05;
const LEAK_SD = 0.03;
const LEAST_SHARE = 0.25;
/** the ear's error that one piano has alike in all chords, dB (123 attempts there) */
const ALIKE_DB = 0.5;

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
 * high on the average, so that no line over pitch is needed; each key's own level is taken out where it is known,
 * and what of the outer notes is in the inner one's level. ± from the scatter over the chords of all hands and from that share.
 */
export function innerBalanceDb(
  byHand: readonly { readonly strikes: readonly Strike[] }[],
  piano: PianoProfile | null,
): Figure {
  const inner = byHand.flatMap(({ strikes }) => innerNotes(strikes, piano));
  const values = inner.map((note) => note.againstOuterDb);
  const byEar = inner.some(({ key }) => key.levelSdDb > 0);
  const own = values.map((db) => withoutLeak(db, byEar ? LEAK : 0));
  const sd = standardDeviation(own);
  if (sd === undefined) return notMeasured({ notice: 'needs-chords-of-three' });
  const chance = sd / Math.sqrt(own.length);
  if (!byEar) return { value: mean(own)!, plusMinus: chance };
  const most = mean(values.map((db) => withoutLeak(db, LEAK - LEAK_SD)))!;
  const least = mean(values.map((db) => withoutLeak(db, LEAK + LEAK_SD)))!;
  return { value: mean(own)!, plusMinus: Math.hypot(chance, (most - least) / 2, ALIKE_DB) };
}

/** A level against the outer notes, dB, less what of them is in it. */
function withoutLeak(againstOuterDb: number, leak: number): number {
  const heard = 10 ** (againstOuterDb / 10);
  return 10 * Math.log10(Math.max(heard - leak, LEAST_SHARE * heard));
}
