import { Note } from 'tonal';
import { isBlack } from '../../base/units.ts';
import { keyFacts, pitchClassName, plainName } from '../../exercise/index.ts';
import type { Exercise, KeyFacts } from '../../exercise/index.ts';

/** A note's name, "G#" or "Bbb", as 0–11 above C. */
export const pitchClassOf = (name: string): number => Note.chroma(name)!;

/** A key struck → its name in the key: as its scale has it, else with the signature's kind of accidental (sharps where it has none). */
export function spellIn(facts: KeyFacts, midi: number): string {
  const wanted = ((midi % 12) + 12) % 12;
  const own = scaleNames(facts).find((name) => pitchClassOf(name) === wanted);
  return own ?? plainName(midi, facts.accidental);
}

/** The scale's names, in minor with the raised sixth and seventh. */
function scaleNames(facts: KeyFacts): readonly string[] {
  const { minorScales } = facts;
  return minorScales ? [...facts.scale, ...minorScales.harmonic, ...minorScales.melodic] : facts.scale;
}

function inScale(facts: KeyFacts, midi: number): boolean {
  return scaleNames(facts).some((name) => pitchClassOf(name) === ((midi % 12) + 12) % 12);
}

/** The same with its octave in scientific pitch notation, "G#4". */
export function spellWithOctave(facts: KeyFacts, midi: number): string {
  return withOctave(spellIn(facts, midi), midi);
}

/** A wrong key's name beside the right one, as sentences say it, with its octave. */
export function spellPlayedWithOctave(
  exercise: Exercise,
  step: number,
  midi: number,
  wanted: Wanted,
): string {
  return withOctave(spellPlayed(exercise, step, midi, wanted), midi);
}

/** C♭ and B♯ take the octave of their letter. */
function withOctave(name: string, midi: number): string {
  const { alt, letter } = Note.get(name);
  return name + String(Math.floor((midi - alt - pitchClassOf(letter)) / 12) - 1);
}

/** Whether the key struck is the wanted name's own letter without its accidental: G for G♯. */
export function isNaturalOf(midi: number, wantedName: string): boolean {
  const letter = wantedName[0]!;
  const hasAccidental = /^[A-G][#b]/.test(wantedName);
  return hasAccidental && ((midi % 12) + 12) % 12 === pitchClassOf(letter);
}

interface Wanted {
  readonly midi: number;
  readonly name: string;
}

/**
 * A wrong key at a step, beside the right one → its plain name: the right one's letter where only the sign differs; as the exercise
 * writes that key, where it does; its name in the key's scale; else a semitone off by the right one's own letter, E♭ for E; else with
 * the signature's kind of accidental.
 */
export function spellPlayed(exercise: Exercise, step: number, midi: number, wanted: Wanted): string {
  const letter = wanted.name[0]!;
  if (isNaturalOf(midi, wanted.name)) return letter;
  const written = writtenAs(exercise, step, midi);
  if (written !== null) return written;
  const facts = keyFacts(exercise.choice.key);
  const off = midi - wanted.midi;
  const ownLetter = !/^[A-G][#b]/.test(wanted.name) && Math.abs(off) === 1 && isBlack(midi);
  return ownLetter && !inScale(facts, midi) ? letter + (off > 0 ? '#' : 'b') : spellIn(facts, midi);
}

/** How the exercise writes a key, in whatever octave, nearest to a step: a chromatic scale goes up in sharps and comes down in flats. */
function writtenAs({ steps }: Exercise, step: number, midi: number): string | null {
  const near = [...steps].sort((a, b) => Math.abs(a.step - step) - Math.abs(b.step - step));
  const note = near.flatMap(({ notes }) => notes).find((one) => (one.midi - midi) % 12 === 0);
  return note === undefined ? null : pitchClassName(note.name);
}
