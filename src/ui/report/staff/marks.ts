import { lateCrossings, type Exercise, type Hand, type Report } from '../../../engine/index.ts';
import { listed, shown, signed, withUnit } from '../../kit/figures.ts';
import { strings } from '../../language/index.ts';
import { shownName, shownWrongName } from '../../names/index.ts';
import type { StaffMark } from '../../plots/staff/pencil.ts';
import type { PictureLimits } from '../../plots/pearls/types.ts';

/** Report → what a teacher would write into the notes. Late crossings, hands apart and spread chords only beyond the limits. */
export function staffMarks(report: Report, exercise: Exercise, limits: PictureLimits): readonly StaffMark[] {
  const t = strings().takeOut;
  // Whatever octave the hand lies in: no hand has the same note twice in a chord.
  const placeIn = (step: number, hand: Hand, midi: number): number => {
    const own = exercise.steps[step]?.notes.filter((note) => note.hand === hand) ?? [];
    return Math.max(
      0,
      own.findIndex((note) => (note.midi - midi) % 12 === 0),
    );
  };
  const played = report.notes.flatMap((note): readonly StaffMark[] => {
    const { step, hand, name } = note;
    if (step === null || hand === null || note.verdict === 'correct') return [];
    if (note.verdict === 'extra') {
      const words = t.extra[note.extraKind ?? 'other'];
      return [{ step, hand, kind: 'extra', note: 0, text: `${shownName(name)} ${words}` }];
    }
    const at = placeIn(step, hand, note.wantedMidi ?? note.midi);
    return [{ step, hand, kind: 'wrong', note: at, text: shownWrongName(name, note.wantedName ?? '') }];
  });
  const silent = [
    ...report.missed.map((note) => ({ ...note, kind: 'missed' as const, text: t.missed })),
    ...report.unsure.map((note) => ({ ...note, kind: 'unsure' as const, text: t.unsure })),
  ].map(({ step, hand, midi, kind, text }): StaffMark => ({
    step,
    hand,
    kind,
    note: placeIn(step, hand, midi),
    text,
  }));
  const late = lateCrossings(report).map(({ step, hand, delayMs }): StaffMark => ({
    step,
    hand,
    kind: 'late',
    note: null,
    text: withUnit(signed(delayMs), 'ms'),
  }));
  const apart = (report.measures.togetherness?.steps ?? [])
    .filter(({ leftMinusRightMs }) => Math.abs(leftMinusRightMs) > limits.handsApartMs)
    .map(({ step, leftMinusRightMs }): StaffMark => ({
      step,
      hand: 'right',
      kind: 'apart',
      note: null,
      text: withUnit(shown(Math.abs(leftMinusRightMs)), 'ms'),
      first: leftMinusRightMs < 0 ? 'left' : 'right',
    }));
  return [...played, ...silent, ...late, ...apart, ...spreadMarks(report, limits)];
}

function spreadMarks(report: Report, limits: PictureLimits): readonly StaffMark[] {
  const chords = new Map<string, { step: number; hand: Hand; times: number[] }>();
  for (const { step, hand, verdict, timeSec } of report.notes) {
    if (step === null || hand === null || verdict === 'extra') continue;
    const chord = chords.get(`${step} ${hand}`) ?? { step, hand, times: [] };
    chord.times.push(timeSec);
    chords.set(`${step} ${hand}`, chord);
  }
  return [...chords.values()].flatMap(({ step, hand, times }): readonly StaffMark[] => {
    const spreadMs = 1000 * (Math.max(...times) - Math.min(...times));
    if (times.length < 2 || spreadMs <= limits.chordSpreadMs) return [];
    return [{ step, hand, kind: 'spread', note: null, text: withUnit(shown(spreadMs), 'ms') }];
  });
}

/** The marks in words, for screen readers: "2. C +92 ms, …". */
export function marksInWords(marks: readonly StaffMark[], nameOf: (step: number) => string): string {
  const t = strings().takeOut;
  const each = marks.map(({ step, text }) => `${step + 1}. ${nameOf(step)}: ${text}`);
  return t.staffInWords(each.length === 0 ? t.noMarks : listed(each));
}
