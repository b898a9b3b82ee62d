import { median, quantile, standardDeviation } from '../../src/engine/base/statistics.ts';
import { crossingErrors, doubted, evennessErrors, onsetErrorsMs, sum, tuningErrors } from './errors.ts';
import type { Records } from './errors.ts';
import { addCounts, fMeasure } from './note-score.ts';
import { fixed, table } from './table.ts';

/** What was promised against what was measured, in the order of the promise. */
export function targetTable(records: Records): string {
  const verdicts = records.map((record) => record.verdicts);
  const all = (of: (tally: (typeof verdicts)[number]) => number): number =>
    verdicts.reduce((total, tally) => total + of(tally), 0);
  const f = (windowMs: 10 | 50): number => fMeasure(addCounts(records.map(({ within }) => within[windowMs])));
  const extras = (of: 'there' | 'found'): number =>
    all((tally) => Object.values(tally.extras).reduce((total, kind) => total + kind[of], 0));
  const right = all((tally) => tally.right);
  const row = (
    name: string,
    target: string,
    value: number | undefined,
    met: boolean,
    digits = 2,
  ): string[] => [
    name,
    target,
    fixed(value, digits),
    value === undefined || Number.isNaN(value) ? 'not measured' : met ? 'met' : 'NOT MET',
  ];
  const rightDoubted = (100 * sum(records, doubted)) / right;
  const wrongFound = (100 * all((t) => t.wrongFound)) / all((t) => t.wrong);
  const missedFound = (100 * all((t) => t.missedFound)) / all((t) => t.missed);
  const extraFound = (100 * extras('found')) / extras('there');
  const falseExtras = (100 * all((t) => t.falseExtras)) / right;
  const onsetSd = standardDeviation(onsetErrorsMs(records)) ?? NaN;
  const evenness = evennessErrors(records);
  const levelSd = standardDeviation(records.flatMap(({ levelsDb }) => levelsDb)) ?? NaN;
  const tuning = tuningErrors(records);
  const crossing = median(crossingErrors(records)) ?? NaN;
  const evennessMedian = median(evenness) ?? NaN;
  const evennessP95 = quantile(evenness, 0.95) ?? NaN;
  const tuningP95 = quantile(tuning, 0.95) ?? NaN;
  return table(
    ['target', 'wanted', 'measured', ''],
    [
      row('F ±50 ms', '≥ 0.995', f(50), f(50) >= 0.995, 4),
      row('F ±10 ms', '≥ 0.985', f(10), f(10) >= 0.985, 4),
      row('onset SD, A2–C7', '≤ 2.5 ms', onsetSd, onsetSd <= 2.5),
      row('right notes called wrong or missed', '≤ 0.3 %', rightDoubted, rightDoubted <= 0.3),
      row('wrong notes found', '≥ 98 %', wrongFound, wrongFound >= 98, 1),
      row('missed notes found', '≥ 98 %', missedFound, missedFound >= 98, 1),
      row('extra notes found', '≥ 95 %', extraFound, extraFound >= 95, 1),
      row('false extras per 100 notes', '≤ 0.5', falseExtras, falseExtras <= 0.5),
      row('evenness error, median', '≤ 0.3 pp', evennessMedian, evennessMedian <= 0.3),
      row('evenness error, 95 %', '≤ 1.0 pp', evennessP95, evennessP95 <= 1),
      row('crossing delay error, median', '≤ 5 ms', crossing, crossing <= 5),
      row('loudness error, SD', '≤ 1.0 dB', levelSd, levelSd <= 1),
      row('tuning error, 95 %', '≤ 3 cents', tuningP95, tuningP95 <= 3),
      row('tuning error, greatest', '≤ 3 cents', quantile(tuning, 1), (quantile(tuning, 1) ?? 9) <= 3),
    ],
  );
}
