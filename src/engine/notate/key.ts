import { Note } from 'tonal';
import { mean } from '../base/statistics.ts';
import { ALL_KEYS, keyFacts } from '../exercise/index.ts';

/** How well each degree fits a key, from its tonic up by semitones: probe tones (Krumhansl & Kessler 1982, from memory). */
const MAJOR = [6.35, 2.23, 3.48, 2.33, 4.38, 4.09, 2.52, 5.19, 2.39, 3.66, 2.29, 2.88];
const MINOR = [6.33, 2.68, 3.52, 5.38, 2.6, 3.53, 2.54, 4.75, 3.98, 2.69, 3.34, 3.17];

/** Keys struck, each with its weight (how long it is) → the key that it is most likely in: the highest correlation of their profiles. */
export function likelyKey(notes: readonly { readonly midi: number; readonly weight: number }[]): string {
  const heard = new Array<number>(12).fill(0);
  for (const { midi, weight } of notes) heard[midi % 12]! += weight;
  let [best, most] = ['C major', -Infinity];
  for (const key of ALL_KEYS) {
    const { tonic, mode } = keyFacts(key);
    const profile = mode === 'major' ? MAJOR : MINOR;
    const turned = heard.map((_, degree) => heard[(degree + Note.chroma(tonic)!) % 12]!);
    const fits = correlation(turned, profile);
    if (fits > most) [best, most] = [key, fits];
  }
  return best;
}

function correlation(a: readonly number[], b: readonly number[]): number {
  const [middleA, middleB] = [mean(a)!, mean(b)!];
  const sum = (of: (at: number) => number): number => a.reduce((total, _, at) => total + of(at), 0);
  const apart = sum((at) => (a[at]! - middleA) ** 2) * sum((at) => (b[at]! - middleB) ** 2);
  return apart === 0 ? 0 : sum((at) => (a[at]! - middleA) * (b[at]! - middleB)) / Math.sqrt(apart);
}
