import { mean, median, quantile, standardDeviation } from '../../src/engine/base/statistics.ts';
import type { AttemptRecord } from './assess-attempt.ts';
import { doubted, evennessErrors, onsetErrorsMs, percent, sum } from './errors.ts';
import type { Records } from './errors.ts';
import { registerOf } from './labels.ts';
import type { Labels } from './labels.ts';
import { addCounts, fMeasure, precision, recall } from './note-score.ts';
import { fixed, table } from './table.ts';
import type { VerdictTally } from './verdict-score.ts';

/** Notes, onsets and trust, one row a group. */
export function groupTable(records: Records, label: keyof Labels): string {
  const groups = [...new Set(records.map(({ labels }) => labels[label]))].sort((a, b) =>
    a.localeCompare(b, 'en', { numeric: true }),
  );
  return table(
    [
      label,
      'attempts',
      'F ±50',
      'F ±25',
      'F ±10',
      'onset SD ms',
      'doubted',
      'false extra/100',
      'evenness pp p95',
    ],
    groups.map((group) => {
      const own = records.filter(({ labels }) => labels[label] === group);
      const right = sum(own, ({ verdicts }) => verdicts.right);
      return [
        group,
        String(own.length),
        ...([50, 25, 10] as const).map((windowMs) =>
          fixed(fMeasure(addCounts(own.map(({ within }) => within[windowMs]))), 4),
        ),
        fixed(standardDeviation(onsetErrorsMs(own)), 2),
        percent(sum(own, doubted), right, 2),
        fixed((100 * sum(own, ({ verdicts }) => verdicts.falseExtras)) / Math.max(right, 1), 2),
        fixed(quantile(evennessErrors(own), 0.95), 2),
      ];
    }),
  );
}

/** Notes heard by register: notes of the truth on one side, notes heard for nothing on the other. */
export function registerTable(records: Records): string {
  const notes = records.flatMap((record) => record.notes);
  const ghosts = records.flatMap((record) => record.ghosts);
  return table(
    ['register', 'notes', 'F ±50', 'recall', 'for nothing', 'onset mean ms', 'onset SD ms', 'beyond 10 ms'],
    [...new Set(notes.map(({ midi }) => registerOf(midi)))].sort().map((register) => {
      const own = notes.filter(({ midi }) => registerOf(midi) === register);
      const errors = own.flatMap(({ errorMs }) => (errorMs === null ? [] : [errorMs]));
      const nothing = ghosts.filter((midi) => registerOf(midi) === register).length;
      return [
        register.slice(2),
        String(own.length),
        fixed((2 * errors.length) / (own.length + errors.length + nothing), 4),
        fixed(errors.length / own.length, 4),
        String(nothing),
        fixed(mean(errors), 2),
        fixed(standardDeviation(errors), 2),
        percent(errors.filter((error) => Math.abs(error) > 10).length, errors.length),
      ];
    }),
  );
}

export function noteTable(records: Records): string {
  const rows = ([50, 25, 10] as const).map((windowMs) => {
    const counts = addCounts(records.map(({ within }) => within[windowMs]));
    return [
      `±${windowMs} ms`,
      fixed(fMeasure(counts), 4),
      fixed(precision(counts), 4),
      fixed(recall(counts), 4),
    ];
  });
  const plain = addCounts(records.map((record) => record.plain));
  rows.push([
    '±50 ms, no semitone forgiven',
    fixed(fMeasure(plain), 4),
    fixed(precision(plain), 4),
    fixed(recall(plain), 4),
  ]);
  return table(['listening alone', 'F', 'precision', 'recall'], rows);
}

