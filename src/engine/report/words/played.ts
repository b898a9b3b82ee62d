import type { Scene } from './scene.ts';
import { say } from './scene.ts';
import { isNaturalOf, spellPlayed } from './spelling.ts';

/**
 * A wrong key as it is said beside the right one: "G natural" for G♯, since both are called G; in German names G and Gis
 * need no more.
 */
export function sayPlayed(scene: Scene, midi: number, wanted: { midi: number; name: string }): string {
  const name = say(scene, spellPlayed(scene.exercise.choice.key, midi, wanted));
  const needsWord = isNaturalOf(midi, wanted.name) && scene.locale.naming !== 'german';
  return needsWord ? scene.wording.natural(name) : name;
}
