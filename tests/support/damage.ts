import { createRandom } from './random.ts';

/** How a file comes to harm: a transfer that broke off, a disk or a card that went bad. */
export const HARMS = [
  'zeroed tail',
  'cut',
  'zeroed stretch',
  'flipped bytes',
  'header',
  'foreign stretch',
] as const;
export type Harm = (typeof HARMS)[number];

/** A file and what befell it, by a seed → its bytes after that. */
export function harmed(whole: Uint8Array, harm: Harm, seed: number): Uint8Array<ArrayBuffer> {
  const random = createRandom(seed);
  const bytes = whole.slice();
  const place = (): number => random.integer(bytes.length);
  const flip = (from: number, to: number, count: number): void => {
    for (let i = 0; i < count; i++)
      bytes[from + random.integer(Math.max(to - from, 1))]! ^= 1 << random.integer(8);
  };
  switch (harm) {
    case 'zeroed tail':
      return bytes.fill(0, place());
    case 'cut':
      return bytes.slice(0, place());
    case 'zeroed stretch':
      return bytes.fill(0, ...ordered(place(), place()));
    case 'flipped bytes':
      flip(0, bytes.length, 1 + random.integer(40));
      return bytes;
    case 'header':
      flip(0, Math.min(bytes.length, 400), 1 + random.integer(12));
      return bytes;
    case 'foreign stretch': {
      const [from, to] = ordered(place(), place());
      for (let at = from; at < to; at++) bytes[at] = random.integer(256);
      return bytes;
    }
  }
}

/** What no sentence for people holds: kinds of errors, places in a program, values that are none. */
export const INSIDES =
  /\b\w*(Error|Exception)\b|\bat \S+:\d|undefined|\bnull\b|NaN|\[object|offset|assert|buffer/i;

const ordered = (a: number, b: number): [number, number] => [Math.min(a, b), Math.max(a, b)];
