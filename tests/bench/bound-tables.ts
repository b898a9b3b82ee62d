import { mean, quantile, standardDeviation } from '../../src/engine/base/statistics.ts';
import type { Hand, Recheck, Report } from '../../src/engine/index.ts';
import { presenceOf } from '../../src/engine/recheck/hands.ts';
import type { Truth } from '../support/render.ts';
import { percent } from './errors.ts';
import { fixed, table } from './table.ts';

/** One written key that the closer look was asked about. */
export interface LookRecord {
  readonly truth: 'struck' | 'wrong' | 'absent';
  readonly hand: Hand;
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
    const { hands } = truth.exercise;
    const isOther = hands !== 'together' && one.hand !== hands;
    const left = isOther || truth.missed.some(({ step, hand, midi }) => isAt(one, step, hand, midi));
    if (note === undefined && !left) return [];
    const kind = note === undefined ? 'absent' : note.verdict === 'wrong' ? 'wrong' : 'struck';
    return [{ truth: kind, hand: one.hand, reported: one.blind === 'correct', logOdds: one.logOdds }];
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

/** One written note in so many is left out (common practice, no source). */
const LEFT_OUT = 1 / 50;

/** Notes that were not reported, by their log odds: from where on nine in ten were struck, if one in fifty is left out, they may be believed. */
export function believedTable(attempts: readonly (readonly LookRecord[])[]): string {
  const all = attempts.flat();
  const isStruck = ({ truth }: LookRecord): boolean => truth === 'struck';
  const struck = all.filter(isStruck).length;
  const absent = all.length - struck;
  return table(
    ['not reported, log odds from', 'to', 'struck', 'not struck', 'struck, if one in fifty is left out'],
    BOUNDS.slice(1).map((to, index) => {
      const from = BOUNDS[index]!;
      const own = all.filter(({ reported, logOdds }) => !reported && logOdds >= from && logOdds < to);
      const here = own.filter(isStruck).length;
      const believed = ((1 - LEFT_OUT) * here) / Math.max(struck, 1);
      const passedOver = (LEFT_OUT * (own.length - here)) / Math.max(absent, 1);
      return [
        String(from),
        String(to),
        String(here),
        String(own.length - here),
        percent(believed, believed + passedOver),
      ];
    }),
  );
}

/** Whether the upper hand is told to be there, in attempts of both hands and in those of the lower one alone. */
export function presenceTable(groups: Readonly<Record<string, readonly (readonly LookRecord[])[]>>): string {
  return table(
    ['upper hand', 'attempts', 'there', 'unknown', 'not there', 'log odds: mean', 'SD', '99 of 100 under'],
    Object.entries(groups).map(([name, attempts]) => {
      const own = attempts
        .map((looks) => looks.flatMap(({ hand, logOdds }) => (hand === 'right' ? [logOdds] : [])))
        .filter(({ length }) => length > 0);
      const told = own.map(presenceOf);
      const count = (presence: string): string => String(told.filter((one) => one === presence).length);
      const all = own.flat();
      return [
        name,
        String(own.length),
        count('there'),
        count('unknown'),
        count('not-there'),
        ...[mean(all), standardDeviation(all), quantile(all, 0.99)].map((value) => fixed(value, 1)),
      ];
    }),
  );
}
