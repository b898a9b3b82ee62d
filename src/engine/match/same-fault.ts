import type { Ranked } from './rank.ts';
import type { Moment } from './moments.ts';

/** Doubted findings are nobody's fault. */
const SURE = 0.75;
/** A note that is foreign to the exercise so often was meant. */
const MEANT = 3;
/** A note is replaced by one no further off than this, semitones. */
const BESIDE = 2;

/**
 * One fault made the same way each time, of a reading of what was heard: `changed`, where one note of the exercise never sounds
 * and its neighbour does in its place, as when an accidental of the signature is forgotten, or in a church mode; `added`, where
 * a foreign note comes again and again, as the seventh in a seventh chord's arpeggio; null, where faults are as chance has them.
 */
export function sameFault(
  moments: readonly Moment[],
  { listed: { template, semitones }, account }: Ranked,
): 'changed' | 'added' | null {
  const expected = new Array<number>(12).fill(0);
  for (const [midi, count] of template.counts) expected[(midi + semitones) % 12]! += count;
  const heard = new Array<number>(12).fill(0);
  for (const { from, to } of account.stretches)
    for (const { keys, weights } of moments.slice(from, to + 1))
      keys.forEach((midi, at) => (heard[midi % 12]! += weights[at]! >= SURE ? 1 : 0));
  const foreign = heard.map((count, note) => (expected[note] === 0 ? count : 0));
  const isChanged = expected.some((count, note) => {
    if (count < 2 || heard[note]! > 0) return false;
    return foreign.some((times, other) => times >= 2 && apart(note, other) <= BESIDE);
  });
  if (isChanged) return 'changed';
  return Math.max(...foreign) >= MEANT ? 'added' : null;
}

function apart(one: number, other: number): number {
  const up = (((one - other) % 12) + 12) % 12;
  return Math.min(up, 12 - up);
}
