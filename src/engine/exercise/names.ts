import { Note } from 'tonal';
import { capital } from '../base/text.ts';
import type { KeyFacts } from './types.ts';

const ACCIDENTAL_SIGNS: Readonly<Record<string, string>> = { '#': '♯', '##': '×', b: '♭', bb: '♭♭' };

/**
 * A name as computers write it → as music writes it: "G#4" → "G♯4", "Bb major" → "B♭ major".
 *
 * The double sharp becomes "×", which every font has; Unicode's own U+1D12A is missing from most.
 */
export function displayName(name: string): string {
  return name.replace(
    /^([A-G])(##?|bb?)/,
    (_, letter: string, accidental: string) => letter + ACCIDENTAL_SIGNS[accidental],
  );
}

/** The same without the octave: "G#4" → "G♯". */
function displayPitchClass(name: string): string {
  return displayName(name).replace(/-?\d+$/, '');
}

/** "G#4" → "G#" */
export const pitchClassName = (name: string): string => Note.pitchClass(name);

/** A key → its name, without octave, where nothing says how it is written: "Db" where flats are, else "C#". */
export function plainName(midi: number, accidental: KeyFacts['accidental']): string {
  return pitchClassName(accidental === 'flats' ? Note.fromMidi(midi) : Note.fromMidiSharps(midi));
}

/** The languages that are spoken here. */
export type Language = 'en' | 'de';

/**
 * What notes are called: by letters (B, B♭, F♯), in German (H, B, Fis), or fixed-do (si, si♭, fa♯). Common practice, no
 * source.
 */
export type NoteNaming = 'letters' | 'german' | 'fixed-do';

/** How words and notes are written. */
export interface Locale {
  readonly language: Language;
  readonly naming: NoteNaming;
}

export const ENGLISH: Locale = { language: 'en', naming: 'letters' };

const SYLLABLES: Readonly<Record<string, string>> = {
  C: 'do',
  D: 're',
  E: 'mi',
  F: 'fa',
  G: 'sol',
  A: 'la',
  B: 'si',
};

/** German names that no rule makes: B natural is H, B flat is B, and two vowels that would meet are drawn together. */
const GERMAN_EXCEPTIONS: Readonly<Record<string, string>> = {
  B: 'H',
  Bb: 'B',
  Bbb: 'Heses',
  Eb: 'Es',
  Ebb: 'Eses',
  Ab: 'As',
  Abb: 'Asas',
};

/** A note as computers write it, with or without octave → its name without: "G#4" → "G♯", "Gis" or "sol♯". */
export function noteName(name: string, naming: NoteNaming): string {
  const found = /^([A-G])(##?|bb?)?(-?\d+)?$/.exec(name);
  if (found === null || naming === 'letters') return displayPitchClass(name);
  const [, letter = '', accidental = ''] = found;
  if (naming === 'fixed-do') return SYLLABLES[letter]! + (ACCIDENTAL_SIGNS[accidental] ?? '');
  const stem = letter === 'B' ? 'H' : letter;
  return (
    GERMAN_EXCEPTIONS[letter + accidental] ??
    stem + accidental.replaceAll('#', 'is').replace('bb', 'eses').replace('b', 'es')
  );
}

/** The octave of a name that has one: "G#4" → "4". */
export const octaveIn = (name: string): string => /-?\d+$/.exec(name)?.[0] ?? '';

/** The same with its octave, which is counted alike in every naming: "G#4" → "G♯4", "Gis4" or "sol♯4". */
export const nameWithOctave = (name: string, naming: NoteNaming): string =>
  noteName(name, naming) + octaveIn(name);

/**
 * A key → its name: "A♭ major", "As-Dur", "La♭ major". In German a minor key is written small, "fis-Moll" (Duden; memory);
 * syllables are written large at the head of a key's name.
 */
export function keyName(key: string, { language, naming }: Locale): string {
  const [tonic = '', mode] = key.split(' ');
  const name = noteName(tonic, naming);
  const large = capital(name);
  if (language === 'en') return mode === undefined ? large : `${large} ${mode}`;
  if (mode !== 'minor') return `${large}-Dur`;
  return `${naming === 'fixed-do' ? large : name.charAt(0).toLowerCase() + name.slice(1)}-Moll`;
}
