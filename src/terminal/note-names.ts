import { displayName, plainName } from '../engine/index.ts';

/** MIDI number → name in scientific pitch notation, black keys as sharps: without a key nobody can know better. */
export function nameOfKey(midi: number): string {
  return displayName(plainName(midi, 'none')) + String(Math.floor(midi / 12) - 1);
}
