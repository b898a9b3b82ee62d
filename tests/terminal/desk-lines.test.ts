import {
  appendFileSync,
  copyFileSync,
  existsSync,
  mkdirSync,
  mkdtempSync,
  readFileSync,
  rmSync,
  truncateSync,
} from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { evenfall, ROOT } from './built.ts';

const SAMPLES = join(ROOT, 'tests/io/decode/samples');
const top = mkdtempSync(join(tmpdir(), 'evenfall-lines-'));
const folder = join(top, 'archive');
const env = { XDG_CACHE_HOME: join(top, 'cache') };
const NAMES = [
  'wav-s24.wav',
  'flac-s24.flac',
  'mp3-stereo.mp3',
  'opus-mono.ogg',
  'vorbis-mono.ogg',
  'wav-u8.wav',
];
const paths = NAMES.map((name) => join(folder, 'Mara', name));

beforeAll(() => {
  mkdirSync(join(folder, 'Mara'), { recursive: true });
  for (const [at, name] of NAMES.entries()) copyFileSync(join(SAMPLES, name), paths[at]!);
});
afterAll(() => rmSync(top, { recursive: true }));

interface Line {
  readonly file: string;
  readonly student: string;
  readonly reason: string;
  readonly report?: unknown;
}
const linesIn = (text: string): readonly Line[] =>
  text.split('\n').flatMap((line) => (line === '' ? [] : [JSON.parse(line) as Line]));
const filesIn = (text: string): readonly string[] => linesIn(text).map(({ file }) => file);

describe('an archive, a line a recording', () => {
  it('is the same in parts as in one, each recording once, also from a list on standard input', async () => {
    const whole = await evenfall(['desk', '--lines', '-', '-q', folder], { env });
    expect([...filesIn(whole.out)].sort()).toEqual([...paths].sort());
    expect(linesIn(whole.out)[0]).toMatchObject({
      format: 'evenfall-recording',
      version: 1,
      student: 'Mara',
    });
    expect(linesIn(whole.out).every(({ reason }) => reason !== '')).toBe(true);
    const parts = await Promise.all(
      ['1/3', '2/3', '3/3'].map((shard) =>
        evenfall(['desk', '--lines', '-', '-q', '--shard', shard, '--list', '-'], {
          env,
          input: new TextEncoder().encode(`${paths.join('\n')}\n`),
        }),
      ),
    );
    const together = parts.flatMap(({ out }) => out.split('\n').filter((line) => line !== ''));
    expect(together.sort()).toEqual(whole.out.trim().split('\n').sort());
  });

  it('goes on where it was stopped, or broken off within a line: nothing twice, nothing missing', async () => {
    const out = join(top, 'out.jsonl');
    const command = ['desk', '--lines', out, '-q', '--workers', '1', '--fresh', folder];
    await evenfall(command, { env, stopWhen: () => existsSync(out) && readFileSync(out).length > 0 });
    const stopped = filesIn(readFileSync(out, 'utf8'));
    expect(stopped.length).toBeGreaterThan(0);
    appendFileSync(out, '{"format":"evenfall-recording","file":"half');
    await evenfall(command, { env });
    expect([...filesIn(readFileSync(out, 'utf8'))].sort()).toEqual([...paths].sort());
    // Broken off just before its end, the last line is done again.
    truncateSync(out, readFileSync(out).length - 1);
    await evenfall(command, { env });
    expect([...filesIn(readFileSync(out, 'utf8'))].sort()).toEqual([...paths].sort());
  });

  it('goes through analyse too: each file by itself, from a list, and on where it stopped', async () => {
    const out = join(top, 'analyses.jsonl');
    const example = join(ROOT, 'audio-fixtures', 'clean-scale', 'attempt.wav');
    const list = new TextEncoder().encode([example, paths[0]!, join(folder, 'no.wav'), example].join('\n'));
    const command = ['analyse', '--list', '-', '--lines', out, '-q'];
    const first = await evenfall(command, { env, input: list });
    expect(first.code).toBe(4);
    const whole = readFileSync(out, 'utf8');
    expect(filesIn(whole)).toEqual([example, paths[0]!, join(folder, 'no.wav')]);
    expect(linesIn(whole).map(({ report }) => report === null)).toEqual([false, true, true]);
    expect(linesIn(whole).map(({ reason }) => reason === '')).toEqual([true, false, false]);
    truncateSync(out, whole.length - 1);
    await evenfall(command, { env, input: list });
    expect(readFileSync(out, 'utf8')).toBe(whole);
    expect((await evenfall(['analyse', example, '--lines', out, '--json'], { env })).code).toBe(2);
    expect((await evenfall(['analyse', example, '--lines', example], { env })).code).toBe(2);
  });

  it('is never written over what is not such a file, and shards are named rightly', async () => {
    const foreign = join(top, 'letter.txt');
    copyFileSync(join(ROOT, 'LICENSE'), foreign);
    expect((await evenfall(['desk', '--lines', foreign, folder], { env })).code).toBe(2);
    for (const shard of ['0/3', '4/3', 'x'])
      expect((await evenfall(['desk', '--lines', '-', '--shard', shard, folder], { env })).code).toBe(2);
  });
});
