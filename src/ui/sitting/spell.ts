import type { Exercise, KeyFacts } from '../../engine/index.ts';
import { nameParts, shownName } from '../names/index.ts';

const SHARP = ['C', 'C#', 'D', 'D#', 'E', 'F', 'F#', 'G', 'G#', 'A', 'A#', 'B'] as const;
const FLAT = ['C', 'Db', 'D', 'Eb', 'E', 'F', 'Gb', 'G', 'Ab', 'A', 'Bb', 'B'] as const;

/** Exercise and key → how a key that was struck is written: as the exercise spells it, else with the key's own signs. */
export function speller(exercise: Exercise, key: KeyFacts): (midi: number) => string {
  const known = new Map(
    exercise.steps.flatMap(({ notes }) => notes.map(({ midi, name }) => [midi % 12, bare(name)] as const)),
  );
  const others = key.accidental === 'flats' ? FLAT : SHARP;
  return (midi) => shownName(known.get(midi % 12) ?? others[midi % 12]!);
}

function bare(name: string): string {
  const parts = nameParts(name);
  return parts === null ? name : parts.letter + parts.accidental;
}
