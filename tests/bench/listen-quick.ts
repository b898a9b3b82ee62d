/**
 * A short look at listening alone: `npx tsx tests/bench/listen-quick.ts [--piano dev|test] [--set standard|chords|
 * together|hard] [--count 40] [--from 0] [--worst 8] [--one N]`. Prints F and onset errors, then the worst attempts with
 * every note that was not heard or heard for nothing. The first run renders; later ones read the same sound from a cache.
 */
import { parseArgs } from 'node:util';
import { listen } from '../../src/engine/listen/index.ts';
import type { PlayedNote } from '../../src/engine/listen/index.ts';
import { mean, standardDeviation } from '../../src/engine/base/statistics.ts';
import type { PianoName, TrueNote } from '../support/render.ts';
import { attemptOf } from './attempts.ts';
import type { Attempt, AttemptSet } from './attempts.ts';
import { addCounts, bestSemitone, fMeasure, matchToTruth, precision, recall } from './note-score.ts';
import type { NoteCounts, NotePair } from './note-score.ts';
import { renderCached } from './render-cached.ts';
import { fixed, table } from './table.ts';

const { values } = parseArgs({
  options: {
    piano: { type: 'string', default: 'dev' },
    set: { type: 'string', default: 'standard' },
    count: { type: 'string', default: '40' },
    from: { type: 'string', default: '0' },
    worst: { type: 'string', default: '8' },
    one: { type: 'string' },
  },
});

/** Lines of trouble told for one attempt. */
const MOST_LINES = 16;

interface Result {
  readonly attempt: Attempt;
  readonly index: number;
  readonly truth: readonly TrueNote[];
  /** moved by the semitone that fits best */
  readonly heard: readonly PlayedNote[];
  readonly semitones: number;
  readonly plain: NoteCounts;
  readonly at: Readonly<Record<50 | 25 | 10, NoteCounts>>;
  readonly pairs: readonly NotePair[];
  readonly line: string;
}

const first = values.one === undefined ? Number(values.from) : Number(values.one);
const count = values.one === undefined ? Number(values.count) : 1;
const results: Result[] = [];
let renderMs = 0;
let listenMs = 0;
let soundSec = 0;
for (let index = first; index < first + count; index++) {
  const attempt = attemptOf(values.set as AttemptSet, values.piano as PianoName, index);
  let startMs = performance.now();
  const rendered = await renderCached(attempt.spec);
  renderMs += performance.now() - startMs;
  startMs = performance.now();
  const heard = listen(rendered);
  listenMs += performance.now() - startMs;
  soundSec += rendered.channels[0]!.length / rendered.sampleRateHz;
  const truth = rendered.truth.notes;
  const { semitones } = bestSemitone(heard.notes, truth);
  const moved = heard.notes.map((note) => ({ ...note, midi: note.midi + semitones }));
  const within = (windowMs: number): NoteCounts => ({
    matched: matchToTruth(moved, truth, windowMs).length,
    heard: heard.notes.length,
    truth: truth.length,
  });
  const { exercise, student, home } = rendered.truth;
  const noises = home.noises.map(({ kind, belowDb }) => `${kind} ${belowDb.toFixed(0)}`).join(' + ');
  const room = home.room ? `${home.room.decaySec.toFixed(2)} s/${home.room.directDb.toFixed(0)} dB` : 'none';
  const line =
    `#${index} ${exercise.key} ${exercise.form} ${exercise.hands} ${exercise.octaves} oct, ` +
    `${attempt.notesPerSec.toFixed(1)}/s, shift ${student.octaveShift}, overlap ${student.overlapMs.toFixed(0)} ms, ` +
    `${home.tuningCents.toFixed(0)} c, heard ${heard.tuning.cents.toFixed(1)} c${semitones === 0 ? '' : ` and a semitone ${semitones > 0 ? 'lower' : 'higher'}`}, room ${room}, ${noises}` +
    `${home.phone ? ', phone' : ''}${attempt.hardship ? `, ${attempt.hardship}` : ''}`;
  const at = { 50: within(50), 25: within(25), 10: within(10) };
  const pairs = matchToTruth(moved, truth, 50);
  const plain = { ...at[50], matched: matchToTruth(heard.notes, truth, 50).length };
  results.push({ attempt, index, truth, heard: moved, semitones, plain, at, pairs, line });
}

