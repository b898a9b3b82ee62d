import type { KeyFacts } from '../exercise/index.ts';
import type { Heard } from '../listen/index.ts';
import type { Alignment } from '../match/index.ts';
import { tellNotice } from '../notices/index.ts';
import type { Report, ReportedNote } from './types.ts';
import { spellPlayedWithOctave, spellWithOctave } from './words/index.ts';

/** Alignment → every note of the run in order of time, named and judged, and what is missed or unsure. */
export function reportNotes(
  heard: Heard,
  alignment: Alignment,
  facts: KeyFacts,
): Pick<Report, 'notes' | 'missed' | 'unsure'> {
  const base = (index: number): Omit<ReportedNote, 'hand' | 'step' | 'finger' | 'verdict'> => {
    const { timeSec, releaseSec, midi, levelDb, confidence } = heard.notes[index]!;
    const key = midi + alignment.semitoneShift;
    return { timeSec, releaseSec, midi: key, name: spellWithOctave(facts, key), levelDb, confidence };
  };
  const placed = alignment.matched.flatMap((note): ReportedNote[] => {
    if (note.verdict !== 'correct' && note.verdict !== 'wrong') return [];
    const { hand, finger, midi, name } = note.expected;
    const shared = { ...base(note.played), hand, finger, step: note.step };
    return note.verdict === 'correct'
      ? [{ ...shared, name, verdict: 'correct' }]
      : [
          {
            ...shared,
            name: spellPlayedWithOctave(alignment.exercise, note.step, shared.midi, note.expected),
            verdict: 'wrong',
            wantedMidi: midi,
            wantedName: name,
          },
        ];
  });
  const extras = alignment.extras.map((extra): ReportedNote => {
    const midi = heard.notes[extra.played]!.midi + alignment.semitoneShift;
    const expected = alignment.matched
      .filter((note) => note.step === extra.step)
      .map((note) => note.expected);
    const nearest = expected.reduce((a, b) => (Math.abs(b.midi - midi) < Math.abs(a.midi - midi) ? b : a));
    const again = nearest.midi === midi;
    return {
      ...base(extra.played),
      name: again ? nearest.name : spellPlayedWithOctave(alignment.exercise, extra.step, midi, nearest),
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
