import type { Hand, Report } from '../../src/engine/index.ts';
import type { Truth, TrueNote } from '../support/render.ts';

/** How the verdicts of one report answer the truth. */
export interface VerdictTally {
  readonly right: number;
  /** right notes that the report calls wrong, missed, unsure */
  readonly rightCalledWrong: number;
  readonly rightCalledMissed: number;
  readonly rightUnsure: number;
  readonly wrong: number;
  readonly wrongFound: number;
  readonly missed: number;
  readonly missedFound: number;
  /** wrong and missed notes of whose place the report says that it cannot tell */
  readonly faultsAsked: number;
  readonly extras: Readonly<
    Record<string, { readonly there: number; readonly found: number; readonly named: number }>
  >;
  /** extras reported where there was none */
  readonly falseExtras: number;
}

const SAME_MOMENT_SEC = 0.05;

/** Expected notes are told apart by step, hand and pitch class: a misread octave is another measure's concern. */
const place = (step: number | null, hand: string | null, midi: number): string =>
  `${step}/${hand}/${((midi % 12) + 12) % 12}`;

/** What a report says of one expected note; undefined: nothing. */
export type Said = 'correct' | 'wrong' | 'missed' | 'unsure' | undefined;

/** A report → what it says of the note expected at a step, of a hand, of a pitch. */
export function answersOf(report: Report | null): (step: number | null, hand: Hand, midi: number) => Said {
  const said = new Map<string, Said>();
  for (const { step, hand, verdict, wantedMidi, midi } of report?.notes ?? [])
    if (verdict !== 'extra') said.set(place(step, hand, wantedMidi ?? midi), verdict);
  for (const { step, hand, midi } of report?.missed ?? []) said.set(place(step, hand, midi), 'missed');
  for (const { step, hand, midi } of report?.unsure ?? []) said.set(place(step, hand, midi), 'unsure');
  return (step, hand, midi) => said.get(place(step, hand, midi));
}

/** Report against truth. Null: there was no report, so every expected note counts as missed and no mistake as found. */
export function tallyVerdicts(report: Report | null, truth: Truth): VerdictTally {
  const said = answersOf(report);
  const right = truth.notes.filter((note) => note.verdict === 'correct');
  const wrong = truth.notes.filter((note) => note.verdict === 'wrong');
  const missed = truth.missed.filter((note) => note.why === 'left-out');
  const answer = (note: TrueNote): Said => said(note.step, note.hand, note.wantedMidi ?? note.midi);
  return {
    right: right.length,
    rightCalledWrong: right.filter((note) => answer(note) === 'wrong').length,
    rightCalledMissed: right.filter((note) => ['missed', undefined].includes(answer(note))).length,
    rightUnsure: right.filter((note) => answer(note) === 'unsure').length,
    wrong: wrong.length,
    wrongFound: wrong.filter((note) => answer(note) === 'wrong').length,
    missed: missed.length,
    missedFound: missed.filter((note) => said(note.step, note.hand, note.midi) === 'missed').length,
    faultsAsked:
      wrong.filter((note) => answer(note) === 'unsure').length +
      missed.filter((note) => said(note.step, note.hand, note.midi) === 'unsure').length,
    ...tallyExtras(report, truth),
  };
}

/**
 * An extra is found if the report has one of the same pitch within ±50 ms, or, of a repeat or a restart, at the moment of
 * another stroke of the same key for the same step: which of the two is the extra one is a matter of taste.
 */
function tallyExtras(report: Report | null, truth: Truth): Pick<VerdictTally, 'extras' | 'falseExtras'> {
  const free = (report?.notes ?? []).filter((note) => note.verdict === 'extra');
  const extras: Record<string, { there: number; found: number; named: number }> = {};
  for (const extra of truth.notes) {
    if (extra.verdict !== 'extra') continue;
    const tally = (extras[extra.extraKind ?? 'other'] ??= { there: 0, found: 0, named: 0 });
    tally.there++;
    const momentsSec =
      extra.extraKind === 'slip'
        ? [extra.timeSec]
        : truth.notes
            .filter((note) => note.midi === extra.midi && note.step === extra.step)
            .map((note) => note.timeSec);
    const at = free.findIndex(
      ({ midi, timeSec }) =>
        (midi - extra.midi) % 12 === 0 &&
        momentsSec.some((moment) => Math.abs(moment - timeSec) <= SAME_MOMENT_SEC),
    );
    if (at < 0) continue;
    const [found] = free.splice(at, 1);
    tally.found++;
    if (found!.extraKind === extra.extraKind) tally.named++;
  }
  return { extras, falseExtras: free.length };
}
