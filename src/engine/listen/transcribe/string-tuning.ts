import { mean, median } from '../../base/statistics.ts';
import { A4_HZ } from '../../base/units.ts';
import type { Tuning } from '../types.ts';
import type { Settled } from './settle.ts';
import { stretchCents } from './stretch.ts';

/** a key strays when it lies further than this from the rest */
const STRAY_CENTS = 8;
/** and this far from the rest it does not speak for the piano */
const OUTLIER_CENTS = 12;
/** the middle of the keyboard, where strings are read best, speaks for the piano */
const MIDDLE = { from: 40, to: 88 } as const;
/** so many keys of it are enough */
const ENOUGH_KEYS = 3;

/**
 * Struck strings → the piano's tuning: the mean over keys of each key's median, outliers apart. Pitch repeats every 100 cents, so an offset
 * of −80 reads as +20 a semitone lower: which it is can only be told by the key of the piece, and the matcher does.
 */
export function measureTuning(settled: readonly Settled[]): Tuning {
  const byKey = new Map<number, number[]>();
  for (const { strike } of settled)
    if (strike.pitchRead) byKey.set(strike.midi, [...(byKey.get(strike.midi) ?? []), offsetCents(strike)]);
  const keys = [...byKey].map(([midi, cents]) => ({ midi, cents: median(cents)! }));
  if (keys.length === 0) return { cents: 0, a4Hz: A4_HZ, sdCents: 50, strays: [] };
  const middle = keys.filter(({ midi }) => midi >= MIDDLE.from && midi <= MIDDLE.to);
  const speaking = (middle.length >= ENOUGH_KEYS ? middle : keys).map((key) => key.cents);
  const centre = median(speaking)!;
  const cents = mean(speaking.filter((own) => Math.abs(own - centre) <= OUTLIER_CENTS))!;
  const spread = median(keys.map((key) => Math.abs(key.cents - cents)))!;
  return {
    cents,
    a4Hz: A4_HZ * 2 ** (cents / 1200),
    // 1.48 makes a standard deviation of a median absolute deviation (normal distribution)
    sdCents: Math.max(0.5, (1.48 * spread) / Math.sqrt(keys.length)),
    strays: keys
      .map(({ midi, cents: own }) => ({ midi, cents: own - cents }))
      .filter(({ cents: own }) => Math.abs(own) > STRAY_CENTS)
      .sort((a, b) => a.midi - b.midi),
  };
}

/** A string's distance from equal temperament at A4 = 440 Hz, its usual stretch taken out, cents. */
export function offsetCents({ pitch, midi }: { readonly pitch: number; readonly midi: number }): number {
  return 100 * (pitch - midi) - stretchCents(midi);
}
