import {
  ALL_FORMS,
  ALL_HANDS,
  ALL_MINOR_SCALES,
  keyFacts,
  passageId,
  takesMinorScale,
} from '../../engine/index.ts';
import type { ExerciseChoice } from '../../engine/index.ts';
import { readChoice } from '../../io/check/index.ts';

/** Keys and exercises as addresses and names of files write them: letters of ASCII, digits and hyphens. */

/** "F# minor" → "f-sharp-minor", "Ab major" → "ab-major" */
export function keyAddress(key: string): string {
  return key.replace('#', ' sharp').toLowerCase().replaceAll(' ', '-');
}

/** "f-sharp-minor" → "F# minor"; null: no key is called so. */
export function keyAt(address: string): string | null {
  const found = /^([a-g])(b|-sharp)?-(major|minor)$/.exec(address);
  if (found === null) return null;
  const [, letter = '', sign = '', mode = ''] = found;
  try {
    return keyFacts(`${letter.toUpperCase()}${sign.replace('-sharp', '#')} ${mode}`).name;
  } catch {
    // It would need a double sharp or flat.
    return null;
  }
}

/** Passages of one's own that an address can name: an address holds no notes. */
const passages = new Map<string, ExerciseChoice>();

/** From here on an address may lead to it. */
export function knowPassage(choice: ExerciseChoice): void {
  if (choice.passage !== undefined) passages.set(passageId(choice.passage), choice);
}

/** A choice → "ab-major-arpeggio-right-2", "f-sharp-minor-scale-melodic-together-1", "c-major-scale-right-2-4-a-beat-1-up" */
export function exerciseAddress(choice: ExerciseChoice): string {
  const { key, form, hands, octaves, minorScale, passage, notesABeat, register } = choice;
  if (passage !== undefined) {
    knowPassage(choice);
    return ['passage', passageId(passage), hands].join('-');
  }
  const scale = takesMinorScale(key, form) ? [minorScale ?? 'harmonic'] : [];
  const others = [
    ...(notesABeat === undefined ? [] : [notesABeat, 'a-beat']),
    ...(register === undefined ? [] : [Math.abs(register), register > 0 ? 'up' : 'down']),
  ];
  return [keyAddress(key), form, ...scale, hands, octaves, ...others].join('-');
}

/** "ab-major-arpeggio-right-2" → the choice; null: no exercise is called so. */
export function exerciseAt(address: string): ExerciseChoice | null {
  const [, id = '', own] = /^passage-([0-9a-f]{8})-(left|right|together)$/.exec(address) ?? [];
  const passage = passages.get(id);
  if (passage !== undefined) return readChoice({ ...passage, hands: own });
  const any = (names: readonly string[]): string => `(${names.join('|')})`;
  const found = new RegExp(
    `^(.+?-(?:major|minor))-${any(ALL_FORMS)}(?:-${any(ALL_MINOR_SCALES)})?-${any(ALL_HANDS)}-(\\d)(?:-(\\d)-a-beat)?(?:-(\\d)-(up|down))?$`,
  ).exec(address);
  if (found === null) return null;
  const [, key = '', form, minorScale, hands, octaves, beat, register, way] = found;
  const scale = minorScale === undefined ? {} : { minorScale };
  return readChoice({
    ...{ key: keyAt(key), form, hands, octaves: Number(octaves), ...scale },
    ...(beat !== undefined && { notesABeat: Number(beat) }),
    ...(register !== undefined && { register: way === 'up' ? Number(register) : -Number(register) }),
  });
}
