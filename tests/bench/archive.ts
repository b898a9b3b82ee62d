/**
 * An archive in parts: `npm run build && npm run bench:archive [-- --recordings 60] [--parts 4]`. Short recordings, no two alike, are
 * sorted by the built command, two parts at a time; twice everything at work is killed in the middle, and the same commands go on.
 * Prints what is missing or double, recordings an hour, and the memory of the processes in each quarter of the work. Never fails.
 */
import { spawn } from 'node:child_process';
import type { ChildProcess } from 'node:child_process';
import {
  closeSync,
  existsSync,
  mkdirSync,
  mkdtempSync,
  openSync,
  readdirSync,
  readFileSync,
  readSync,
  rmSync,
} from 'node:fs';
import { loadavg, tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import { parseArgs } from 'node:util';
import type { ExerciseChoice } from '../../src/engine/index.ts';
import { exerciseIn, writeShort } from './short-recordings.ts';
import { fixed, table } from './table.ts';

const { values } = parseArgs({
  options: { recordings: { type: 'string', default: '60' }, parts: { type: 'string', default: '4' } },
});
const recordings = Number(values.recordings);
const parts = Number(values.parts);
const COMMAND = resolve(import.meta.dirname, '../../dist/cli/evenfall.js');
const AT_A_TIME = 2;
/** shares of the work after which all is killed */
const KILLS = [0.3, 0.6];
/** between two looks at memory and progress, ms */
const LOOK_MS = 250;

const top = mkdtempSync(join(tmpdir(), 'evenfall-archive-'));
const [archive, out] = [join(top, 'archive'), join(top, 'out')];

const fileOf = (part: number): string => join(out, `${part}.jsonl`);

/** How far each part's file was counted: bytes, and lines in them. A kill takes away a half line only, which was not counted. */
const counted = new Map<number, { bytes: number; lines: number }>();
const CHUNK = Buffer.alloc(1 << 20);
const NEW_LINE = 10;

/** Whole lines that are there, only what is new being read: the work itself is to have the cores. */
function countLines(part: number): number {
  const so = counted.get(part) ?? { bytes: 0, lines: 0 };
  if (!existsSync(fileOf(part))) return so.lines;
  const file = openSync(fileOf(part), 'r');
  for (;;) {
    const read = CHUNK.subarray(0, readSync(file, CHUNK, 0, CHUNK.length, so.bytes));
    const end = read.lastIndexOf(NEW_LINE) + 1;
    if (end === 0) break;
    so.lines += read.subarray(0, end).reduce((sum, byte) => sum + (byte === NEW_LINE ? 1 : 0), 0);
    so.bytes += end;
  }
  closeSync(file);
  counted.set(part, so);
  return so.lines;
}
const allParts = Array.from({ length: parts }, (_, at) => at + 1);
const linesThere = (): number => allParts.reduce((sum, part) => sum + countLines(part), 0);

function start(part: number): ChildProcess {
  const words = ['desk', archive, '--lines', fileOf(part), '--shard', `${part}/${parts}`];
  return spawn(process.execPath, [COMMAND, ...words, '--workers', '1', '--quiet'], {
    stdio: 'ignore',
    detached: true,
    env: { ...process.env, XDG_CACHE_HOME: join(top, 'cache') },
  });
}

/** Memory of a command and its helpers, MB (Linux: VmRSS of proc(5)). */
function heldMb(pids: readonly number[]): number {
  const kb = readdirSync('/proc')
    .filter((name) => /^\d+$/.test(name))
    .map((name) => {
      try {
        const status = readFileSync(`/proc/${name}/status`, 'utf8');
        const parent = Number(/PPid:\s+(\d+)/.exec(status)?.[1]);
        const isOurs = pids.includes(Number(name)) || pids.includes(parent);
        return isOurs ? Number(/VmRSS:\s+(\d+) kB/.exec(status)?.[1] ?? 0) : 0;
      } catch {
        return 0;
      }
    });
  return kb.reduce((sum, one) => sum + one, 0) / 1024;
}

/** One pass over the parts that are not through; `killAt`: all at work is killed when so many lines are there. True: all are through. */
async function pass(waiting: Set<number>, killAt: number, heldBy: number[]): Promise<boolean> {
  const running = new Map<number, ChildProcess>();
  for (;;) {
    for (const part of waiting) {
      if (running.size >= AT_A_TIME || running.has(part)) continue;
      const child = start(part);
      running.set(part, child);
      child.on('exit', (code) => {
        running.delete(part);
        if (code !== null) waiting.delete(part);
      });
    }
    if (waiting.size === 0) return true;
    await new Promise((wake) => setTimeout(wake, LOOK_MS));
    const done = linesThere();
    const quarter = Math.min(3, Math.floor((4 * done) / recordings));
    const pids = [...running.values()].map(({ pid }) => pid!);
    heldBy[quarter] = Math.max(heldBy[quarter] ?? 0, heldMb(pids));
    if (done < killAt) continue;
    // The whole group: the command and the helpers that it started.
    for (const pid of pids) process.kill(-pid, 'SIGKILL');
    while (running.size > 0) await new Promise((wake) => setTimeout(wake, LOOK_MS));
    return false;
  }
}

mkdirSync(out, { recursive: true });
await writeShort(archive, recordings);
const beganMs = performance.now();
const heldBy: number[] = [];
const waiting = new Set(allParts);
for (const share of KILLS) await pass(waiting, share * recordings, heldBy);
await pass(waiting, Infinity, heldBy);
const wallSec = (performance.now() - beganMs) / 1000;

interface Line {
  readonly file: string;
  readonly attempts: readonly { readonly report: { readonly exercise: ExerciseChoice } | null }[];
}
const linesIn = (part: number): readonly string[] =>
  readFileSync(fileOf(part), 'utf8').split('\n').slice(0, -1);
// Only what is looked at is held: a line is a whole report.
const lines = allParts.flatMap((part) =>
  linesIn(part).map((line) => {
    const { file, attempts } = JSON.parse(line) as Line;
    return { file, found: attempts.map(({ report }) => report?.exercise ?? null) };
  }),
);
const files = new Set(lines.map(({ file }) => file));
const right = lines.filter(({ file, found }) => {
  const wanted = exerciseIn(file);
  return found.length === 1 && found[0]?.key === wanted.key && found[0].form === wanted.form;
}).length;
const linesMb = [...counted.values()].reduce((sum, { bytes }) => sum + bytes, 0) / 1e6;
console.log(
  `\n${recordings} recordings in ${parts} parts, ${AT_A_TIME} at a time, all killed ${KILLS.length} times; load ${loadavg()[0]!.toFixed(1)}\n`,
);
console.log(
  table(
    [
      'missing',
      'double',
      'one attempt, key and form right',
      'wall clock',
      'recordings an hour',
      'memory by quarters',
      'lines, all',
    ],
    [
      [
        String(recordings - files.size),
        String(lines.length - files.size),
        `${right} of ${recordings}`,
        `${fixed(wallSec, 0)} s`,
        fixed((3600 * recordings) / wallSec, 0),
        `${heldBy.map((mb) => fixed(mb, 0)).join(', ')} MB`,
        `${fixed(linesMb, 0)} MB`,
      ],
    ],
  ),
);
rmSync(top, { recursive: true });