export function verdictTable(records: Records): string {
  const tallies = records.map(({ verdicts }) => verdicts);
  const all = (of: (tally: VerdictTally) => number): number =>
    tallies.reduce((total, tally) => total + of(tally), 0);
  const row = (name: string, found: number, there: number, digits: number, named = ''): readonly string[] => [
    name,
    String(there),
    String(found),
    percent(found, there, digits),
    named,
  ];
  const right = all((t) => t.right);
  const falseExtras = all((t) => t.falseExtras);
  const kinds = [...new Set(tallies.flatMap((tally) => Object.keys(tally.extras)))].sort();
  return table(
    ['verdicts', 'there', 'found', 'share', 'named as such'],
    [
      row(
        'right notes called wrong',
        all((t) => t.rightCalledWrong),
        right,
        2,
      ),
      row(
        'right notes called missed',
        all((t) => t.rightCalledMissed),
        right,
        2,
      ),
      row(
        'right notes left unsure',
        all((t) => t.rightUnsure),
        right,
        2,
      ),
      row(
        'wrong notes',
        all((t) => t.wrongFound),
        all((t) => t.wrong),
        1,
      ),
      row(
        'missed notes',
        all((t) => t.missedFound),
        all((t) => t.missed),
        1,
      ),
      ...kinds.map((kind) => {
        const there = all((t) => t.extras[kind]?.there ?? 0);
        const named = percent(
          all((t) => t.extras[kind]?.named ?? 0),
          there,
        );
        return row(
          `extra: ${kind}`,
          all((t) => t.extras[kind]?.found ?? 0),
          there,
          1,
          named,
        );
      }),
      [
        'extras where there was none',
        '',
        String(falseExtras),
        `${fixed((100 * falseExtras) / Math.max(right, 1), 2)} per 100 notes`,
      ],
    ],
  );
}

/** Attempts that break off or are not what was asked for: how often the report says so. */
export function courseTable(records: Records): string {
  const kinds = [...new Set(records.map(({ labels }) => labels.hardship))].sort();
  return table(
    ['course', 'attempts', 'noticed'],
    kinds.map((kind) => {
      const own = records.filter(({ labels }) => labels.hardship === kind);
      const noticed = own.filter(({ courseRight }) => courseRight === true);
      return [kind, String(own.length), percent(noticed.length, own.length)];
    }),
  );
}

export function measureTable(records: Records): string {
  const of = (pick: (measures: NonNullable<AttemptRecord['measures']>) => number | null): readonly number[] =>
    records.flatMap(({ measures }) => {
      const value = measures === null ? null : pick(measures);
      return value === null ? [] : [value];
    });
  const rows: readonly (readonly [string, string, readonly number[]])[] = [
    ['evenness', 'pp', of((m) => m.evennessPp)],
    ['crossing delay', 'ms', records.flatMap(({ measures }) => measures?.crossingsMs ?? [])],
    ['tempo', '%', of((m) => m.tempoPercent)],
    ['level of a note', 'dB', records.flatMap(({ levelsDb }) => levelsDb)],
    ['level against the blow', 'dB', records.flatMap(({ blowsDb }) => blowsDb)],
    ['thumb accent', 'dB', of((m) => m.thumbAccentDb)],
    ['loudness evenness', 'dB', of((m) => m.loudnessEvennessDb)],
    ['chord spread', 'ms', of((m) => m.chordSpreadMs)],
    ['spread of a single chord', 'ms', records.flatMap(({ measures }) => measures?.chordSpreadsMs ?? [])],
    ['inner balance', 'dB', of((m) => m.innerBalanceDb)],
    ['change gap', 'ms', of((m) => m.changeGapMs)],
    ['hands: who leads', 'ms', of((m) => m.leadMs)],
    ['hands: SD apart', 'ms', of((m) => m.apartSdMs)],
    ['touch', 'ms', of((m) => m.touchMs)],
    ['tuning', 'cents', records.flatMap(({ tuningCents }) => tuningCents ?? [])],
  ];
  return table(
    ['measure, reported − true', 'count', 'median', '95 %', 'mean'],
    rows.map(([name, unit, errors]) => [
      name,
      String(errors.length),
      `${fixed(median(errors.map(Math.abs)), 2)} ${unit}`,
      `${fixed(quantile(errors.map(Math.abs), 0.95), 2)} ${unit}`,
      `${fixed(mean(errors), 2)} ${unit}`,
    ]),
  );
}

export function summaryLine(records: Records): string {
  const sound = sum(records, ({ soundSec }) => soundSec);
  const engine = sum(records, ({ engineSec }) => engineSec);
  const count = (of: (record: AttemptRecord) => boolean): number => records.filter(of).length;
  const share = (of: (record: AttemptRecord) => boolean): string => percent(count(of), records.length);
  return [
    `${records.length} attempts, ${sum(records, ({ notes }) => notes.length)} notes, ${sound.toFixed(0)} s of sound`,
    `engine ${(sound / engine).toFixed(0)} times real time`,
    `exercise recognised from the sound ${share(({ recognised }) => recognised === 'yes')}`,
    `and a semitone off ${share(({ recognised }) => recognised === 'a semitone off')}`,
    `octave right ${share(({ octaveRight }) => octaveRight)}`,
    `without a report ${count(({ measures }) => measures === null)}`,
    `crashed ${count(({ crash }) => crash !== null)}`,
  ].join('; ');
}
