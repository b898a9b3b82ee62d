import type { Heard } from '../listen/index.ts';
import type { Alignment } from '../match/index.ts';
import { tellNotice } from '../notices/index.ts';
import type { Report, ReportedNote } from './types.ts';
import { spellPlayedWithOctave } from './words/index.ts';

/** Alignment → every note of the run in order of time, named and judged, and what is missed or unsure. */
export function reportNotes(heard: Heard, alignment: Alignment): Pick<Report, 'notes' | 'missed' | 'unsure'> {
  const keyOf = (index: number): number => heard.notes[index]!.midi + alignment.semitoneShift;
  const base = (index: number, name: string): Omit<ReportedNote, 'hand' | 'step' | 'finger' | 'verdict'> => {
    const { timeSec, releaseSec, levelDb, confidence } = heard.notes[index]!;
    return { timeSec, releaseSec, midi: keyOf(index), name, levelDb, confidence };
  };
  const placed = alignment.matched.flatMap((note): ReportedNote[] => {
    if (note.verdict !== 'correct' && note.verdict !== 'wrong') return [];
    const { hand, finger, midi, name } = note.expected;
    const place = { hand, finger, step: note.step };
    if (note.verdict === 'correct') return [{ ...base(note.played, name), ...place, verdict: 'correct' }];
    const struck = spellPlayedWithOctave(alignment.exercise, note.step, keyOf(note.played), note.expected);
    return [{ ...base(note.played, struck), ...place, verdict: 'wrong', wantedMidi: midi, wantedName: name }];
  });
  const extras = alignment.extras.map((extra): ReportedNote => {
    const midi = keyOf(extra.played);
    const expected = alignment.matched
      .filter((note) => note.step === extra.step)
      .map((note) => note.expected);
    const nearest = expected.reduce((a, b) => (Math.abs(b.midi - midi) < Math.abs(a.midi - midi) ? b : a));
    const again = nearest.midi === midi;
    const name = again ? nearest.name : spellPlayedWithOctave(alignment.exercise, extra.step, midi, nearest);
    return {
      ...base(extra.played, name),
      hand: nearest.hand,
      step: extra.step,
      finger: again ? nearest.finger : null,
      verdict: 'extra',
      extraKind: extra.kind,
    };
  });
  return {
    notes: [...placed, ...extras].sort((a, b) => a.timeSec - b.timeSec || a.midi - b.midi),
    missed: alignment.matched.flatMap(({ step, expected, verdict }) =>
      verdict === 'missed' ? [{ step, midi: expected.midi, name: expected.name, hand: expected.hand }] : [],
    ),
    unsure: alignment.matched.flatMap((note) =>
      note.verdict === 'unsure'
        ? [
            {
              step: note.step,
              midi: note.expected.midi,
              hand: note.expected.hand,
              reason: tellNotice(note.reason),
              notice: note.reason,
              ...(note.heldOver === true && { heldOver: true as const }),
            },
          ]
        : [],
    ),
  };
}
