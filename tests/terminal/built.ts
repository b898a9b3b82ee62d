import { spawn } from 'node:child_process';
import { mkdtempSync, openSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import { build } from 'vite';

export const ROOT = resolve(import.meta.dirname, '../..');

export interface Result {
  readonly code: number | null;
  readonly out: string;
  readonly err: string;
}

export interface Running {
  readonly input?: Uint8Array;
  readonly env?: Readonly<Record<string, string>>;
  /** where its standard output goes, e.g. a disk that is full */
  readonly outTo?: string;
  /** nobody reads what it prints */
  readonly closeOut?: boolean;
  /** looked at all the time; Ctrl-C is pressed when it says so */
  readonly stopWhen?: () => boolean;
}

let built: Promise<string> | null = null;

/** The command as it is built, once for all files of a worker → the file to run. */
async function buildCommand(): Promise<string> {
  const outDir = join(mkdtempSync(join(tmpdir(), 'evenfall-command-')), 'cli');
  await build({ root: ROOT, logLevel: 'error', build: { ssr: 'src/evenfall.ts', outDir } });
  return join(outDir, 'evenfall.js');
}

/** Runs the command as a child process, its streams piped as in a script. */
export async function evenfall(args: readonly string[], running: Running = {}): Promise<Result> {
  const command = await (built ??= buildCommand());
  return new Promise((done) => {
    const child = spawn(process.execPath, [command, ...args], {
      cwd: ROOT,
      env: { ...process.env, LC_ALL: 'C.UTF-8', ...running.env },
      stdio: ['pipe', running.outTo === undefined ? 'pipe' : openSync(running.outTo, 'w'), 'pipe'],
    });
    let out = '';
    let err = '';
    child.stdout?.on('data', (chunk: Buffer) => (out += chunk.toString()));
    child.stderr!.on('data', (chunk: Buffer) => (err += chunk.toString()));
    if (running.closeOut) child.stdout?.destroy();
    child.stdin!.on('error', () => undefined);
    child.stdin!.end(running.input ?? '');
    const watch = setInterval(() => running.stopWhen?.() === true && child.kill('SIGINT'), 20);
    child.on('close', (code) => {
      clearInterval(watch);
      done({ code, out, err });
    });
  });
}
