import { ALL_KEYS } from './keys.ts';

/** Keys that have another name in the list of 24, which sound the same. */
const SAME_KEYS: Readonly<Record<string, string>> = {
  'C# major': 'Db major',
  'Gb major': 'F# major',
  'Cb major': 'B major',
  'D# minor': 'Eb minor',
  'A# minor': 'Bb minor',
  'Ab minor': 'G# minor',
};

/** A key as one of the 24: "Gb major" → "F# major". */
export function listedKey(key: string): string {
  return SAME_KEYS[key] ?? key;
}

/** The other name of the same key, where teachers use one: F♯ and G♭ major; null: none. */
export function otherNameOf(key: string): string | null {
  return SAME_KEYS[key] ?? Object.keys(SAME_KEYS).find((other) => SAME_KEYS[other] === key) ?? null;
}

/** The next key of the same mode round the circle of fifths, as one of the 24. */
export function nextKey(key: string): string {
  const mode = key.endsWith('major') ? 'major' : 'minor';
  const circle = ALL_KEYS.filter((one) => one.endsWith(mode));
  return circle[(circle.indexOf(listedKey(key)) + 1) % circle.length]!;
}
