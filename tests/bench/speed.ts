/**
 * How fast the engine is: `npm run build && npm run bench:speed`. Prints, for a bundled attempt and for a minute of
 * playing: real-time factors of each stage and of all, beside a naive pitchy + Meyda tracker in the same run, then the
 * built command as a child process with its peak memory. Never fails.
 */
import { spawnSync } from 'node:child_process';
import { existsSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { cpus, loadavg, tmpdir } from 'node:os';
import { resolve } from 'node:path';
import {
  assessHeard,
  buildExercise,
  listenAndKeep,
  matchNotes,
  recogniseFrom,
  writeReport,
} from '../../src/engine/index.ts';
import type { AudioInput, ExerciseChoice, Hands } from '../../src/engine/index.ts';
import { decodeFile } from '../../src/io/decode/index.ts';
import { encodeWav } from '../../src/io/exchange/index.ts';
import { render } from '../support/render.ts';
import type { TrueNote } from '../support/render.ts';
import { naiveNotes } from './naive.ts';
import { addCounts, fMeasure, matchToTruth } from './note-score.ts';
import type { Timed } from './note-score.ts';
import { fixed, table } from './table.ts';

const ROOT = resolve(import.meta.dirname, '../..');
const COMMAND = resolve(ROOT, 'dist/cli/evenfall.js');
const RUNS = 5;

interface Case {
  readonly name: string;
  readonly audio: AudioInput;
  readonly choice: ExerciseChoice;
  readonly truth: readonly TrueNote[];
}

const cases = [await bundled(), await scales('right', 4), await scales('together', 1)];
const seconds = ({ audio }: Case): number => audio.channels[0]!.length / audio.sampleRateHz;

console.log(
  `${cpus()[0]?.model ?? 'unknown processor'}, Node ${process.version}, load ${loadavg()[0]!.toFixed(1)} ` +
    `(times are of the processor, all threads, best of ${RUNS} runs)\n`,
);
for (const one of cases) {
  const { audio, choice, truth } = one;
  const exercise = buildExercise(choice);
  const file = encodeWav(audio);
  const { heard, sound } = listenAndKeep(audio);
  const alignment = matchNotes(heard, exercise);
  const decodeSec = await best(() => decodeFile(file, 'attempt.wav'));
  const rows: [string, number, string][] = [
    ['decode (WAV)', decodeSec, ''],
    ['listen', await best(() => listenAndKeep(audio)), f(heard.notes, truth)],
    ['recognise the exercise', await best(() => recogniseFrom(heard)), ''],
    ['match', await best(() => matchNotes(heard, exercise)), ''],
    ['report', await best(() => writeReport(heard, alignment)), ''],
    ['match, second listening, report', await best(() => assessHeard(heard, choice, {}, sound)), ''],
    ['naive pitchy + Meyda', await best(() => naiveNotes(audio)), f(naiveNotes(audio), truth)],
  ];
  const engineSec = rows[1]![1] + rows[2]![1] + rows[5]![1];
  rows.splice(6, 0, ['whole engine', engineSec, '']);
  console.log(`${one.name}, ${seconds(one).toFixed(1)} s`);
  console.log(
    table(
      ['stage', 'time', 'times real time', 'F ±50 ms'],
      rows.map(([name, sec, score]) => [
        name,
        `${fixed(1000 * sec, 1)} ms`,
        fixed(seconds(one) / sec, 0),
        score,
      ]),
    ),
  );
  console.log('');
}
commandTable();

/** Processor time of the quickest run, seconds; the first runs also warm the compiler. */
async function best(run: () => unknown): Promise<number> {
  let least = Infinity;
  for (let index = 0; index < RUNS; index++) {
    const before = process.cpuUsage();
    await run();
    const { user, system } = process.cpuUsage(before);
    least = Math.min(least, (user + system) / 1e6);
  }
  return Math.max(least, 1e-6);
}

function f(notes: readonly Timed[], truth: readonly TrueNote[]): string {
  const matched = matchToTruth(notes, truth, 50).length;
  return fixed(fMeasure(addCounts([{ matched, heard: notes.length, truth: truth.length }])), 3);
}

async function bundled(): Promise<Case> {
  const folder = resolve(ROOT, 'audio-fixtures/late-thumb');
  const bytes = Uint8Array.from(readFileSync(resolve(folder, 'attempt.wav')));
  const audio = await decodeFile(bytes.buffer, 'attempt.wav');
  const truth = JSON.parse(readFileSync(resolve(folder, 'truth.json'), 'utf8')) as {
    exercise: ExerciseChoice;
    notes: TrueNote[];
  };
  return { name: 'bundled attempt late-thumb', audio, choice: truth.exercise, truth: truth.notes };
}

/**
 * A four-octave scale there and back at a good pace, a quarter of a minute, some times over. Both hands play it once: what
 * is matched is one scale, and of them it is the second listening that costs.
 */
async function scales(hands: Hands, times: number): Promise<Case> {
  const choice: ExerciseChoice = { key: 'Eb major', form: 'scale', hands, octaves: 4 };
  const { channels, sampleRateHz, truth } = await render({
    seed: 60,
    piano: 'dev',
    exercise: choice,
    student: { bpm: 130, leadInSec: 0.7, leadOutSec: 0.8 },
  });
  const once = channels[0]!;
  const audio = {
    channels: [Float32Array.from({ length: once.length * times }, (_, at) => once[at % once.length]!)],
    sampleRateHz,
  };
  const onceSec = once.length / sampleRateHz;
  const notes = Array.from({ length: times }).flatMap((_, time) =>
    truth.notes.map((note) => ({ ...note, timeSec: note.timeSec + time * onceSec })),
  );
  return { name: `${times} × a scale of four octaves, ${hands}`, audio, choice, truth: notes };
}

function commandTable(): void {
  if (!existsSync(COMMAND)) {
    console.log('dist/cli/evenfall.js is not there: `npm run build` first, to time the command itself.');
    return;
  }
  const folder = mkdtempSync(resolve(tmpdir(), 'evenfall-'));
  // The child tells its own peak when it ends: resourceUsage counts kilobytes.
  const telling = "process.on('exit',()=>process.stderr.write('\\npeak '+process.resourceUsage().maxRSS))";
  const rows = cases.map((one) => {
    const path = resolve(folder, `${cases.indexOf(one)}.wav`);
    writeFileSync(path, new Uint8Array(encodeWav(one.audio)));
    const { key, form, hands, octaves } = one.choice;
    const told = ['--key', key, '--form', form, '--hands', hands, '--octaves', String(octaves)];
    const runs = [1, 2, 3].map(() => {
      const startMs = performance.now();
      const child = spawnSync(
        process.execPath,
        ['--import', `data:text/javascript,${telling}`, COMMAND, 'analyse', path, ...told, '--json'],
        { encoding: 'utf8' },
      );
      const sec = (performance.now() - startMs) / 1000;
      return { sec, exit: child.status, peakMb: Number(/peak (\d+)/.exec(child.stderr)?.[1] ?? NaN) / 1024 };
    });
    const quickest = runs.reduce((a, b) => (b.sec < a.sec ? b : a));
    return [
      one.name,
      `${fixed(quickest.sec, 2)} s`,
      fixed(seconds(one) / quickest.sec, 0),
      `${fixed(quickest.peakMb, 0)} MB`,
      String(quickest.exit),
    ];
  });
  rmSync(folder, { recursive: true });
  console.log(
    table(
      [
        'node dist/cli/evenfall.js analyse … (wall clock, best of 3)',
        'time',
        'times real time',
        'peak memory',
        'exit',
      ],
      rows,
    ),
  );
}
