/**
 * How right the engine is, on attempts rendered in memory from real piano samples:
 * `npm run bench:accuracy [-- --piano test|dev|both --count 200 --hard 60 --forms 60 --quick --codecs --workers 2 --json
 * out.json]`.
 * The same seeds every time. `--count` attempts of the standard set for each piano, `--hard` of each harder set, `--forms`
 * of the forms that are heard only where they were chosen.
 * `--ideal` leaves listening out: the strokes are handed on as if heard without error. `--codecs` needs ffmpeg on the machine. Prints tables and never fails.
 */
import { writeFileSync } from 'node:fs';
import { parseArgs } from 'node:util';
import { listen } from '../../src/engine/index.ts';
import { OTHER_SOUNDS, otherSound } from '../support/other-sounds.ts';
import type { PianoName } from '../support/render.ts';
import type { AttemptRecord } from './assess-attempt.ts';
import type { AttemptSet, ChordSet } from './attempts.ts';
import type { Labels } from './labels.ts';
import { runAll } from './pool.ts';
import { fixed, table } from './table.ts';
import {
  courseTable,
  groupTable,
  measureTable,
  noteTable,
  registerTable,
  summaryLine,
  verdictTable,
} from './tables.ts';
import { targetTable } from './targets.ts';
import type { Task } from './worker.ts';

const { values } = parseArgs({
  options: {
    piano: { type: 'string', default: 'both' },
    count: { type: 'string', default: '200' },
    hard: { type: 'string', default: '60' },
    forms: { type: 'string', default: '60' },
    quick: { type: 'boolean', default: false },
    ideal: { type: 'boolean', default: false },
    codecs: { type: 'boolean', default: false },
    workers: { type: 'string', default: '2' },
    json: { type: 'string' },
  },
});

const count = values.quick ? 24 : Number(values.count);
const hard = values.quick ? Math.min(8, Number(values.hard)) : Number(values.hard);
const pianos = (['dev', 'test'] as const).filter((name) => values.piano === 'both' || values.piano === name);
const SETS: Readonly<Record<Exclude<AttemptSet, ChordSet>, number>> = {
  standard: count,
  forms: values.quick ? Math.min(8, Number(values.forms)) : Number(values.forms),
  chords: hard,
  together: hard,
  hard,
  course: hard,
  codec: values.codecs ? hard : 0,
};

const tasks = pianos.flatMap((piano) =>
  (Object.keys(SETS) as (keyof typeof SETS)[]).flatMap((set) =>
    Array.from({ length: SETS[set] }, (_, index): Task => ({ set, piano, index, ideal: values.ideal })),
  ),
);
const records = await runAll<Task, AttemptRecord>('worker.ts', tasks, Math.max(1, Number(values.workers)));

const STANDARD_GROUPS: readonly (keyof Labels)[] = [
  'form',
  'hands',
  'speed',
  'noise level',
  'noise kind',
  'room',
  'microphone',
  'tuning',
  'touch',
  'mistakes',
];

const heading = (text: string): void => console.log(`\n## ${text}\n`);
const show = (text: string): void => console.log(`${text}\n`);
const PIANO_TITLES: Readonly<Record<PianoName, string>> = {
  dev: 'development piano',
  test: 'test piano (kept out of training)',
  other: 'another piano',
};

for (const piano of pianos) {
  const own = records.filter(({ labels }) => labels.piano === piano);
  const of = (set: AttemptSet): readonly AttemptRecord[] => own.filter((record) => record.set === set);
  heading(`${PIANO_TITLES[piano]}: standard set`);
  show(summaryLine(of('standard')));
  show(noteTable(of('standard')));
  show(verdictTable(of('standard')));
  show(measureTable(of('standard')));
  show(registerTable(of('standard')));
  for (const label of STANDARD_GROUPS) show(groupTable(of('standard'), label));
  const OTHERS: readonly [AttemptSet, string, keyof Labels][] = [
    ['chords', 'chords, one hand', 'form'],
    ['forms', 'forms beyond the set', 'form'],
    ['together', 'hands together', 'form'],
    ['hard', 'hard conditions', 'hardship'],
    ['codec', 'sent by a messenger', 'hardship'],
  ];
  for (const [set, title, label] of OTHERS) {
    if (of(set).length === 0) continue;
    heading(`${PIANO_TITLES[piano]}: ${title}`);
    show(summaryLine(of(set)));
    show(noteTable(of(set)));
    show(verdictTable(of(set)));
    show(measureTable(of(set)));
    show(groupTable(of(set), label));
  }
  if (of('course').length === 0) continue;
  heading(`${PIANO_TITLES[piano]}: the course of the attempt`);
  show(courseTable(of('course')));
}

heading('sounds that are no piano, 8 s each: notes heard for nothing');
show(otherSoundsTable());

for (const piano of pianos) {
  heading(`against the targets: ${PIANO_TITLES[piano]}, standard set`);
  show(targetTable(records.filter(({ labels, set }) => labels.piano === piano && set === 'standard')));
}
showCrashes();
if (values.json !== undefined) writeFileSync(values.json, JSON.stringify(records));

function otherSoundsTable(): string {
  const SEEDS = [1, 2, 3];
  return table(
    ['sound', 'notes, mean of 3', 'findings'],
    OTHER_SOUNDS.map((kind) => {
      const all = SEEDS.map((seed) => listen(otherSound(kind, 8, seed)));
      const findings = new Set(all.flatMap((heard) => heard.findings.map((finding) => finding.kind)));
      const notes = all.reduce((total, heard) => total + heard.notes.length, 0) / SEEDS.length;
      return [kind, fixed(notes, 1), [...findings].join(', ')];
    }),
  );
}

/** One line a place in the code where attempts broke, with the first of them. */
function showCrashes(): void {
  const crashed = records.filter(({ crash }) => crash !== null);
  const placeOf = ({ crash }: AttemptRecord): string => crash?.match(/at .*/)?.[0] ?? crash ?? '';
  for (const place of new Set(crashed.map(placeOf))) {
    const [first, ...rest] = crashed.filter((record) => placeOf(record) === place);
    const { labels, set, index, crash } = first!;
    console.log(`crashed: ${labels.piano} ${set} #${index} and ${rest.length} more: ${crash}`);
  }
}
