import type { MatchedNote } from '../match/index.ts';

/**
 * Written notes → for each, in the same order, the places of its twins: notes of other steps at which the same key is written
 * with the same others. Exercises go up and down, so that most notes have one; the highest has none.
 */
export function twinPlaces(matched: readonly MatchedNote[]): readonly (readonly number[])[] {
  const names = matched.map(({ step, expected }) => `${expected.midi} in ${chordAt(matched, step)}`);
  const places = new Map<string, number[]>();
  names.forEach((name, place) => places.set(name, [...(places.get(name) ?? []), place]));
  return names.map((name, place) =>
    places.get(name)!.filter((other) => matched[other]!.step !== matched[place]!.step),
  );
}

/** The keys of a step, in one word. */
function chordAt(matched: readonly MatchedNote[], step: number): string {
  return matched
    .flatMap((note) => (note.step === step ? [note.expected.midi] : []))
    .sort((a, b) => a - b)
    .join();
}
