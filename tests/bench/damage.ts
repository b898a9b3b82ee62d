/**
 * Harms every sample of every container and decodes it, each within five seconds or it is ended:
 * `npm run bench:damage -- [FROM [COUNT]]`. What hung, broke down or told of its insides is named with its seed.
 */
import { fork } from 'node:child_process';
import type { ChildProcess } from 'node:child_process';
import { readdirSync, readFileSync } from 'node:fs';
import { resolve } from 'node:path';
import { tellNotice } from '../../src/engine/index.ts';
import { DecodeError } from '../../src/io/decode/index.ts';
import { decodeInNode } from '../../src/io/decode/node.ts';
import { harmed, HARMS, INSIDES } from '../support/damage.ts';

const MOST_MS = 5_000;
const SAMPLES = resolve(import.meta.dirname, '../io/decode/samples');
const FILES = readdirSync(SAMPLES).filter((file) => !file.endsWith('.md'));

/** What became of one: 'sound', 'refused', or what must not be. */
interface Outcome {
  readonly kind: 'sound' | 'refused' | 'no error of ours' | 'insides told' | 'broke down' | 'hung';
  readonly said: string;
}

const fileOf = (seed: number): string => FILES[seed % FILES.length]!;
const harmOf = (seed: number) => HARMS[Math.floor(seed / FILES.length) % HARMS.length]!;

async function decoded(seed: number): Promise<Outcome> {
  const whole = new Uint8Array(readFileSync(resolve(SAMPLES, fileOf(seed))));
  const bytes = harmed(whole, harmOf(seed), seed);
  try {
    const said = (await decodeInNode(bytes.buffer, 'it')).remarks
      .map((remark) => tellNotice(remark))
      .join(' ');
    return { kind: INSIDES.test(said) ? 'insides told' : 'sound', said };
  } catch (error) {
    if (!(error instanceof DecodeError)) return { kind: 'no error of ours', said: String(error) };
    return { kind: INSIDES.test(error.message) ? 'insides told' : 'refused', said: error.message };
  }
}

async function bench(from: number, count: number): Promise<void> {
  const sums = new Map<string, number>();
  let slowestMs = 0;
  let helper = open();
  for (let seed = from; seed < from + count; seed++) {
    const startedMs = performance.now();
    const outcome = await ask(helper, seed);
    slowestMs = Math.max(slowestMs, performance.now() - startedMs);
    sums.set(outcome.kind, (sums.get(outcome.kind) ?? 0) + 1);
    if (outcome.kind === 'hung' || outcome.kind === 'broke down') helper = open();
    if (outcome.kind !== 'sound' && outcome.kind !== 'refused')
      console.log(`${seed} ${fileOf(seed)}, ${harmOf(seed)}: ${outcome.kind}. ${outcome.said}`);
  }
  helper.kill();
  const told = [...sums].map(([kind, number]) => `${kind} ${number}`).join(', ');
  console.log(`${count} files from ${from}: ${told}; slowest ${slowestMs.toFixed(0)} ms`);
}

const open = (): ChildProcess =>
  fork(import.meta.filename, ['--helper'], { stdio: ['ignore', 'ignore', 'ignore', 'ipc'] });

function ask(helper: ChildProcess, seed: number): Promise<Outcome> {
  return new Promise((settle) => {
    const end = (outcome: Outcome): void => {
      clearTimeout(watch);
      helper.removeAllListeners();
      settle(outcome);
    };
    const watch = setTimeout(() => {
      helper.kill('SIGKILL');
      end({ kind: 'hung', said: '' });
    }, MOST_MS);
    helper.once('message', end);
    helper.once('exit', (code, signal) => end({ kind: 'broke down', said: String(signal ?? code) }));
    helper.send(seed);
  });
}

if (process.argv[2] === '--helper')
  process.on('message', (seed: number) => void decoded(seed).then((outcome) => process.send?.(outcome)));
else void bench(Number(process.argv[2] ?? 0), Number(process.argv[3] ?? 2_400));
