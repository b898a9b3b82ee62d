/** Note and key names as they are shown, as they are spoken, and taken apart; all as the page calls its notes. */
import { exerciseTitle, keyName, noteName, type ExerciseChoice } from '../../engine/index.ts';
import { speaking, strings } from '../language/index.ts';

/** A note's name taken apart: "G#4" → letter G, accidental "#", octave 4; "Bb" has no octave. */
export interface NameParts {
  readonly letter: string;
  readonly accidental: '' | '#' | '##' | 'b' | 'bb';
  readonly octave: number | null;
}

/** Scientific pitch notation or a pitch class, accidentals as # x b or ♯ ♭ → its parts; null when it is no name. */
export function nameParts(name: string): NameParts | null {
  const plain = name.replaceAll('♯', '#').replaceAll('♭', 'b').replace(/𝄪|×|x/, '##');
  const found = /^([A-G])(##?|bb?)?(-?\d+)?$/.exec(plain);
  if (found === null) return null;
  return {
    letter: found[1]!,
    accidental: (found[2] ?? '') as NameParts['accidental'],
    octave: found[3] === undefined ? null : Number(found[3]),
  };
}

/** "Ab4" → "A♭", "As" or "la♭": the name without its octave, as under a pearl. */
export function shownName(name: string): string {
  const parts = nameParts(name);
  return parts === null ? name : noteName(parts.letter + parts.accidental, speaking.naming);
}

/** "Ab4" → "A♭4"; octaves are counted the same way in every naming, middle C is in the fourth. */
export function shownNameWithOctave(name: string): string {
  const parts = nameParts(name);
  return parts === null ? name : shownName(name) + (parts.octave === null ? '' : String(parts.octave));
}

/** "Ab4" → "A flat 4", for screen readers, which stumble over signs; German names have none. */
export function spokenName(name: string): string {
  const parts = nameParts(name);
  if (parts === null) return name;
  const { letter, accidental, octave } = parts;
  const plain =
    speaking.naming === 'german'
      ? shownName(name)
      : noteName(letter, speaking.naming) + strings().names.signs[accidental];
  return plain + (octave === null ? '' : ` ${octave}`);
}

/**
 * The note struck in place of another; a natural that differs only by its sign gets one: "G♮" for "G♯". German names
 * need none.
 */
export function shownWrongName(name: string, wantedName: string): string {
  const struck = nameParts(name);
  const wanted = nameParts(wantedName);
  const onlyTheSign =
    struck !== null && wanted !== null && struck.letter === wanted.letter && struck.accidental === '';
  const needsSign = onlyTheSign && wanted.accidental !== '' && speaking.naming !== 'german';
  return needsSign ? `${shownName(struck.letter)}♮` : shownName(name);
}

/** "Ab major" → "A♭ major" or "As-Dur". */
export function shownKey(key: string): string {
  return keyName(key, speaking.locale);
}

/** A choice → the title of its exercise, "A♭ major · tonic arpeggio, two octaves · right hand". */
export function shownTitle(choice: ExerciseChoice): string {
  return exerciseTitle(choice, speaking.locale);
}

/** 1 → "thumb" … 5 → "little finger". */
export function fingerName(finger: number): string {
  const { fingers, finger: other } = strings().names;
  return fingers[finger - 1] ?? other(finger);
}
