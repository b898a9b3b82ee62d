/**
 * Recognition among the set and fifty passages of one's own: `npm run bench:own-recognised [-- --passages 50 --seeds 4]`.
 * Lists of notes as a good blind listener hears them (no sound): passages clean, with mistakes and by one hand; exercises of the set; other
 * playing, passages that are not on the list among it. Time: recognition with the passages against that without. Prints tables and never
 * fails.
 */
import { parseArgs } from 'node:util';
import { exerciseOf, passageId, recogniseFrom } from '../../src/engine/index.ts';
import type { ExerciseChoice, Heard } from '../../src/engine/index.ts';
import { attempt, GOOD_LISTENER, overhear } from '../engine/match/simulated.ts';
import { inventedPassage, inventedPassages } from '../support/passages.ts';
import { createRandom } from '../support/random.ts';
import { NO_MISTAKES } from '../support/render.ts';
import { deskAttempt, deskExercise } from './desk-attempts.ts';
import { ALL_NOODLING, noodle } from './desk-noodling.ts';
import { fixed, table } from './table.ts';

const { values } = parseArgs({
  options: { passages: { type: 'string', default: '50' }, seeds: { type: 'string', default: '4' } },
});
const own = inventedPassages(Number(values.passages));
const seeds = Number(values.seeds);

interface Case {
  readonly kind: string;
  readonly heard: Heard;
  /** null: none of them */
  readonly choice: ExerciseChoice | null;
}

function passagesPlayed(): Case[] {
  return own.flatMap((choice, index) =>
    Array.from({ length: seeds }, (_, seed): Case => {
      const alone = seed % 4 === 3 && choice.hands === 'together';
      const played = alone ? ({ ...choice, hands: seed % 8 === 3 ? 'right' : 'left' } as const) : choice;
      const known = exerciseOf(played)?.choice ?? choice;
      const faults = [0, 1, 3, 0][seed % 4]!;
      const student = {
        bpm: 50 + 10 * (seed % 5),
        jitterMs: 15,
        octaveShift: seed % 3 === 2 ? -1 : 0,
        mistakes: { ...NO_MISTAKES, wrong: faults, missed: faults > 1 ? 1 : 0, repeats: faults > 1 ? 1 : 0 },
      };
      const { heard } = attempt(known, student, GOOD_LISTENER, 100 * index + seed);
      const kind = alone
        ? 'passage, one of its hands'
        : ['passage, clean', 'passage, one mistake', 'passage, five mistakes', 'passage, clean'][seed % 4]!;
      return { kind, heard, choice: known };
    }),
  );
}

function otherPlaying(count: number): Case[] {
  return Array.from({ length: count }, (_, index): Case => {
    const random = createRandom(9000 + index);
    if (index % 2 === 0)
      return {
        kind: 'other playing: passages not on the list',
        heard: attempt(inventedPassage(1000 + index), { bpm: 70, jitterMs: 15 }, GOOD_LISTENER, index).heard,
        choice: null,
      };
    const kind = ALL_NOODLING[Math.floor(index / 2) % ALL_NOODLING.length]!;
    const performance = noodle(kind, deskExercise(index, random), random);
    return {
      kind: 'other playing: what the desk refuses',
      heard: overhear(performance, GOOD_LISTENER, random),
      choice: null,
    };
  });
}

function setPlayed(count: number): Case[] {
  return Array.from({ length: count }, (_, index): Case => {
    const random = createRandom(7000 + index);
    const { exercise, performance } = deskAttempt(deskExercise(index, random), 'clean', random);
    return {
      kind: 'exercise of the set',
      heard: overhear(performance, GOOD_LISTENER, random),
      choice: exercise,
    };
  });
}

function timed(cases: readonly Case[], among: readonly ExerciseChoice[]): number {
  const from = performance.now();
  for (const { heard } of cases) recogniseFrom(heard, { own: among, pianoCents: 0 });
  return (performance.now() - from) / cases.length;
}

const cases = [...passagesPlayed(), ...setPlayed(100), ...otherPlaying(200)];
const told = cases.map((one) => ({ ...one, found: recogniseFrom(one.heard, { own, pianoCents: 0 }) }));
const before = cases.map((one) => recogniseFrom(one.heard, { pianoCents: 0 }).choice);
const isRight = ({ choice, found }: (typeof told)[number]): boolean => {
  if (choice === null || found.choice === null) return choice === found.choice;
  if (choice.passage === undefined)
    return found.choice.form === choice.form && found.choice.key === choice.key;
  return found.choice.passage !== undefined && passageId(found.choice.passage) === passageId(choice.passage);
};
const rows = [...new Set(told.map(({ kind }) => kind))].map((kind) => {
  const these = told.filter((one) => one.kind === kind);
  const right = these.filter(isRight).length;
  const hands = these.filter((one) => isRight(one) && one.found.choice?.hands === one.choice?.hands).length;
  const asOwn = these.filter(
    ({ choice, found }) => choice?.passage === undefined && found.choice?.passage !== undefined,
  );
  return [
    kind,
    String(these.length),
    String(right),
    String(hands),
    String(these.filter(({ found }) => found.choice === null).length),
    String(asOwn.length),
  ];
});
console.log(`${table(['', 'n', 'right', 'and hands', 'not told', 'taken for a passage'], rows)}\n`);
const set = told
  .map((one, at) => ({ one, was: before[at]! }))
  .filter(({ one }) => one.choice?.passage === undefined);
const changed = set.filter(({ one, was }) => JSON.stringify(one.found.choice) !== JSON.stringify(was)).length;
// Both warmed up by what went before; the middle of three.
const ratios = Array.from({ length: 3 }, () => timed(cases, own) / timed(cases, [])).sort((a, b) => a - b);
console.log(
  table(
    ['figure', 'reached', 'aim'],
    [
      [
        'recognition of the set and of other playing changed by the passages',
        `${changed} of ${set.length}`,
        '0',
      ],
      ['time with the passages against without', `${fixed(ratios[1], 2)} ×`, '≤ 1.5 ×'],
      ['one recognition', `${fixed(timed(cases, own), 1)} ms`, ''],
    ],
  ),
);
