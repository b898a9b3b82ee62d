import { ALL_KEYS } from '../../engine/index.ts';
import { nameParts } from '../names/index.ts';

/** Names of keys beside the 24 of the circle: the same keys of the piano, spelt the other way. Thirty in all. */
const OTHER_NAMES = ['Gb major', 'Cb major', 'C# major', 'D# minor', 'A# minor', 'Ab minor'];

const NATURAL: Readonly<Record<string, number>> = { C: 0, D: 2, E: 4, F: 5, G: 7, A: 9, B: 11 };

/** "F# minor" and "Gb minor" → one and the same, whatever it is. */
function soundOf(key: string): string {
  const [tonic = '', mode = ''] = key.split(' ');
  const parts = nameParts(tonic);
  if (parts === null) return key;
  const sharps = parts.accidental.startsWith('#') ? parts.accidental.length : -parts.accidental.length;
  return `${(NATURAL[parts.letter]! + sharps + 12) % 12} ${mode}`;
}

/** The other name of the same key, where teachers use one: F♯ and G♭ major; null: none. */
export function otherNameOf(key: string): string | null {
  return (
    [...ALL_KEYS, ...OTHER_NAMES].find((other) => other !== key && soundOf(other) === soundOf(key)) ?? null
  );
}

/** The key on the circle that sounds the same. */
export function onCircle(key: string): string {
  return ALL_KEYS.find((other) => soundOf(other) === soundOf(key)) ?? key;
}

/** The key of the other mode with the same signature, spelt the same way: A♭ major and F minor. */
export function relativeOf(key: string, scale: readonly string[]): string {
  const minor = key.endsWith('minor');
  return `${scale[minor ? 2 : 5]!} ${minor ? 'major' : 'minor'}`;
}

/** The next key of the same mode round the circle. */
export function nextKeyOf(key: string): string {
  const mode = key.split(' ')[1]!;
  const circle = ALL_KEYS.filter((other) => other.endsWith(mode));
  return circle[(circle.indexOf(onCircle(key)) + 1) % circle.length]!;
}