const errors = results.flatMap(({ pairs, truth }) =>
  pairs
    .filter(({ truth: at }) => truth[at]!.midi >= 45 && truth[at]!.midi <= 96)
    .map(({ errorMs }) => errorMs),
);
console.log(
  `\n${values.piano} / ${values.set}, ${count} attempts, ${soundSec.toFixed(0)} s of sound; rendering ` +
    `${(renderMs / 1000).toFixed(1)} s, listening ${(listenMs / 1000).toFixed(1)} s (${(soundSec / (listenMs / 1000)).toFixed(0)} times real time)\n`,
);
console.log(
  table(
    ['window', 'F', 'precision', 'recall', 'missed', 'for nothing'],
    ([50, 25, 10] as const).map((windowMs) => {
      const sum = addCounts(results.map(({ at }) => at[windowMs]));
      return [
        `±${windowMs} ms`,
        fixed(fMeasure(sum), 4),
        fixed(precision(sum), 4),
        fixed(recall(sum), 4),
        String(sum.truth - sum.matched),
        String(sum.heard - sum.matched),
      ];
    }),
  ),
);
const moves = results.filter(({ semitones }) => semitones !== 0).length;
console.log(
  `\nThe table forgives one common semitone an attempt (${moves} of ${count} needed it); without: F ±50 ms ` +
    fMeasure(addCounts(results.map(({ plain }) => plain))).toFixed(4),
);
console.log(
  `\nonset error A2–C7: mean ${fixed(mean(errors), 2)} ms, SD ${fixed(standardDeviation(errors), 2)} ms, ` +
    `beyond ±10 ms ${errors.filter((error) => Math.abs(error) > 10).length} of ${errors.length}\n`,
);

const bad = results
  .filter(({ at }) => at[10].matched < at[10].truth || at[10].matched < at[10].heard)
  .sort((a, b) => fMeasure(a.at[50]) + fMeasure(a.at[10]) - fMeasure(b.at[50]) - fMeasure(b.at[10]));
for (const { line, truth, heard, pairs, at } of bad.slice(0, Number(values.worst))) {
  console.log(`${line}\n   F ±50 ${fMeasure(at[50]).toFixed(3)}, ±10 ${fMeasure(at[10]).toFixed(3)}`);
  const near = (timeSec: number): string => {
    const before = truth.filter((note) => note.timeSec <= timeSec + 0.06).slice(-3);
    return before.map((note) => `${note.midi}@${note.timeSec.toFixed(3)}`).join(' ');
  };
  const trouble: { timeSec: number; text: string }[] = [];
  truth.forEach((note, index) => {
    if (!pairs.some((pair) => pair.truth === index))
      trouble.push({
        timeSec: note.timeSec,
        text: `not heard    ${note.midi}  ${note.levelDb.toFixed(0)} dB ${note.extraKind ?? note.verdict}`,
      });
  });
  heard.forEach((note, index) => {
    if (!pairs.some((pair) => pair.heard === index))
      trouble.push({
        timeSec: note.timeSec,
        text:
          `for nothing  ${note.midi}  ${note.levelDb.toFixed(0)} dB confidence ` + note.confidence.toFixed(2),
      });
  });
  for (const { errorMs, truth: index } of pairs)
    if (Math.abs(errorMs) > 10)
      trouble.push({
        timeSec: truth[index]!.timeSec,
        text: `${errorMs.toFixed(1)} ms off  ${truth[index]!.midi}`,
      });
  trouble.sort((a, b) => a.timeSec - b.timeSec);
  for (const { timeSec, text } of trouble.slice(0, MOST_LINES))
    console.log(`   ${timeSec.toFixed(3)} s  ${text}   [truth: ${near(timeSec)}]`);
  if (trouble.length > MOST_LINES) console.log(`   and ${trouble.length - MOST_LINES} more`);
}
