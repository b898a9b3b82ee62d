/**
 * Pearls of the growing string against the keys that were struck: `npm run bench:live-pearls [-- --piano test] [--attempts 6]`.
 * One sitting a row, six attempts with talk, knocks and pages between, fed in blocks of 10 ms as fast as it goes; the microphone
 * is at home (rooms, noise, phones as in the standard set), the piano's tuning is found on the way.
 */
import { parseArgs } from 'node:util';
import { quantile } from '../../src/engine/base/statistics.ts';
import { ALL_KEYS, buildExercise } from '../../src/engine/exercise/index.ts';
import type { Form, Hands } from '../../src/engine/exercise/index.ts';
import { createRandom } from '../support/random.ts';
import type { PianoName, Rendered } from '../support/render.ts';
import type { Mistake } from '../support/student/mistakes.ts';
import { joinSession } from '../support/session.ts';
import type { Session } from '../support/session.ts';
import { homeOf, shiftsOf, studentOf } from './attempts.ts';
import { followLive } from './live-follow.ts';
import { scorePearls } from './pearl-score.ts';
import { renderCached } from './render-cached.ts';
import { table } from './table.ts';

const { values } = parseArgs({
  options: {
    piano: { type: 'string', default: 'dev' },
    attempts: { type: 'string', default: '6' },
    only: { type: 'string', default: '' },
  },
});

interface Row {
  readonly name: string;
  readonly forms: readonly Form[];
  readonly hands: Hands;
  /** the left hand against the right, dB */
  readonly leftHandDb: number;
  /** the right hand leaves out every eighth note or so: keys that are expected, and that nobody struck */
  readonly isLeavingOut?: true;
}
const LINES: readonly Form[] = ['scale', 'arpeggio'];
const CHORDS: readonly Form[] = ['triads', 'progression'];
const LOUDNESS = { 'equal hands': 0, 'upper 6 dB softer': 6, 'lower 6 dB softer': -6 };
const ROWS: readonly Row[] = [
  { name: 'one hand, lines', forms: LINES, hands: 'right', leftHandDb: 0 },
  { name: 'one hand, chords', forms: CHORDS, hands: 'right', leftHandDb: 0 },
  ...Object.entries(LOUDNESS).flatMap(([said, leftHandDb]): readonly Row[] => [
    { name: `both, lines, ${said}`, forms: LINES, hands: 'together', leftHandDb },
    { name: `both, chords, ${said}`, forms: CHORDS, hands: 'together', leftHandDb },
  ]),
  {
    name: 'both, lines, upper leaves out',
    forms: LINES,
    hands: 'together',
    leftHandDb: 0,
    isLeavingOut: true,
  },
  { name: 'one hand, four-note chords', forms: ['four-note-chords'], hands: 'right', leftHandDb: 0 },
];
/** notes a second of lines, chords a second, from attempt to attempt */
const SPEEDS = { lines: { least: 2, most: 8 }, chords: { least: 0.7, most: 2 } } as const;

/** One piano in one home, attempts faster and faster; one hand is the left one every other time. */
async function sittingOf(row: Row, at: number): Promise<Session> {
  const home = createRandom(4001 + at);
  const room = { ...homeOf(home), tuningCents: home.uniform(-40, 25), phone: at % 2 === 1 };
  const count = Number(values.attempts);
  const rendered: Rendered[] = [];
  for (let index = 0; index < count; index++) {
    const random = createRandom(7919 * at + index);
    const form = row.forms[index % row.forms.length]!;
    const hands = row.hands === 'right' && index % 4 > 1 ? 'left' : row.hands;
    const octaves = form === 'scale' || form === 'arpeggio' ? 2 : 1;
    const { least, most } = row.forms === LINES ? SPEEDS.lines : SPEEDS.chords;
    const speed = least * (most / least) ** ((index + 0.5) / count);
    const exercise = { key: random.pick(ALL_KEYS), form, hands, octaves };
    const { steps } = buildExercise(exercise);
    const perBeat = (steps.length - 1) / (steps.at(-1)!.beat - steps[0]!.beat);
    const student = studentOf(speed, steps.length, perBeat, shiftsOf(steps), '', random);
    const velocity = random.uniform(60, 85);
    const { leftHandDb, isLeavingOut } = row;
    const missed = steps.flatMap(({ step, notes }): readonly Mistake[] =>
      isLeavingOut && random.chance(1 / 8)
        ? [{ kind: 'missed', step, note: notes.findIndex((note) => note.hand === 'right') }]
        : [],
    );
    rendered.push(
      await renderCached({
        seed: random.integer(2 ** 31),
        piano: values.piano as PianoName,
        exercise,
        student: { ...student, velocity, leftHandDb, mistakes: missed },
        home: room,
      }),
    );
  }
  return joinSession(rendered, { seed: 31 + at, pauseSec: { least: 4, most: 7 } });
}

const percent = (count: number, of: number): string => `${((100 * count) / of).toFixed(1)} %`;
const rows: string[][] = [];
for (const [at, row] of ROWS.entries()) {
  if (!row.name.includes(values.only)) continue;
  const { channel, sampleRateHz, attempts } = await sittingOf(row, at);
  const struck = attempts.flatMap(({ notes }) => notes);
  const followed = followLive(channel, sampleRateHz);
  const score = scorePearls(struck, followed.notes);
  const ms = score.delaysMs;
  rows.push([
    row.name,
    String(struck.length),
    percent(ms.length, struck.length),
    percent(ms.filter((one) => one <= 150).length, struck.length),
    `${quantile(ms, 0.5)!.toFixed(0)} / ${quantile(ms, 0.95)!.toFixed(0)}`,
    percent(score.settled, struck.length),
    percent(score.open, struck.length),
    percent(score.wrongAtFirst, score.guesses),
    `${score.passing} / ${score.opened} / ${score.standing}`,
    String(score.between),
    percent(followed.computeSec, channel.length / sampleRateHz),
  ]);
}
console.log(`\nPearls, ${values.piano} piano, ${values.attempts} attempts a row.\n`);
console.log(
  table(
    [
      'played',
      'keys',
      'drawn',
      'in 150 ms',
      'ms, median / 95th',
      'settled',
      'left open',
      'guesses taken back',
      'false while playing: gone / open / settled',
      'false between',
      'of one core',
    ],
    rows,
  ),
);
