import { Key } from 'tonal';
import { UsageError } from '../base/errors.ts';
import type { KeyFacts, KeyParts, MinorScale, Mode } from './types.ts';

/** The 24 keys, major then minor, round the circle of fifths from C and from A. */
export const ALL_KEYS: readonly string[] = [
  ...['C', 'G', 'D', 'A', 'E', 'B', 'F#', 'Db', 'Ab', 'Eb', 'Bb', 'F'].map((tonic) => `${tonic} major`),
  ...['A', 'E', 'B', 'F#', 'C#', 'G#', 'Eb', 'Bb', 'F', 'C', 'G', 'D'].map((tonic) => `${tonic} minor`),
];

/** A signature cannot hold more: there are seven letters. */
const MOST_ACCIDENTALS = 7;

/** The order in which they are written: a fifth up for sharps, a fourth up for flats. */
const ORDER_OF_SHARPS = ['F#', 'C#', 'G#', 'D#', 'A#', 'E#', 'B#'];
const ORDER_OF_FLATS = ['Bb', 'Eb', 'Ab', 'Db', 'Gb', 'Cb', 'Fb'];

const WAY_OUT =
  'Write a letter A to G, # or b if it has one, then major or minor, e.g. "Bb major" or "F# minor".';
const KEY_PATTERN = /^([A-Ga-g])[ -]?(♯|#|sharp|♭|b|flat)?[ -]?(M|m|major|minor|maj|min)$/i;

/**
 * A key as somebody may write it → its parts, e.g. "f♯ Minor", "F# minor", "F-sharp minor", "f#m" → F#, minor.
 * A lone "M" is major and a lone "m" is minor; a tonic without its mode is not guessed at.
 *
 * @throws UsageError on anything else, and on keys whose signature would need a double sharp or flat.
 */
export function parseKey(text: string): KeyParts {
  const match = KEY_PATTERN.exec(text.trim().replace(/\s+/g, ' '));
  if (match === null) throw new UsageError(`key="${text}" is not a key. ${WAY_OUT}`);
  const [, letter = '', accidental = '', mode = ''] = match;
  const parts = partsOf(letter.toUpperCase() + plainAccidental(accidental), modeOf(mode));
  const count = Math.abs(signedAccidentals(parts));
  if (count > MOST_ACCIDENTALS) {
    throw new UsageError(
      `key="${text}" would need ${count} sharps or flats; a signature holds at most ${MOST_ACCIDENTALS}. ` +
        'Use the other name of the same key, e.g. "Ab major" for "G# major".',
    );
  }
  return parts;
}

/** "f♯ Minor", "F# minor", "f#m" → "F# minor"; throws UsageError that says what is accepted. */
export function normaliseKey(text: string): string {
  return parseKey(text).name;
}

/**
 * Key → signature, scale, triad, primary chords; in minor `scale` is the natural one, the signature's own.
 *
 * @throws UsageError on what is not a key.
 * @example
 * const { signature, scale } = keyFacts('A major'); // ['F#', 'C#', 'G#'], ['A', 'B', 'C#', 'D', 'E', 'F#', 'G#']
 */
export function keyFacts(key: string): KeyFacts {
  const parts = parseKey(key);
  let facts = known.get(parts.name);
  if (facts === undefined) known.set(parts.name, (facts = factsOf(parts)));
  return facts;
}

/** A journal of years asks for them at every note. */
const known = new Map<string, KeyFacts>();

function factsOf(parts: KeyParts): KeyFacts {
  const { name, tonic, mode } = parts;
  const signed = signedAccidentals(parts);
  const minorScales = mode === 'minor' ? minorScalesOf(tonic) : null;
  const scale = minorScales?.natural ?? Key.majorKey(tonic).scale;
  const withLeadingNote = minorScales?.harmonic ?? scale;
  const triad = degrees(scale, 1, 3, 5);
  return {
    name,
    tonic,
    mode,
    signature: (signed > 0 ? ORDER_OF_SHARPS : ORDER_OF_FLATS).slice(0, Math.abs(signed)),
    accidental: signed > 0 ? 'sharps' : signed < 0 ? 'flats' : 'none',
    scale,
    ...(minorScales && { minorScales }),
    triad,
    primaryChords: [
      { numeral: mode === 'major' ? 'I' : 'i', notes: triad },
      { numeral: mode === 'major' ? 'IV' : 'iv', notes: degrees(scale, 4, 6, 1) },
      { numeral: 'V7', notes: degrees(withLeadingNote, 5, 7, 2, 4) },
    ],
  };
}

function partsOf(tonic: string, mode: Mode): KeyParts {
  return { name: `${tonic} ${mode}`, tonic, mode };
}

function plainAccidental(written: string): string {
  if (written === '') return '';
  return /^(♯|#|sharp)$/i.test(written) ? '#' : 'b';
}

function modeOf(written: string): Mode {
  return written === 'M' || /^maj/i.test(written) ? 'major' : 'minor';
}

/** Major keys without an accidental in their name, by the circle of fifths: each has a sharp more than the one before, F one flat. */
const FIFTHS = 'FCGDAEB';
const MINOR_BELOW = 3;

/** Sharps of the signature, or flats as a negative number. A key is named very often, so no chords of it are worked out here. */
function signedAccidentals({ tonic, mode }: KeyParts): number {
  const raised = tonic.endsWith('#') ? 1 : tonic.endsWith('b') ? -1 : 0;
  const asMajor = FIFTHS.indexOf(tonic[0]!) - 1 + FIFTHS.length * raised;
  return mode === 'major' ? asMajor : asMajor - MINOR_BELOW;
}

function minorScalesOf(tonic: string): Readonly<Record<MinorScale, readonly string[]>> {
  const { natural, harmonic, melodic } = Key.minorKey(tonic);
  return { natural: natural.scale, harmonic: harmonic.scale, melodic: melodic.scale };
}

/** The notes of a scale by degree, counted from 1 as the trade does. */
function degrees(scale: readonly string[], ...wanted: readonly number[]): readonly string[] {
  return wanted.map((degree) => scale[degree - 1]!);
}

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
