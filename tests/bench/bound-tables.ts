import type { Recheck, Report } from '../../src/engine/index.ts';
import type { Truth } from '../support/render.ts';
import { percent } from './errors.ts';
import { table } from './table.ts';

/** One written key that the closer look was asked about. */
export interface LookRecord {
  readonly truth: 'struck' | 'wrong' | 'absent';
  /** the blind ear had reported it */
  readonly reported: boolean;
  readonly logOdds: number;
}

/** What was asked about written notes, beside what is true of them; questions whose place is not told are left out. */
export function looksOf(
  rechecks: readonly Recheck[],
  report: Report | null,
  truth: Truth,
): readonly LookRecord[] {
  if (report === null) return [];
  const isAt = (one: Recheck, step: number | null, hand: string, midi: number): boolean =>
    one.step === step && one.hand === hand && (one.midi - midi) % 12 === 0;
  return rechecks.flatMap((one): readonly LookRecord[] => {
    if (one.asked !== 'written') return [];
    const note = truth.notes.find(
      ({ step, hand, midi, wantedMidi, verdict }) =>
        verdict !== 'extra' && isAt(one, step, hand, wantedMidi ?? midi),
    );
    const left = truth.missed.some(({ step, hand, midi }) => isAt(one, step, hand, midi));
    if (note === undefined && !left) return [];
    const kind = note === undefined ? 'absent' : note.verdict === 'wrong' ? 'wrong' : 'struck';
    return [{ truth: kind, reported: one.blind === 'correct', logOdds: one.logOdds }];
  });
}

const BOUNDS = [-5, -4, -3, -2.5, -2, -1.5, -1, -0.5, 0, 0.5, 1, 1.5, 2, 3];

/**
 * What lies below a bound, where the blind ear had reported the note and where it had not: what is to be accused there of the struck ones,
 * and found of those left out. Two such bounds, and between them unsure.
 */
export function boundTable(attempts: readonly (readonly LookRecord[])[]): string {
  const all = attempts.flat();
  const count = (some: readonly LookRecord[], struck: boolean, reported: boolean, below: number): number =>
    some.filter(
      (one) => (one.truth === 'struck') === struck && one.reported === reported && one.logOdds < below,
    ).length;
  const struck = all.filter(({ truth }) => truth === 'struck').length;
  const absent = all.length - struck;
  return table(
    [
      `below, of ${struck} struck and ${absent} not`,
      'reported: struck',
      'attempts',
      'not struck',
      'not reported: struck',
      'attempts',
      'not struck',
    ],
    BOUNDS.map((bound) => [
      String(bound),
      ...[true, false].flatMap((reported) => [
        percent(count(all, true, reported, bound), struck, 3),
        percent(attempts.filter((some) => count(some, true, reported, bound) > 0).length, attempts.length),
        percent(count(all, false, reported, bound), absent),
      ]),
    ]),
  );
}
