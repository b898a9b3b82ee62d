/**
 * What is said of players of whom everything is known: `npm run bench:verdict [-- --quick --rounds 5 --series 45 --piano
 * test|dev --notes --workers 2 --json out.json --list --only "drift;lasting rubato"]`.
 *
 * A round is 113 attempts by 38 kinds of players, a third of them rendered (with `--piano test` on the piano that was kept out of
 * training; for work on the product `--piano dev`), the rest lists of notes with the ear's measured errors (verdict/ear-model.ts),
 * as with `--notes` all are. `--series` adds players who are judged by their last four attempts. `--list` prints every false
 * accusation and every fault passed over, with its sentence; `--only` keeps the players of these names. `--known 4` adds the loudness of notes at so many pianos and rooms
 * that were listened to ten times before. The same seeds every time. Prints tables and never fails.
 */
import { writeFileSync } from 'node:fs';
import { parseArgs } from 'node:util';
import { runAll } from './pool.ts';
import { ROUND_LENGTH, seriesAttempt, verdictAttempt } from './verdict/attempts.ts';
import type { Source } from './verdict/attempts.ts';
import type { VerdictRecord } from './verdict/judge.ts';
import type { LoudnessErrors } from './verdict/known-piano.ts';
import type { KnownTask } from './verdict/known-worker.ts';
import { accusedTable, aimTable, knownTable, plusMinusTable, scenarioTable } from './verdict/tables.ts';
import type { VerdictTask } from './verdict/worker.ts';

const { values } = parseArgs({
  options: {
    quick: { type: 'boolean', default: false },
    rounds: { type: 'string', default: '5' },
    series: { type: 'string', default: '45' },
    piano: { type: 'string', default: 'test' },
    notes: { type: 'boolean', default: false },
    workers: { type: 'string', default: '2' },
    json: { type: 'string' },
    list: { type: 'boolean', default: false },
    known: { type: 'string', default: '0' },
    only: { type: 'string', default: '' },
  },
});

const source: Source = values.notes ? 'notes' : values.piano === 'dev' ? 'dev' : 'test';
const rounds = values.quick ? 1 : Number(values.rounds);
const series = values.quick ? 9 : Number(values.series);
const workers = Math.max(1, Number(values.workers));
const tasks: readonly VerdictTask[] = [
  ...Array.from({ length: Math.round(rounds * ROUND_LENGTH) }, (_, index) => ({
    series: false,
    index,
    source,
  })),
  ...Array.from({ length: series }, (_, index) => ({ series: true, index, source: 'notes' as Source })),
];
const only = values.only === '' ? null : values.only.split(';');
const isAsked = ({ series: inSeries, index }: VerdictTask): boolean =>
  only?.includes((inSeries ? seriesAttempt(index) : verdictAttempt(index, source)).scenario.name) ?? true;
const records = await runAll<VerdictTask, VerdictRecord>('verdict/worker.ts', tasks.filter(isAsked), workers);

const rendered = records.filter(({ source }) => source !== 'notes');
const lists = records.filter(({ source }) => source === 'notes');
const show = (heading: string, text: string): void => console.log(`\n## ${heading}\n\n${text}`);
show(`all ${records.length} attempts`, aimTable(records));
if (rendered.length > 0) show(`the ${rendered.length} rendered on the ${source} piano`, aimTable(rendered));
if (lists.length > 0) show(`the ${lists.length} lists of notes`, aimTable(lists));
show('of what the innocent were accused', accusedTable(records));
show('by kind of player', scenarioTable(records));
if (rendered.length > 0) show('± of the figures, rendered attempts', plusMinusTable(rendered));
if (lists.length > 0) show('± of the figures, lists of notes', plusMinusTable(lists));
if (Number(values.known) > 0) await showKnownPianos(Number(values.known));
if (values.list) showFailures();
if (values.json !== undefined) writeFileSync(values.json, JSON.stringify(records));

async function showKnownPianos(count: number): Promise<void> {
  const piano = source === 'test' ? 'test' : 'dev';
  const all = await runAll<KnownTask, LoudnessErrors>(
    'verdict/known-worker.ts',
    Array.from({ length: count }, (_, index) => ({ piano, seed: index + 1 })),
    workers,
  );
  show(`loudness of a note against the force of its blow, ${piano} piano in ${count} rooms`, knownTable(all));
  show('± of the figures of loudness by force, the keys known', plusMinusTable(all));
}

function showFailures(): void {
  for (const {
    index,
    scenario,
    source,
    accused,
    forbidden,
    first,
    gravest,
    falseNotes,
    sentence,
  } of records) {
    const noteCount = falseNotes.wrong + falseNotes.missed + falseNotes.extra;
    if (accused.length + forbidden.length + noteCount === 0 && first === gravest) continue;
    const falsely = [...accused, ...forbidden, ...(noteCount > 0 ? [`${noteCount} notes falsely`] : [])];
    console.log(
      `#${index} ${source}, ${scenario} [${falsely.join(', ')}] ${gravest} → ${first}: ${sentence}`,
    );
  }
}
