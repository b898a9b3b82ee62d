import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { encodeWav } from '../../src/io/encode/index.ts';
import { triadsBy } from '../support/hands-apart.ts';
import { evenfall } from './built.ts';

const folder = mkdtempSync(join(tmpdir(), 'evenfall-apart-'));
const pile = join(folder, 'week');
const paths = {
  together: join(pile, 'Mara', '20261114 1.wav'),
  left: join(pile, 'Mara', '20261114 2.wav'),
  right: join(pile, 'Mara', '20261114 3.wav'),
};

interface Told {
  readonly file?: string;
  readonly exercise: {
    readonly hands: string;
    readonly handLikelihood?: { readonly left: number; readonly right: number };
  };
  readonly unsure: readonly unknown[];
}

async function analyse(args: readonly string[]): Promise<readonly Told[]> {
  const { out, err, code } = await evenfall(['analyse', ...args, '--json']);
  expect({ err, code }).toEqual({ err: '', code: 0 });
  return out
    .trim()
    .split('\n')
    .map((line) => JSON.parse(line) as Told);
}

/** How many notes of both hands are left unsure. */
function unsureOf(told: readonly Told[]): number {
  return told.find(({ exercise }) => exercise.hands === 'together')!.unsure.length;
}

let byItself: number;
beforeAll(async () => {
  mkdirSync(join(pile, 'Mara'), { recursive: true });
  for (const [hands, path] of Object.entries(paths)) {
    const sound = await triadsBy(hands as keyof typeof paths);
    writeFileSync(path, new Uint8Array(encodeWav(sound)));
  }
  byItself = unsureOf(await analyse([paths.together]));
}, 120_000);
afterAll(() => rmSync(folder, { recursive: true }));

describe('both hands beside hands alone', { timeout: 120_000 }, () => {
  it('are surer in one call, though they come first, and results come in the order of the files', async () => {
    expect(byItself).toBeGreaterThan(0);
    const told = await analyse(Object.values(paths));
    expect(told.map(({ file }) => file)).toEqual(Object.values(paths));
    expect(unsureOf(told)).toBeLessThan(byItself);
  });

  it('are surer in a later call that is given the piano’s file', async () => {
    const piano = join(folder, 'piano.json');
    await analyse([paths.left, paths.right, '--piano', piano]);
    expect(unsureOf(await analyse([paths.together, '--piano', piano]))).toBeLessThan(byItself);
  });

  it('are surer on the desk, where one student handed them in on one day', async () => {
    const desk = async (file: string): Promise<number> => {
      const { out } = await evenfall(['desk', file, '--json', '--quiet'], {
        env: { TZ: 'UTC', XDG_CACHE_HOME: join(folder, 'cache') },
      });
      const { students } = JSON.parse(out) as { students: { attempts: { report: Told }[] }[] };
      return unsureOf(students[0]!.attempts.map(({ report }) => report));
    };
    const alone = await desk(paths.together);
    expect(alone).toBeGreaterThan(0);
    expect(await desk(pile)).toBeLessThan(alone);
  });

  it('which hand was said once is the likelier one in a later call with the same file', async () => {
    const piano = join(folder, 'said.json');
    const said = ['--key', 'G major', '--form', 'triads', '--hands', 'right', '--octaves', '1'];
    await analyse([paths.left, paths.left, paths.left, ...said, '--piano', piano]);
    const [after] = await analyse([paths.left, '--piano', piano]);
    expect(after?.exercise).toMatchObject({ hands: 'right' });
    expect(after?.exercise.handLikelihood?.right).toBeGreaterThan(0.5);
  });
});
