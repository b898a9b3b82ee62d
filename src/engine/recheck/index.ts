export type * from './types.ts';
import type { Heard, PlayedNote } from '../listen/index.ts';
import type { Alignment, MatchedNote } from '../match/index.ts';
import { chanceOf, doubtsIn } from './evidence.ts';
import type { Doubt } from './evidence.ts';
import type { Recheck, Rechecked } from './types.ts';
import { RECHECK_BOUNDS } from './weights.ts';

/**
 * A second, separate listening with the exercise in hand: for each note that match left missed or unsure, struck or not
 * struck? What the blind ear heard too faintly to report is weighed by its belief and by how loud the hand's other notes are in this attempt.
 * It presumes nothing: an expected note of which the ear heard nothing is never found again. What it decided, and on what
 * evidence, stays in `rechecks`.
 */
export function recheck(heard: Heard, alignment: Alignment): Rechecked {
  const doubts = doubtsIn(heard, alignment);
  const judged = doubts.map((doubt) => ({ doubt, result: judge(doubt, alignment) }));
  const found = judged.flatMap(({ doubt: { place, candidate }, result }) =>
    result.decision === 'struck' && candidate?.note ? [{ place, note: noteIn(heard, candidate.note) }] : [],
  );
  const notes = inTime([...new Set([...heard.notes, ...found.map(({ note }) => note)])]);
  const indexOf = new Map(notes.map((note, index) => [note, index]));
  const moved = (played: number): number => indexOf.get(heard.notes[played]!)!;
  const matched = alignment.matched.map((note, place): MatchedNote => {
    const { step, expected } = note;
    const again = found.find((one) => one.place === place);
    if (again !== undefined) return { step, expected, verdict: 'correct', played: indexOf.get(again.note)! };
    const result = judged.find(({ doubt }) => doubt.place === place)?.result;
    if (result?.decision === 'not-struck') return { step, expected, verdict: 'missed' };
    if (result?.decision === 'unsure') return { step, expected, verdict: 'unsure', reason: reasonFor(note) };
    return 'played' in note ? { ...note, played: moved(note.played) } : note;
  });
  return {
    heard: { ...heard, notes },
    alignment: {
      ...alignment,
      matched,
      extras: alignment.extras.map((extra) => ({ ...extra, played: moved(extra.played) })),
    },
    rechecks: judged.map(({ result }) => result),
  };
}

function judge({ place, blind, candidate, evidence }: Doubt, alignment: Alignment): Recheck {
  const { step, expected } = alignment.matched[place]!;
  const probability = chanceOf(evidence);
  const decision =
    probability > RECHECK_BOUNDS.struck && candidate?.note
      ? 'struck'
      : probability < RECHECK_BOUNDS.notStruck
        ? 'not-struck'
        : 'unsure';
  return { step, midi: expected.midi, hand: expected.hand, blind, evidence, probability, decision };
}

/** The blind ear's own note where it reported this one, without an expected note to answer. */
function noteIn({ notes }: Heard, note: PlayedNote): PlayedNote {
  return notes.find(({ midi, timeSec }) => midi === note.midi && timeSec === note.timeSec) ?? note;
}

function reasonFor(note: MatchedNote): string {
  if (note.verdict === 'unsure') return note.reason;
  return `${note.expected.name} was heard too faintly to say that it was struck`;
}

function inTime(notes: readonly PlayedNote[]): readonly PlayedNote[] {
  return [...notes].sort((a, b) => a.timeSec - b.timeSec || a.midi - b.midi);
}
