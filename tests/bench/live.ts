/**
 * Live listening on rendered sittings: `npm run bench:live [-- --piano test] [--minutes 30] [--sets standard,chords] [--seed 21]`
 * (the seed is of what happens between the attempts). Prints how long after the hammer a note is told and how often the guess was
 * right, which of twenty attempts were found, and what half an hour costs.
 */
import { parseArgs } from 'node:util';
import { quantile } from '../../src/engine/base/statistics.ts';
import type { PianoName, Rendered } from '../support/render.ts';
import { joinSession } from '../support/session.ts';
import type { Session } from '../support/session.ts';
import { attemptOf } from './attempts.ts';
import type { AttemptSet } from './attempts.ts';
import { followLive } from './live-follow.ts';
import type { Followed, LiveNote } from './live-follow.ts';
import { renderCached } from './render-cached.ts';
import { table } from './table.ts';

const { values } = parseArgs({
  options: {
    piano: { type: 'string', default: 'dev' },
    minutes: { type: 'string', default: '30' },
    sets: { type: 'string', default: 'standard,chords,together' },
    seed: { type: 'string', default: '11' },
  },
});
const piano = values.piano as PianoName;
const ATTEMPTS = 20;
/** a note told so far from a struck one is that one, seconds */
const SAME_SEC = 0.05;

/** Twenty attempts at one piano in one room; what was played and how is the set's own. */
async function attemptsOf(set: AttemptSet, count: number): Promise<Rendered[]> {
  const rendered: Rendered[] = [];
  for (let index = 0; index < count; index++) {
    const { spec } = attemptOf(set, piano, index);
    const home = { tuningCents: -28, room: { decaySec: 0.4, directDb: 4 }, noises: [], peakDb: -8 };
    rendered.push(await renderCached({ ...spec, home }));
  }
  return rendered;
}

interface Told {
  readonly latencyMs: readonly number[];
  readonly notes: number;
  readonly found: number;
  readonly guesses: number;
  readonly rightGuesses: number;
  /** certain notes that nobody struck */
  readonly invented: number;
}

function score(session: Session, followed: Followed): Told {
  const left = new Set(followed.notes);
  const latencyMs: number[] = [];
  let found = 0;
  const struck = session.attempts.flatMap(({ notes }) => notes);
  for (const { midi, timeSec } of struck) {
    const same = ({ final }: LiveNote): boolean =>
      final !== null && final.midi === midi && Math.abs(final.timeSec - timeSec) < SAME_SEC;
    const told = [...left].find(same);
    if (told === undefined) continue;
    left.delete(told);
    found += 1;
    latencyMs.push(1000 * ((told.guess ?? told.final)!.toldSec - timeSec));
  }
  const guesses = followed.notes.filter(({ guess }) => guess !== null);
  return {
    latencyMs,
    notes: struck.length,
    found,
    guesses: guesses.length,
    rightGuesses: guesses.filter(({ guess, final }) => guess!.midi === final?.midi).length,
    invented: [...left].filter(({ final }) => final !== null).length,
  };
}

/**
 * Attempts played and found → which of them lie over each other. Whole: one found that lies over one played and holds all of
 * its notes; split: several over one; joined: one over several; invented: one over none. Early: begun more than a second
 * before the first note (by a word just before it), though whole; late: its first notes not drawn with it, though their sound is kept.
 */
