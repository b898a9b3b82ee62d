import { mean, median } from '../../base/statistics.ts';
import type { ChordStrike, Figure } from '../types.ts';
import { notMeasured } from './estimate.ts';
import { DRAWN_TOGETHER, strikeVariance } from './ear-noise.ts';
import type { Strike, StruckKey } from './strikes.ts';

/** One chord of one hand and how far apart its keys fell. */
export interface ChordSpread {
  readonly step: number;
  readonly spreadMs: number;
  /** SD of the ear's error of it, ms */
  readonly noiseMs: number;
  readonly last: StruckKey;
}

/** The same as data for the report. */
export function chordStrikes(spreads: readonly ChordSpread[]): readonly ChordStrike[] {
  return spreads
    .map(({ step, spreadMs, last }) => ({
      step,
      hand: last.expected.hand,
      spreadMs,
      lastFinger: last.expected.finger,
    }))
    .sort((a, b) => a.step - b.step);
}

/**
 * Spread of a chord: last onset − first onset within one hand, ms. The ear's noise is not taken out: it draws together what is
 * struck together, and less its noise spreads of 10 to 25 ms were told half as wide (142 chords of the development piano). Order can
 * be told apart from about 20 ms (Hirsh 1959).
 */
export function chordSpreads(strikes: readonly Strike[]): readonly ChordSpread[] {
  return strikes
    .filter((strike) => strike.notes.length > 1)
    .map((strike) => {
      const inTime = [...strike.notes].sort((a, b) => a.played.timeSec - b.played.timeSec);
      const rawMs = 1000 * (inTime.at(-1)!.played.timeSec - inTime[0]!.played.timeSec);
      const onsetMs = Math.sqrt(inTime.length * strikeVariance(inTime));
      return {
        step: strike.step,
        spreadMs: rawMs,
        noiseMs: Math.SQRT2 * onsetMs,
        last: inTime.at(-1)!,
      };
    });
}

/** Share of the ear's error of an onset in company that a key has each time: 3.6 of 4.9 ms (development piano); over chords some of it goes. */
const ALIKE = 0.3;

/** Median spread of the chords, ms; ± from the listener's noise on the two onsets. */
export function chordSpreadMs(spreads: readonly ChordSpread[]): Figure {
  if (spreads.length < 2) return notMeasured({ notice: 'needs-chords-of-one-hand' });
  const noise = mean(spreads.map(({ noiseMs }) => noiseMs ** 2))!;
  const value = median(spreads.map((spread) => spread.spreadMs))!;
  const ofNoise = Math.sqrt(noise * (ALIKE + ((1 - ALIKE) * Math.PI) / 2 / spreads.length));
  return { value, plusMinus: Math.hypot(ofNoise, noise === 0 ? 0 : DRAWN_TOGETHER * value) };
}
