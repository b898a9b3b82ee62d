/**
 * The desk's ear: `npm run bench:desk [-- --piano test] [--count 300] [--sittings 40]`. Prints how often the exercise of an attempt is
 * recognised from the sound alone, what is made of playing that is no exercise, whether the confidence holds, and how long recordings
 * come apart. What was heard is kept in node_modules/.cache.
 */
import { parseArgs } from 'node:util';
import { recogniseFrom } from '../../src/engine/index.ts';
import type { Recognition } from '../../src/engine/index.ts';
import { sortPassages } from '../../src/engine/sorting/index.ts';
import type { PianoName } from '../support/render.ts';
import { COURSES } from './desk-attempts.ts';
import { ALL_NOODLING } from './desk-noodling.ts';
import { deskCases } from './desk-recognition.ts';
import type { DeskCase } from './desk-recognition.ts';
import { cutOf, holds, outcomeOf } from './desk-score.ts';
import type { Outcome } from './desk-score.ts';
import { sittingAt } from './desk-sittings.ts';
import { fixed, table } from './table.ts';

const { values } = parseArgs({
  options: {
    piano: { type: 'string', default: 'dev' },
    count: { type: 'string', default: '300' },
    sittings: { type: 'string', default: '40' },
  },
});
const piano = values.piano as PianoName;
const progress = (text: string): void => void (process.stderr.isTTY && process.stderr.write(`\r${text} `));
const share = (part: number, of: number): string => (of === 0 ? '–' : `${fixed((100 * part) / of, 1)} %`);

interface Told {
  readonly of: DeskCase;
  readonly found: Recognition;
  /** null: there is no exercise */
  readonly outcome: Outcome | null;
}

function tell(of: DeskCase, pianoCents: number | null): Told {
  const found = recogniseFrom(of.heard, { pianoCents });
  return {
    of,
    found,
    outcome: of.exercise === null ? null : outcomeOf(found, of.exercise, of.octaveShift),
  };
}

function outcomeRow(name: string, told: readonly Told[]): readonly string[] {
  const count = (outcome: Outcome): number => told.filter((one) => one.outcome === outcome).length;
  const lain = told.filter(
    ({ of, outcome }) => outcome === 'right' && of.octaveShift === 0 && of.exercise?.hands !== 'together',
  );
  const hands = lain.filter(({ of, found }) => found.choice?.hands === of.exercise?.hands).length;
  return [
    name,
    String(told.length),
    share(count('right'), told.length),
    share(hands, lain.length),
    String(count('cannot tell')),
    String(count('a semitone off')),
    String(count('wrong')),
  ];
}

const OUTCOMES = ['', 'n', 'right', 'hand', 'cannot tell', 'a semitone off', 'wrong'];
/** True tunings; between the first two bounds and the last two a flat piano and a sharp one read alike. */
const BANDS: readonly (readonly [name: string, from: number, to: number])[] = [
  ['within ±50 cents', -50, 50],
  ['−90 … −60', -90, -60],
  ['−60 … +15', -60, 15],
  ['+15 … +40', 15, 40],
];

const cases = await deskCases(piano, Number(values.count), (done) => progress(`heard ${done}`));
const blind = cases.map((one) => tell(one, null));
const known = cases.map((one) => tell(one, one.tuningCents));

console.log(`\nRecognition from the sound alone, ${piano} piano, tuned evenly over −90 … +40 cents\n`);
console.log(
  'right: key, form, octaves, both hands or one, minor scale and where it lies; hand: of one hand that',
);
console.log('lies as written, told by its register. known: with the tuning of the piano known.\n');
const rows = COURSES.flatMap((course) => {
  const of = (told: readonly Told[]): readonly Told[] => told.filter(({ of: { kind } }) => kind === course);
  return [
    ...BANDS.map(([name, from, to]) =>
      outcomeRow(
        `${course}, ${name}`,
        of(blind).filter(({ of: { tuningCents } }) => tuningCents >= from && tuningCents < to),
      ),
    ),
    outcomeRow(`${course}, known`, of(known)),
  ];
});
console.log(table(OUTCOMES, rows));

