import { plainName, type Exercise, type KeyFacts } from '../../engine/index.ts';
import { shownName } from '../names/index.ts';

/** Exercise and key → how a key that was struck is written: as the exercise spells it, else with the key's own signs. */
export function speller(exercise: Exercise, key: KeyFacts): (midi: number) => string {
  const known = new Map(
    exercise.steps.flatMap(({ notes }) => notes.map(({ midi, name }) => [midi % 12, name])),
  );
  return (midi) => shownName(known.get(midi % 12) ?? plainName(midi, key.accidental));
}
