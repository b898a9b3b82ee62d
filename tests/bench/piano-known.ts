/**
 * Students whose pianos stand so flat or sharp that they read a semitone off: `npm run bench:piano-known [-- --piano test]
 * [--students 20] [--seed 1]`. Each hands in four attempts; the teacher says of the first what it was, and all others are recognised
 * from the sound alone, before and after. The last rows play another piano, in tune, by a student whose flat one is known; there the
 * teacher's word on the first that is told a semitone off settles that piano too. What was heard is kept in node_modules/.cache.
 */
import { parseArgs } from 'node:util';
import { assessHeard, recogniseFrom, settledTuning } from '../../src/engine/index.ts';
import type { Heard } from '../../src/engine/index.ts';
import { renderPerformance } from '../support/render.ts';
import type { PianoName } from '../support/render.ts';
import { homeOf } from './attempts.ts';
import { chanceFor, deskAttempt, deskExercise } from './desk-attempts.ts';
import type { Course, DeskAttempt } from './desk-attempts.ts';
import { outcomeOf } from './desk-score.ts';
import { heardCached } from './heard-cached.ts';
import { table } from './table.ts';

const { values } = parseArgs({
  options: {
    piano: { type: 'string', default: 'dev' },
    students: { type: 'string', default: '20' },
    seed: { type: 'string', default: '0' },
  },
});
const piano = values.piano as PianoName;
const students = Number(values.students);
/** other students, rooms and tunings */
const first = 100_000 * Number(values.seed);
const ATTEMPTS = 4;
/** True tunings, cents, and that of what is handed in after the correction where it is another piano's. */
const BANDS = [
  { name: '60 to 90 cents flat', from: -90, to: -60 },
  { name: '15 to 40 cents sharp', from: 15, to: 40 },
  { name: 'another piano, in tune', from: -90, to: -60, others: { from: -2, to: 8 } },
] as const;

type Played = DeskAttempt & { readonly heard: Heard; readonly course: Course };

/** One attempt in three has mistakes; rooms, noises and registers as in `bench:desk`. */
async function played(index: number, tuningCents: number): Promise<Played> {
  const random = chanceFor(`piano known ${piano}`, index);
  const course: Course = index % 3 === 2 ? 'mistakes' : 'clean';
  const attempt = deskAttempt(deskExercise(index, random), course, random);
  const home = { ...homeOf(random.fork('home')), tuningCents };
  const spec = { seed: index, piano, exercise: attempt.exercise, home };
  const heard = await heardCached([attempt.performance, spec], () =>
    renderPerformance(attempt.performance, spec),
  );
  return { ...attempt, heard, course };
}

/** What the teacher's word on one attempt tells of the piano; null: nothing, and the next one is asked for. */
function correctedTo({ heard, exercise }: Played): number | null {
  const told = assessHeard(heard, exercise);
  return told.kind === 'report' ? settledTuning(told.report) : null;
}

interface Tally {
  of: number;
  before: number;
  after: number;
  semitoneOff: number;
}
const newTally = (): Tally => ({ of: 0, before: 0, after: 0, semitoneOff: 0 });

const rows: string[][] = [];
for (const [band, { name, from, to, ...more }] of BANDS.entries()) {
  const others = 'others' in more ? more.others : null;
  const tallies = { right: newTally(), 'with mistakes': newTally() };
  const errors: number[] = [];
  let corrections = 0;
  for (let student = 0; student < students; student++) {
    const random = chanceFor(`tuning ${band}`, first + student);
    const tuningCents = random.uniform(from, to);
    const elsewhere = others === null ? tuningCents : random.uniform(others.from, others.to);
    const known: number[] = [];
    for (let at = 0; at < ATTEMPTS; at++) {
      const one = await played(
        first + 1000 * band + ATTEMPTS * student + at,
        known.length === 0 ? tuningCents : elsewhere,
      );
      if (process.stderr.isTTY) process.stderr.write(`\r${name} ${student + 1} of ${students} `);
      const correct = (): void => {
        const cents = correctedTo(one);
        corrections++;
        if (cents !== null) known.unshift(cents);
      };
      if (known.length === 0) {
        correct();
        if (known.length > 0) errors.push(Math.abs(known[0]! - tuningCents));
        continue;
      }
      const tell = ([pianoCents, ...elsewhereCents]: readonly number[]) =>
        outcomeOf(
          recogniseFrom(one.heard, { pianoCents: pianoCents ?? null, elsewhereCents }),
          one.exercise,
          one.octaveShift,
        );
      const tally = tallies[one.course === 'mistakes' ? 'with mistakes' : 'right'];
      tally.of++;
      if (tell([]) === 'right') tally.before++;
      const after = tell(known);
      if (after === 'right') tally.after++;
      if (after !== 'a semitone off') continue;
      tally.semitoneOff++;
      correct();
    }
  }
  for (const [kind, tally] of Object.entries(tallies)) {
    const isFirst = kind === 'right';
    rows.push([
      isFirst ? name : '',
      kind,
      String(tally.of),
      `${tally.before}`,
      `${tally.after}`,
      String(tally.semitoneOff),
      isFirst ? (corrections / students).toFixed(2) : '',
      isFirst ? Math.max(...errors).toFixed(1) : '',
    ]);
  }
}
console.log(
  `\nRecognised exactly, ${piano} piano, ${students} students of each kind with ${ATTEMPTS} attempts, seed ${values.seed}\n`,
);
console.log(
  table(
    [
      '',
      '',
      'attempts',
      'before',
      'after',
      'a semitone off',
      'corrections a student',
      'largest error, cents',
    ],
    rows,
  ),
);
