/**
 * Do the tests of a room bite? `npm run mutate -- match --sample 60 --seed 1` changes one token of the room's sources at a time, in
 * a copy of the repository, runs the room's tests and prints which changes no test noticed. Rooms: those of src/engine, or a path.
 * A change that the compiler refuses counts as noticed, and no test is asked. Never fails. A change may also be one that nothing can
 * notice (0 for a bound that is never met): what survives is to be read. A sample may be gone through in pieces: `--from 20` leaves
 * out the first twenty, `--minutes 2` stops after the change that is being tried then.
 */
import { fork, type ChildProcess } from 'node:child_process';
import {
  cpSync,
  existsSync,
  mkdtempSync,
  readFileSync,
  readdirSync,
  rmSync,
  statSync,
  symlinkSync,
  writeFileSync,
} from 'node:fs';
import { tmpdir } from 'node:os';
import { join, relative, resolve } from 'node:path';
import { parseArgs } from 'node:util';
import { mutantsOf, sampleOf, type Mutant } from './mutants.ts';
import type { Answer, Asked } from './runner.ts';
import { createTypes } from './types.ts';

const ROOT = resolve(import.meta.dirname, '../..');
/** What the tests of a room may read. */
const COPIED = [
  'src',
  'tests',
  'audio-fixtures',
  'package.json',
  'vite.config.ts',
  'svelte.config.js',
  'tsconfig.json',
];
/** A run that takes so many times as long as without a change never ends; a machine that others use too is slow at times. */
const TIMES = 5;
const LEAST_MS = 30_000;

const { values, positionals } = parseArgs({
  allowPositionals: true,
  options: {
    sample: { type: 'string', default: '60' },
    seed: { type: 'string', default: '1' },
    /** its tests, where they do not lie as the room does, or not all */
    tests: { type: 'string', multiple: true },
    from: { type: 'string', default: '0' },
    minutes: { type: 'string', default: 'Infinity' },
  },
});
const room = positionals[0];
if (room === undefined) throw new Error('Which room? npm run mutate -- match');
const folder = existsSync(join(ROOT, 'src/engine', room)) ? `engine/${room}` : room.replace(/^src\//, '');
const tests = values.tests ?? [`tests/${folder.replace(/\.ts$/, '')}`];

const beganMs = performance.now();
const copy = mkdtempSync(join(tmpdir(), 'evenfall-mutants-'));
for (const name of COPIED) cpSync(join(ROOT, name), join(copy, name), { recursive: true });
symlinkSync(join(ROOT, 'node_modules'), join(copy, 'node_modules'));
const sources = sourcesIn(join(copy, 'src', folder));
const all = sources.flatMap(mutantsOf);
const from = Number(values.from);
const sample = sampleOf(all, Number(values.sample), Number(values.seed)).slice(from);

const refuses = folder.startsWith('engine/')
  ? createTypes(join(copy, 'src/engine/tsconfig.json'))
  : () => false;

let runner: ChildProcess | null = null;
const whole = await tried(sources[0]!, Infinity);
if (whole.failed) throw new Error(`The tests of ${tests.join(' and ')} fail without any change: ${whole.by}`);
console.log(
  `src/${folder}: ${all.length} changes of one token in ${sources.length} files, ${sample.length} to be tried (seed ${values.seed}); ` +
    `${tests.join(' and ')} alone takes ${(whole.ms / 1000).toFixed(1)} s\n`,
);
const survivors: Mutant[] = [];
let tries = 0;
for (const mutant of sample) {
  if (tries > 0 && performance.now() - beganMs > 60_000 * Number(values.minutes)) break;
  tries += 1;
  const before = readFileSync(mutant.file, 'utf8');
  writeFileSync(mutant.file, mutant.text);
  const refused = refuses(mutant.file);
  const { failed, by } = refused
    ? { failed: true, by: 'the compiler' }
    : await tried(mutant.file, Math.max(LEAST_MS, TIMES * whole.ms));
  writeFileSync(mutant.file, before);
  if (!failed) survivors.push(mutant);
  console.log(failed ? `noticed   ${told(mutant)}   (${by})` : `SURVIVED  ${told(mutant)}`);
}
end();
rmSync(copy, { recursive: true });
const noticed = tries - survivors.length;
console.log(
  `\n${folder}: ${noticed} of ${tries} noticed, ${Math.round((100 * noticed) / tries)} %; ` +
    (tries < sample.length ? `the next is --from ${from + tries}` : 'that was the last'),
);
for (const mutant of survivors) console.log(`  ${told(mutant)}`);

function told({ file, line, was, becomes }: Mutant): string {
  return `${relative(copy, file)}:${line}  ${was} → ${becomes}`;
}

function sourcesIn(path: string): readonly string[] {
  if (statSync(path).isFile()) return [path];
  return readdirSync(path, { recursive: true, encoding: 'utf8' })
    .filter((name) => name.endsWith('.ts'))
    .map((name) => join(path, name))
    .sort();
}

async function tried(changed: string, mostMs: number): Promise<Answer & { readonly ms: number }> {
  const process = (runner ??= await started());
  const askedMs = performance.now();
  const answer = await new Promise<Answer>((answered) => {
    const timer = Number.isFinite(mostMs)
      ? setTimeout(() => {
          end();
          answered({ failed: true, by: 'it never ends' });
        }, mostMs)
      : null;
    process.once('message', (message: Answer) => {
      if (timer !== null) clearTimeout(timer);
      answered(message);
    });
    const asked: Asked = { changed };
    process.send(asked);
  });
  return { ...answer, ms: performance.now() - askedMs };
}

/** In a group of its own, so that its workers end with it. */
function started(): Promise<ChildProcess> {
  const child = fork(join(import.meta.dirname, 'runner.ts'), [copy, ...tests], {
    detached: true,
    execArgv: ['--import', 'tsx'],
    stdio: ['ignore', 'ignore', 'inherit', 'ipc'],
  });
  return new Promise((ready) => child.once('message', () => ready(child)));
}

function end(): void {
  if (runner?.pid !== undefined) process.kill(-runner.pid, 'SIGKILL');
  runner = null;
}