const whole = known.filter(({ of }) => of.kind === 'clean' || of.kind === 'mistakes');
const forms = [...new Set(whole.map(({ of }) => `${of.exercise!.form}, ${of.exercise!.hands}`))].sort();
console.log('\nBy form and hands, clean and with mistakes, tuning known\n');
const ofForm = (name: string): readonly Told[] =>
  whole.filter(({ of }) => `${of.exercise!.form}, ${of.exercise!.hands}` === name);
console.log(
  table(
    OUTCOMES,
    forms.map((name) => outcomeRow(name, ofForm(name))),
  ),
);

console.log('\nPlaying that is no exercise, alone in its recording\n');
console.log(
  table(
    ['', 'n', 'taken for an exercise', 'greatest confidence'],
    ALL_NOODLING.map((kind) => {
      const told = blind.filter(({ of }) => of.kind === kind);
      const taken = told.filter(({ found }) => found.choice !== null);
      const greatest = Math.max(0, ...told.map(({ found }) => found.confidence));
      return [kind, String(told.length), String(taken.length), fixed(greatest, 2)];
    }),
  ),
);

console.log('\nConfidence (church modes left out), tuning known\n');
const judged = known.filter(({ of, found }) => of.kind !== 'church mode' && found.alternatives.length >= 0);
console.log(
  table(
    ['confidence', 'n', 'mean', 'right'],
    [0, 0.2, 0.4, 0.6, 0.8, 0.9, 0.97].map((from, at, bounds) => {
      const to = bounds[at + 1] ?? 1.01;
      const within = judged.filter(({ found: { confidence } }) => confidence >= from && confidence < to);
      const right = within.filter(({ of, found }) => isLikeliestRight(of, found)).length;
      const mean = within.reduce((sum, { found }) => sum + found.confidence, 0) / within.length;
      return [`${from} …`, String(within.length), fixed(mean, 2), share(right, within.length)];
    }),
  ),
);

function isLikeliestRight({ exercise, octaveShift }: DeskCase, found: Recognition): boolean {
  const choice = found.choice ?? found.alternatives[0]?.choice ?? null;
  if (exercise === null) return false;
  return outcomeOf({ choice, octaveShift: found.octaveShift }, exercise, octaveShift) === 'right';
}

const tally = { attempts: 0, whole: 0, split: 0, joined: 0, missed: 0, right: 0, invented: 0, sec: 0, ms: 0 };
const sittings = Number(values.sittings);
for (let index = 0; index < sittings; index++) {
  const { played, heard } = await sittingAt(piano, index);
  progress(`sitting ${index + 1} of ${sittings}`);
  const from = process.cpuUsage();
  const found = sortPassages(heard);
  const used = process.cpuUsage(from);
  tally.ms += (used.user + used.system) / 1000;
  tally.sec += heard.durationSec;
  const attempts = played.filter(({ exercise }) => exercise !== null);
  for (const attempt of attempts) {
    const cut = cutOf(attempt, played, found);
    tally.attempts++;
    if (cut.pieces.length === 0) tally.missed++;
    if (cut.pieces.length > 1) tally.split++;
    if (cut.joined) tally.joined++;
    if (!cut.whole) continue;
    tally.whole++;
    if (outcomeOf(cut.pieces[0]!.recognition, attempt.exercise!, attempt.octaveShift) === 'right')
      tally.right++;
  }
  const isOfOne = (piece: (typeof found)[number]): boolean => attempts.some((one) => holds(piece, one));
  tally.invented += found.filter((piece) => piece.recognition.choice !== null && !isOfOne(piece)).length;
}
console.log(`\nSplitting: ${sittings} sittings of 3 to 12 attempts with talk and other playing between\n`);
console.log(
  table(
    ['attempts', 'found whole', 'split', 'with something else', 'missed', 'invented', 'whole and recognised'],
    [
      [
        String(tally.attempts),
        share(tally.whole, tally.attempts),
        String(tally.split),
        String(tally.joined),
        String(tally.missed),
        String(tally.invented),
        share(tally.right, tally.attempts),
      ],
    ],
  ),
);
const per30Min = tally.ms / (tally.sec / 1800);
console.log(
  `\n${fixed(tally.sec / 60, 0)} minutes; splitting and recognising 30 of them takes ${fixed(per30Min, 0)} ms of one core`,
);
