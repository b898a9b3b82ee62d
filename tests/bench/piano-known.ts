/**
 * Students whose pianos stand so flat or sharp that they read a semitone off: `npm run bench:piano-known [-- --piano test] [--students 20]`.
 * Each hands in four attempts; the teacher says of the first what it was, and all others are recognised from the sound alone, before
 * and after. A last row plays another piano, in tune, by a student whose flat one is known. What was heard is kept in node_modules/.cache.
 */
import { parseArgs } from 'node:util';
import { assessHeard, recogniseFrom, settledTuning } from '../../src/engine/index.ts';
import type { Heard } from '../../src/engine/index.ts';
import { renderPerformance } from '../support/render.ts';
import type { PianoName } from '../support/render.ts';
import { homeOf } from './attempts.ts';
import { chanceFor, deskAttempt, deskExercise } from './desk-attempts.ts';
import type { DeskAttempt } from './desk-attempts.ts';
import { outcomeOf } from './desk-score.ts';
import { heardCached } from './heard-cached.ts';
import { table } from './table.ts';

const { values } = parseArgs({
  options: { piano: { type: 'string', default: 'dev' }, students: { type: 'string', default: '20' } },
});
const piano = values.piano as PianoName;
const students = Number(values.students);
const ATTEMPTS = 4;
/** True tunings, cents, and that of what is handed in after the correction where it is another piano's. */
const BANDS = [
  { name: '60 to 90 cents flat', from: -90, to: -60 },
  { name: '15 to 40 cents sharp', from: 15, to: 40 },
  { name: 'another piano, in tune', from: -90, to: -60, others: { from: -2, to: 8 } },
] as const;

type Played = DeskAttempt & { readonly heard: Heard };

/** One attempt in three has mistakes; rooms, noises and registers as in `bench:desk`. */
async function played(index: number, tuningCents: number): Promise<Played> {
  const random = chanceFor(`piano known ${piano}`, index);
  const course = index % 3 === 2 ? 'mistakes' : 'clean';
  const attempt = deskAttempt(deskExercise(index, random), course, random);
  const home = { ...homeOf(random.fork('home')), tuningCents };
  const spec = { seed: index, piano, exercise: attempt.exercise, home };
  const heard = await heardCached([attempt.performance, spec], () =>
    renderPerformance(attempt.performance, spec),
  );
  return { ...attempt, heard };
}

/** What the teacher's word on one attempt tells of the piano; null: nothing, and the next one is asked for. */
function correctedTo({ heard, exercise }: Played): number | null {
  const told = assessHeard(heard, exercise);
  return told.kind === 'report' ? settledTuning(told.report) : null;
}

const rows: string[][] = [];
for (const [band, { name, from, to, ...more }] of BANDS.entries()) {
  const others = 'others' in more ? more.others : null;
  const tally = { corrections: 0, errors: [] as number[], of: 0, before: 0, after: 0, off: 0 };
  for (let student = 0; student < students; student++) {
    const random = chanceFor(`tuning ${band}`, student);
    const tuningCents = random.uniform(from, to);
    const elsewhere = others === null ? tuningCents : random.uniform(others.from, others.to);
    let known: number | null = null;
    for (let at = 0; at < ATTEMPTS; at++) {
      const one = await played(
        1000 * band + ATTEMPTS * student + at,
        known === null ? tuningCents : elsewhere,
      );
      if (process.stderr.isTTY) process.stderr.write(`\r${name} ${student + 1} of ${students} `);
      if (known === null) {
        known = correctedTo(one);
        tally.corrections++;
        if (known !== null) tally.errors.push(Math.abs(known - tuningCents));
        continue;
      }
      const tell = (pianoCents: number | null) =>
        outcomeOf(recogniseFrom(one.heard, { pianoCents }), one.exercise, one.octaveShift);
      tally.of++;
      if (tell(null) === 'right') tally.before++;
      const after = tell(known);
      if (after === 'right') tally.after++;
      if (after === 'a semitone off') tally.off++;
    }
  }
  const share = (part: number): string => `${((100 * part) / tally.of).toFixed(1)} %`;
  rows.push([
    name,
    String(tally.of),
    share(tally.before),
    share(tally.after),
    String(tally.off),
    (tally.corrections / students).toFixed(2),
    Math.max(...tally.errors).toFixed(1),
  ]);
}
console.log(
  `\nRecognised exactly, ${piano} piano, ${students} students of each kind with ${ATTEMPTS} attempts\n`,
);
console.log(
  table(
    ['', 'attempts', 'before', 'after', 'a semitone off', 'corrections needed', 'largest error, cents'],
    rows,
  ),
);
