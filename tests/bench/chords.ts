/**
 * Chords and both hands against their aims:
 * `npm run bench:chords [-- --piano test,dev,other --count 120 --conditions 6 --aims 12 --sets one-hand,…,aims --bounds --quick --ideal
 * --workers 2 --json out.json]`.
 * The same seeds every time. `--count` attempts of each set, `--conditions` of each hard condition, two thirds of these
 * with both hands, `--aims` of each row of what both hands are to reach, on each piano; the other sets are played on the first. `--bounds`
 * adds what the bounds of the closer look are chosen by. `--ideal` leaves listening out. Without ffmpeg the codecs' rows say so. Prints tables and never fails.
 */
import { spawnSync } from 'node:child_process';
import { writeFileSync } from 'node:fs';
import { parseArgs } from 'node:util';
import type { PianoName } from '../support/render.ts';
import type { AttemptRecord } from './assess-attempt.ts';
import type { ChordSet } from './attempts.ts';
import { AIM_ROWS } from './aim-attempts.ts';
import { aimTable } from './aim-tables.ts';
import { believedTable, boundTable, presenceTable } from './bound-tables.ts';
import { CHORD_SETS, CONDITIONS } from './chord-attempts.ts';
import { chordTargetTable } from './chord-targets.ts';
import { CODECS } from './codec.ts';
import { doubted, percent, sum } from './errors.ts';
import type { Records } from './errors.ts';
import { faultTable } from './fault-kinds.ts';
import { addCounts, fMeasure } from './note-score.ts';
import { GROUPINGS, placeTable } from './place-tables.ts';
import { runAll } from './pool.ts';
import { fixed, table } from './table.ts';
import { groupTable, measureTable, summaryLine, verdictTable } from './tables.ts';
import type { Task } from './worker.ts';

const { values } = parseArgs({
  options: {
    piano: { type: 'string', default: 'test' },
    count: { type: 'string', default: '120' },
    conditions: { type: 'string', default: '6' },
    aims: { type: 'string', default: '12' },
    sets: { type: 'string', default: CHORD_SETS.join(',') },
    bounds: { type: 'boolean', default: false },
    quick: { type: 'boolean', default: false },
    ideal: { type: 'boolean', default: false },
    workers: { type: 'string', default: '2' },
    json: { type: 'string' },
  },
});

/** What a condition must reach. */
const CONDITION_F = 0.95;
const pianos = values.piano
  .split(',')
  .filter((name): name is PianoName => name === 'test' || name === 'dev' || name === 'other');
const piano = pianos[0] ?? 'test';
const sets = CHORD_SETS.filter((set) => values.sets.split(',').includes(set));
const count = values.quick ? 12 : Number(values.count);
const ofEach = values.quick ? 3 : Number(values.conditions);
const aims = (values.quick ? 1 : Number(values.aims)) * Object.keys(AIM_ROWS).length;
const conditions = Object.keys(CONDITIONS);
const ffmpeg = spawnSync('ffmpeg', ['-version']).status === 0;

const tasks = sets.flatMap((set) => {
  if (set === 'aims')
    return pianos.flatMap((own) =>
      Array.from({ length: aims }, (_, index): Task => ({ set, piano: own, index, ideal: values.ideal })),
    );
  return Array.from(
    { length: set === 'conditions' ? conditions.length * ofEach : count },
    (_, index): Task => ({
      set,
      piano,
      index,
      ideal: values.ideal,
    }),
  ).filter(
    ({ index }) => set !== 'conditions' || ffmpeg || !(conditions[index % conditions.length]! in CODECS),
  );
});
const records = await runAll<Task, AttemptRecord>('worker.ts', tasks, Math.max(1, Number(values.workers)));
const of = (set: ChordSet): Records => records.filter((record) => record.set === set);
const show = (text: string): void => console.log(`${text}\n`);

const TITLES: Readonly<Record<Exclude<ChordSet, 'conditions' | 'aims' | 'one-of-two'>, string>> = {
  'one-hand': 'chords of one hand',
  'both-hands': 'hands together',
  'octave-pairs': 'hands an octave apart, one leaving notes out, up to 12 dB unequal',
  kinds: 'wrong notes of both hands that are hard to tell for what they are',
};
for (const set of sets) {
  if (set === 'conditions' || set === 'aims' || set === 'one-of-two') continue;
  console.log(`\n## ${TITLES[set]} (${piano} piano)\n`);
  show(summaryLine(of(set)));
  show(chordTargetTable(set, of(set)));
  show(faultTable(of(set)));
  show(verdictTable(of(set)));
  show(measureTable(of(set)));
  show(groupTable(of(set), 'form'));
  for (const by of Object.keys(GROUPINGS)) {
    if (set === 'octave-pairs')
      for (const part of ['lower', 'upper'] as const) show(placeTable(of(set), by, part));
    else if (by !== 'this hand against the other') show(placeTable(of(set), by, null));
  }
}
if (sets.includes('conditions')) {
  console.log(`\n## hard conditions (${piano} piano), chords of one hand and both hands\n`);
  show(conditionTable(of('conditions')));
}
if (sets.includes('aims')) {
  console.log(`\n## both hands, row by row (${pianos.join(', ')})\n`);
  show(aimTable(of('aims')));
}
if (values.bounds) {
  console.log('\n## where the closer look may decide: log odds of written notes, all sets\n');
  const both = records.filter(({ set }) => set !== 'one-of-two').map(({ looks }) => looks);
  show(boundTable(both));
  show(believedTable(both));
  show(presenceTable({ there: both, 'not there': of('one-of-two').map(({ looks }) => looks) }));
  console.log('hands apart known\n');
  const apart = records.filter(({ labels }) => AIM_ROWS[labels.hardship]?.apart === true);
  show(boundTable(apart.map(({ looks }) => looks)));
}
for (const { set, index, crash } of records)
  if (crash !== null) console.log(`crashed: ${set} #${index}: ${crash}`);
if (values.json !== undefined) writeFileSync(values.json, JSON.stringify(records));

/** F after recheck of each condition by itself, and how often the report says that it cannot judge. */
function conditionTable(all: Records): string {
  return table(
    [
      'condition',
      'attempts',
      'F ±50',
      'wanted',
      '',
      'F ±25',
      'one hand',
      'both',
      'doubted',
      'unsure',
      'no report',
      'findings',
    ],
    conditions.map((condition) => {
      const own = all.filter(({ labels }) => labels.hardship === condition);
      if (own.length === 0) return [condition, '0', '–', `≥ ${CONDITION_F}`, 'not measured'];
      const f = (some: Records, windowMs: 25 | 50): number =>
        fMeasure(addCounts(some.map(({ final }) => final[windowMs])));
      const right = sum(own, ({ verdicts }) => verdicts.right);
      const together = ({ labels }: AttemptRecord): boolean => labels.hands === 'together';
      const found = new Set(own.flatMap(({ findings }) => findings));
      return [
        condition,
        String(own.length),
        fixed(f(own, 50), 4),
        `≥ ${CONDITION_F}`,
        f(own, 50) >= CONDITION_F ? 'met' : 'NOT MET',
        fixed(f(own, 25), 4),
        fixed(
          f(
            own.filter((one) => !together(one)),
            50,
          ),
          4,
        ),
        fixed(f(own.filter(together), 50), 4),
        percent(sum(own, doubted), right, 1),
        percent(
          sum(own, ({ verdicts }) => verdicts.rightUnsure),
          right,
          1,
        ),
        String(own.filter(({ measures }) => measures === null).length),
        [...found].join(', '),
      ];
    }),
  );
}
