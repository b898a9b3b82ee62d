export { handsAloneIn } from './alone.ts';
export type * from './types.ts';
import type { ExpectedNote } from '../exercise/index.ts';
import type { HandsAlone, Heard, KeptSound, PlayedNote } from '../listen/index.ts';
import type { Alignment, MatchedNote } from '../match/index.ts';
import { Asker } from './asker.ts';
import { caughtBeside, extrasThatStay } from './extras.ts';
import { settle } from './settle.ts';
import type { Recheck, Rechecked } from './types.ts';

/**
 * A second, separate listening with the exercise in hand, for exercises with more than one note at a time. Each written note of
 * a step of which something was heard is looked at on the sound itself: was it struck, and when? Notes that were left missed or
 * unsure are found again or called missed, reported ones that the sound does not bear out are withdrawn, a key struck in place of
 * a missed one is looked for, and onsets that the blind ear drew together are told apart. It presumes nothing: what is written
 * is evidence of little weight beside the sound, and a step of which nothing was heard is left alone. What was asked and
 * answered stays in `rechecks`. `alone`: what hands alone sounded like on this piano, to compare with.
 */
export function recheck(
  heard: Heard,
  alignment: Alignment,
  sound: KeptSound,
  alone: HandsAlone | null = null,
): Rechecked {
  if (alignment.exercise.steps.every(({ notes }) => notes.length === 1))
    return { heard, alignment, rechecks: [] };
  const asker = new Asker(heard, sound, alignment, alone);
  const rechecks: Recheck[] = [];
  const settled = alignment.matched.map((note, place) =>
    settle(asker, heard, alignment, note, place, rechecks),
  );
  const extras = [
    ...extrasThatStay(asker, heard, alignment, rechecks),
    ...settled.flatMap(({ freed }) => (freed ? [freed] : [])),
    ...caughtBeside(asker, heard, alignment, rechecks),
  ];
  /** what becomes of the notes of the first listening that were asked about; null: withdrawn */
  const fate = new Map<PlayedNote, PlayedNote | null>();
  for (const { played } of alignment.extras) fate.set(heard.notes[played]!, null);
  for (const { note } of extras) fate.set(note, note);
  for (const { before, note } of settled) if (before !== null) fate.set(before, note);
  const kept = heard.notes.map((note) => (fate.has(note) ? fate.get(note)! : note));
  const found = [...settled, ...extras].flatMap(({ note }) => (note === null ? [] : [note]));
  const notes = [...new Set([...kept.filter((note) => note !== null), ...found])].sort(
    (a, b) => a.timeSec - b.timeSec || a.midi - b.midi,
  );
  const surelyMissed = (step: number, { midi, hand }: ExpectedNote): { readonly sure?: number } => {
    const asked = rechecks.find(
      (one) => one.asked === 'written' && one.step === step && one.midi === midi && one.hand === hand,
    );
    return asked === undefined ? {} : { sure: 1 / (1 + Math.exp(asked.logOdds)) };
  };
  const indexOf = new Map(notes.map((note, index) => [note, index]));
  return {
    heard: { ...heard, notes },
    alignment: {
      ...alignment,
      matched: settled.map(({ verdict, note, reason }, place): MatchedNote => {
        const { step, expected } = alignment.matched[place]!;
        if (verdict === 'missed') return { step, expected, verdict, ...surelyMissed(step, expected) };
        if (verdict !== 'unsure') return { step, expected, verdict, played: indexOf.get(note!)! };
        const unsure = { step, expected, verdict, reason: reason! };
        return note === null ? unsure : { ...unsure, played: indexOf.get(note)! };
      }),
      extras: extras
        .map(({ note, kind, step }) => ({ played: indexOf.get(note)!, kind, step }))
        .sort((a, b) => a.played - b.played),
    },
    rechecks: rechecks.sort((a, b) => a.step - b.step),
  };
}