function segmentation(session: Session, { attempts }: Followed) {
  const lies = session.attempts.map(({ notes }) => {
    const from = notes[0]!.timeSec;
    const to = notes.at(-1)!.timeSec;
    const over = attempts.filter((found) => found.firstSec <= to && found.endSec > from);
    return { from, to, over };
  });
  const whole = lies.filter(
    ({ from, to, over: [only, ...others] }) =>
      only !== undefined &&
      others.length === 0 &&
      only.startSec <= from - 0.05 &&
      only.endSec >= to + 0.3 &&
      lies.filter(({ over }) => over.includes(only)).length === 1,
  );
  const invented = attempts.filter((found) => !lies.some(({ over }) => over.includes(found)));
  return {
    whole: whole.length,
    missed: lies.filter(({ over }) => over.length === 0).length,
    split: lies.filter(({ over }) => over.length > 1).length,
    invented: invented.length,
    early: whole.filter(({ from, over }) => over[0]!.firstSec < from - 1).length,
    late: whole.filter(({ from, over }) => over[0]!.firstSec > from + 0.1).length,
  };
}

const percent = (share: number): string => `${(100 * share).toFixed(1)} %`;
const rows: string[][] = [];
for (const set of values.sets.split(',') as AttemptSet[]) {
  const session = joinSession(await attemptsOf(set, ATTEMPTS), {
    seed: Number(values.seed),
    pauseSec: { least: 5, most: 12 },
  });
  const followed = followLive(session.channel, session.sampleRateHz);
  const told = score(session, followed);
  const cut = segmentation(session, followed);
  const within = told.latencyMs.filter((ms) => ms <= 150).length / told.latencyMs.length;
  rows.push([
    set,
    String(told.notes),
    percent(told.found / told.notes),
    String(told.invented),
    percent(told.rightGuesses / told.guesses),
    `${quantile(told.latencyMs, 0.5)!.toFixed(0)} / ${quantile(told.latencyMs, 0.95)!.toFixed(0)} ms`,
    percent(within),
    `${cut.whole} of ${ATTEMPTS}, missed ${cut.missed}, split ${cut.split}, invented ${cut.invented}, early ${cut.early}, late ${cut.late}`,
    percent(followed.computeSec / (session.channel.length / session.sampleRateHz)),
  ]);
}
console.log(
  `\nLive listening, ${piano} piano; blocks of 10 ms; what the sound's own way adds is not in it.\n`,
);
console.log(
  table(
    [
      'set',
      'notes',
      'found',
      'invented',
      'guesses right',
      'told after the hammer, median / 95th',
      'within 150 ms',
      'attempts whole',
      'of one core',
    ],
    rows,
  ),
);

const minutes = Number(values.minutes);
if (minutes > 0) {
  const session = joinSession(await attemptsOf('standard', ATTEMPTS), {
    seed: 12,
    pauseSec: { least: 5, most: 12 },
  });
  const seconds = minutes * 60;
  const times = Math.ceil((seconds * session.sampleRateHz) / session.channel.length);
  const memoryMb: number[] = [];
  let blocks = 0;
  const whole = new Float32Array(seconds * session.sampleRateHz);
  for (let i = 0; i < times; i++)
    whole.set(
      session.channel.subarray(0, whole.length - i * session.channel.length),
      i * session.channel.length,
    );
  const lengthSec = session.channel.length / session.sampleRateHz;
  const ends = session.attempts.map(({ notes }) => notes.at(-1)!.timeSec);
  const played = Array.from({ length: times }, (_, turn) =>
    ends.filter((sec) => sec + turn * lengthSec < seconds),
  ).flat().length;
  const { computeSec, attempts } = followLive(whole, session.sampleRateHz, {}, () => {
    blocks += 1;
    if (blocks % 6000 !== 0) return;
    globalThis.gc?.();
    const { heapUsed, external } = process.memoryUsage();
    memoryMb.push((heapUsed + external - whole.byteLength) / 2 ** 20);
  });
  console.log(
    `\n${minutes} minutes: ${attempts.length} attempts of ${played}, ${percent(computeSec / seconds)} of one core, memory ` +
      `beside the sound after each minute ${Math.min(...memoryMb.slice(1)).toFixed(1)} to ${Math.max(...memoryMb.slice(1)).toFixed(1)} MB` +
      (globalThis.gc === undefined ? ' (with garbage: run node with --expose-gc)' : ''),
  );
}
