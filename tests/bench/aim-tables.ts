import { standardDeviation } from '../../src/engine/base/statistics.ts';
import { AIM_ROWS } from './aim-attempts.ts';
import { doubted, percent, sum } from './errors.ts';
import type { Records } from './errors.ts';
import { addCounts, fMeasure } from './note-score.ts';
import { pairCounts } from './place-tables.ts';
import { fixed, table } from './table.ts';

const HEAD = [
  'row',
  'attempts',
  'F ±50',
  'wanted',
  '',
  'worst piano',
  'onset SD ms',
  'accused',
  'attempts accused',
  'unsure',
  'attempts unsure',
  'faults found',
  '… missed',
  '… wrong',
  'false extra/100',
  'upper found',
  'invented',
];

/** Each row against its aim, over all pianos played and on the worst of them; then all rows of two hands together, and each piano. */
export function aimTable(records: Records): string {
  const both = records.filter(({ labels }) => labels.hands === 'together');
  const pianos = [...new Set(records.map(({ labels }) => labels.piano))];
  return table(HEAD, [
    ...Object.entries(AIM_ROWS).map(([name, { wanted }]) =>
      aimRow(
        name,
        records.filter(({ labels }) => labels.hardship === name),
        wanted,
      ),
    ),
    aimRow('all rows of two hands', both, null),
    ...pianos.map((piano) =>
      aimRow(
        `… ${piano}`,
        both.filter(({ labels }) => labels.piano === piano),
        null,
      ),
    ),
  ]);
}

function aimRow(name: string, own: Records, wanted: number | null): readonly string[] {
  if (own.length === 0) return [name, '0'];
  const f = (some: Records): number => fMeasure(addCounts(some.map(({ final }) => final[50])));
  const right = sum(own, ({ verdicts }) => verdicts.right);
  const unsure = ({ verdicts }: Records[number]): number => verdicts.rightUnsure;
  const wrong = sum(own, ({ verdicts }) => verdicts.wrong);
  const missed = sum(own, ({ verdicts }) => verdicts.missed);
  const wrongFound = sum(own, ({ verdicts }) => verdicts.wrongFound);
  const missedFound = sum(own, ({ verdicts }) => verdicts.missedFound);
  const upper = pairCounts(own, 'upper');
  const byPiano = [...new Set(own.map(({ labels }) => labels.piano))].map((piano) =>
    f(own.filter(({ labels }) => labels.piano === piano)),
  );
  return [
    name,
    String(own.length),
    fixed(f(own), 4),
    wanted === null ? '' : `≥ ${wanted}`,
    wanted === null ? '' : f(own) >= wanted ? 'met' : 'NOT MET',
    fixed(Math.min(...byPiano), 4),
    fixed(standardDeviation(own.flatMap(({ finalErrorsMs }) => finalErrorsMs)), 2),
    percent(sum(own, doubted), right, 2),
    percent(own.filter((one) => doubted(one) > 0).length, own.length),
    percent(sum(own, unsure), right, 2),
    percent(own.filter((one) => unsure(one) > 0).length, own.length),
    percent(wrongFound + missedFound, wrong + missed),
    percent(missedFound, missed),
    percent(wrongFound, wrong),
    fixed((100 * sum(own, ({ verdicts }) => verdicts.falseExtras)) / Math.max(right, 1), 2),
    upper.struck === 0 ? '–' : percent(upper.recall * upper.struck, upper.struck),
    upper.absent === 0 ? '–' : percent(upper.invented, upper.absent),
  ];
}
