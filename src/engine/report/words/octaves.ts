import type { Octave, StepPlace } from './said/index.ts';

/** By how many octaves a name comes → what each is called, from the lowest. Of more no list is read at a glance. */
const CALLED: Readonly<Record<number, readonly Octave[]>> = {
  2: ['lower', 'upper'],
  3: ['lower', 'middle', 'upper'],
};

/** Things that would be called alike and lie in different octaves → the octave of each; undefined: its name and place are enough. */
export function octavesOf(
  called: readonly unknown[],
  midis: readonly number[],
): readonly (Octave | undefined)[] {
  const names = called.map((one) => JSON.stringify(one));
  return names.map((name, at) => {
    const alike = new Set(midis.filter((_, other) => names[other] === name));
    const inOrder = [...alike].sort((a, b) => a - b);
    return CALLED[inOrder.length]?.[inOrder.indexOf(midis[at]!)];
  });
}

/** Things with a place, as they are said → the same, told apart by their octaves where nothing else does. */
export function inOctaves<One extends { readonly step?: number; readonly place: StepPlace }>(
  ones: readonly One[],
  midis: readonly number[],
): readonly One[] {
  const octaves = octavesOf(
    ones.map((one) => ({ ...one, step: null })),
    midis,
  );
  return ones.map((one, at) => {
    const octave = octaves[at];
    if (octave === undefined || one.place.kind === 'chord' || one.place.kind === 'bar') return one;
    return { ...one, place: { ...one.place, octave } };
  });
}
