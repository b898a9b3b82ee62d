/**
 * A lesson of two hours: `npm run build && npm run bench:lesson [-- --attempts 30] [--apart 240]`. One recording of the development
 * piano in stereo, an attempt every four minutes with a minute of talk after each, sorted by the built command with one helper.
 * Prints how many attempts were found and recognised, what else was listed, the memory of command and helper, and the time. Never fails.
 */
import { spawn } from 'node:child_process';
import { closeSync, mkdtempSync, openSync, readFileSync, rmSync, writeSync } from 'node:fs';
import { loadavg, tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import { parseArgs } from 'node:util';
import type { ExerciseChoice } from '../../src/engine/index.ts';
import { pinkNoise } from '../support/home/noise.ts';
import { otherSound } from '../support/other-sounds.ts';
import { createRandom } from '../support/random.ts';
import { render, SAMPLE_RATE_HZ } from '../support/render.ts';
import { childrenOf, peakMbOf } from './peak-memory.ts';
import { fixed, table } from './table.ts';

const { values } = parseArgs({
  options: { attempts: { type: 'string', default: '30' }, apart: { type: 'string', default: '240' } },
});
const attempts = Number(values.attempts);
const partSec = Number(values.apart);
const COMMAND = resolve(import.meta.dirname, '../../dist/cli/evenfall.js');
const EXERCISES: readonly ExerciseChoice[] = [
  { key: 'D major', form: 'arpeggio', hands: 'right', octaves: 2 },
  { key: 'G minor', form: 'triads', hands: 'left', octaves: 1 },
  { key: 'E major', form: 'scale', hands: 'right', octaves: 2 },
  { key: 'Bb major', form: 'scale', hands: 'left', octaves: 2 },
  { key: 'A major', form: 'progression', hands: 'right', octaves: 1 },
  { key: 'C minor', form: 'broken-triads', hands: 'right', octaves: 1 },
];
const TALK_SEC = 60;
const LOOK_MS = 500;
const exerciseAt = (part: number): ExerciseChoice => EXERCISES[part % EXERCISES.length]!;

/** The header of a WAV of 16 bits in two channels (RIFF WAVE): it is written part by part, never held as a whole. */
function header(frames: number): Buffer {
  const head = Buffer.alloc(44);
  head.write('RIFF', 0);
  head.writeUInt32LE(36 + frames * 4, 4);
  head.write('WAVEfmt ', 8);
  head.writeUInt32LE(16, 16);
  head.writeUInt16LE(1, 20);
  head.writeUInt16LE(2, 22);
  head.writeUInt32LE(SAMPLE_RATE_HZ, 24);
  head.writeUInt32LE(SAMPLE_RATE_HZ * 4, 28);
  head.writeUInt16LE(4, 32);
  head.writeUInt16LE(16, 34);
  head.write('data', 36);
  head.writeUInt32LE(frames * 4, 40);
  return head;
}

/** Writes the lesson; an attempt begins where its part has this many seconds. */
async function writeLesson(path: string): Promise<readonly number[]> {
  const frames = partSec * SAMPLE_RATE_HZ;
  const file = openSync(path, 'w');
  writeSync(file, header(attempts * frames));
  const random = createRandom(77);
  const bed = pinkNoise(frames, random.fork('bed')).map((value) => value * 10 ** (-60 / 20));
  const begins: number[] = [];
  for (let part = 0; part < attempts; part++) {
    const sound = Float32Array.from(bed);
    const add = (from: number, samples: Float32Array, gain: number): void =>
      samples.subarray(0, frames - from).forEach((value, at) => (sound[from + at]! += gain * value));
    const student = { bpm: random.uniform(60, 90), jitterMs: 15, leadInSec: 0.5, leadOutSec: 1.5 };
    const played = await render({ seed: 900 + part, piano: 'dev', exercise: exerciseAt(part), student });
    const beginSec = random.uniform(20, partSec - TALK_SEC - 80);
    add(Math.round(beginSec * SAMPLE_RATE_HZ), played.channels[0]!, 1);
    add(
      (partSec - TALK_SEC - 20) * SAMPLE_RATE_HZ,
      otherSound('speech', TALK_SEC, 1000 + part).channels[0]!,
      0.1,
    );
    const samples = Int16Array.from(sound, (value) => 32_767 * Math.max(-1, Math.min(1, value)));
    const stereo = new Int16Array(2 * frames);
    samples.forEach((value, at) => stereo.fill(value, 2 * at, 2 * at + 2));
    writeSync(file, new Uint8Array(stereo.buffer));
    begins.push(part * partSec + beginSec);
  }
  closeSync(file);
  return begins;
}

const top = mkdtempSync(join(tmpdir(), 'evenfall-lesson-'));
const [lesson, listed] = [join(top, 'lesson.wav'), join(top, 'listed.json')];
const begins = await writeLesson(lesson);
const beganMs = performance.now();
const out = openSync(listed, 'w');
const child = spawn(process.execPath, [COMMAND, 'desk', lesson, '--json', '--workers', '1', '--quiet'], {
  stdio: ['ignore', out, 'ignore'],
  env: { ...process.env, XDG_CACHE_HOME: join(top, 'cache') },
});
const peaks = new Map<number, number>();
const looking = setInterval(() => {
  for (const pid of [child.pid!, ...childrenOf(child.pid!)]) {
    const peakMb = peakMbOf(pid);
    if (peakMb > 0) peaks.set(pid, peakMb);
  }
}, LOOK_MS);
await new Promise((resolved) => child.on('exit', resolved));
clearInterval(looking);
closeSync(out);
const wallSec = (performance.now() - beganMs) / 1000;

interface Listed {
  readonly startSec: number;
  readonly endSec: number;
  readonly report: { readonly exercise: ExerciseChoice } | null;
}
const { students } = JSON.parse(readFileSync(listed, 'utf8')) as {
  readonly students: readonly { readonly attempts: readonly Listed[] }[];
};
const all = students.flatMap((student) => student.attempts);
const told = all.filter(({ report }) => report !== null);
/** The lead-in lies before the first stroke. */
const foundAt = (part: number): Listed | undefined =>
  told.find(({ startSec, endSec }) => startSec < begins[part]! + 3 && endSec > begins[part]! + 1);
const right = begins.filter((_, part) => {
  const exercise = foundAt(part)?.report?.exercise;
  return exercise?.key === exerciseAt(part).key && exercise.form === exerciseAt(part).form;
}).length;
console.log(
  `\n${fixed((attempts * partSec) / 60, 0)} minutes, ${attempts} attempts; load ${loadavg()[0]!.toFixed(1)}\n`,
);
console.log(
  table(
    ['found and right', 'exercises invented', 'other stretches listed', 'memory, command and helper', 'time'],
    [
      [
        `${right} of ${attempts}`,
        String(told.length - right),
        String(all.length - told.length),
        `${fixed(
          [...peaks.values()].reduce((sum, mb) => sum + mb, 0),
          0,
        )} MB`,
        `${fixed(wallSec, 0)} s`,
      ],
    ],
  ),
);
rmSync(top, { recursive: true });
