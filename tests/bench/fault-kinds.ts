import type { Report } from '../../src/engine/index.ts';
import type { Truth, TrueNote } from '../support/render.ts';
import type { Records } from './errors.ts';
import { percent } from './errors.ts';
import { table } from './table.ts';
import { answersOf } from './verdict-score.ts';

const TOLD = [
  'right kind and place',
  'another kind or place',
  'as extra',
  'as wrong',
  'asked about',
  'nothing',
] as const;

/** One fault of a student, and what the report makes of it. */
export interface FaultRecord {
  readonly kind: 'wrong' | 'missed' | 'extra';
  readonly told: (typeof TOLD)[number];
}

const SAME_MOMENT_SEC = 0.06;

/** Report against truth, fault by fault: found, of the right kind, in the right place? */
export function faultsOf(report: Report | null, truth: Truth): readonly FaultRecord[] {
  const said = answersOf(report);
  const notes = report?.notes ?? [];
  const asIs = (note: TrueNote): Report['notes'] =>
    notes.filter(
      ({ midi, timeSec }) => midi === note.midi && Math.abs(timeSec - note.timeSec) <= SAME_MOMENT_SEC,
    );
  const wrong = (note: TrueNote): FaultRecord['told'] => {
    const answer = said(note.step, note.hand, note.wantedMidi!);
    const struck = asIs(note);
    if (answer === 'wrong')
      return struck.some(({ verdict }) => verdict === 'wrong')
        ? 'right kind and place'
        : 'another kind or place';
    if (struck.some(({ verdict }) => verdict === 'extra')) return 'as extra';
    if (answer === 'missed' || struck.some(({ verdict }) => verdict === 'wrong'))
      return 'another kind or place';
    return answer === 'unsure' ? 'asked about' : 'nothing';
  };
  const extra = (note: TrueNote): FaultRecord['told'] => {
    const struck = asIs(note).map(({ verdict }) => verdict);
    if (struck.includes('extra')) return 'right kind and place';
    return struck.includes('wrong') ? 'as wrong' : 'nothing';
  };
  return [
    ...truth.notes.flatMap((note): readonly FaultRecord[] => {
      if (note.verdict === 'correct') return [];
      return [{ kind: note.verdict, told: note.verdict === 'wrong' ? wrong(note) : extra(note) }];
    }),
    ...truth.missed
      .filter(({ why }) => why === 'left-out')
      .map(({ step, hand, midi }): FaultRecord => {
        const answer = said(step, hand, midi);
        if (answer === 'missed') return { kind: 'missed', told: 'right kind and place' };
        if (answer === 'wrong') return { kind: 'missed', told: 'as wrong' };
        return { kind: 'missed', told: answer === 'unsure' ? 'asked about' : 'nothing' };
      }),
  ];
}

/** Faults by what they are, and of attempts made for it by what is particular about them. */
export function faultTable(records: Records): string {
  const all = records.flatMap(({ faults, labels }) =>
    faults.map((fault) => ({ ...fault, name: [fault.kind, labels.hardship].filter(Boolean).join(': ') })),
  );
  const names = [...new Set(all.map(({ name }) => name))].sort();
  return table(
    ['fault', 'there', ...TOLD],
    names.map((name) => {
      const own = all.filter((one) => one.name === name);
      const of = (told: string): number => own.filter((one) => one.told === told).length;
      return [
        name,
        String(own.length),
        ...TOLD.map((told) => `${of(told)} (${percent(of(told), own.length)})`),
      ];
    }),
  );
}
