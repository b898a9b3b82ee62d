import {
  chmodSync,
  copyFileSync,
  existsSync,
  linkSync,
  mkdirSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  rmSync,
  statSync,
  symlinkSync,
  writeFileSync,
} from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { parseMidi } from 'midi-file';
import { afterAll, beforeEach, describe, expect, it } from 'vitest';
import { encodeMidi } from '../../src/io/exchange/index.ts';
import { checkOutput, checkOutputFolder, writeOutput } from '../../src/terminal/output.ts';
import { reviewPage } from '../../src/ui/review/page/in-node.ts';
import { encodePile } from '../../src/terminal/pile/csv.ts';
import { madeUp } from '../io/review/made-up.ts';
import { evenfall, ROOT } from './built.ts';

const ATTEMPT = join(ROOT, 'audio-fixtures/clean-scale/attempt.wav');
const top = mkdtempSync(join(tmpdir(), 'evenfall-output-'));
let folder: string;
let runs = 0;
const at = (name: string): string => join(folder, name);

beforeEach(() => {
  folder = join(top, String((runs += 1)));
  mkdirSync(folder);
  copyFileSync(ATTEMPT, at('take.wav'));
  writeFileSync(at('letter.txt'), 'Dear teacher');
});
afterAll(() => rmSync(top, { recursive: true }));

describe('where the command writes to', () => {
  const OPTIONS = { inputs: [], force: false };

  it('is never what it reads, by whatever name, nor any other recording, even by force', async () => {
    symlinkSync(at('take.wav'), at('link.csv'));
    linkSync(at('take.wav'), at('hard.csv'));
    for (const name of ['take.wav', 'link.csv', 'hard.csv'])
      for (const force of [false, true])
        for (const inputs of [[], [at('take.wav')]])
          await expect(checkOutput(at(name), 'csv', { inputs, force })).rejects.toThrow(/never written over/);
    await expect(
      checkOutput(at('letter.txt'), 'csv', { inputs: [at('letter.txt')], force: true }),
    ).rejects.toThrow(/never written over/);
    for (const inputs of [folder, at('take.wav')])
      await expect(checkOutputFolder(folder, { inputs: [inputs], force: true })).rejects.toThrow(
        /never written over/,
      );
    await expect(checkOutputFolder(at('pages'), { inputs: [folder], force: false })).resolves.toBeUndefined();
  });

  it('is a file of somebody else’s only by force, and one of its own always', async () => {
    await expect(checkOutput(at('letter.txt'), 'csv', OPTIONS)).rejects.toThrow(/--force/);
    await checkOutput(at('letter.txt'), 'csv', { inputs: [], force: true });
    mkdirSync(at('web'));
    writeFileSync(at('web/recording-3.html'), '<h1>Mine</h1>');
    await expect(checkOutputFolder(at('web'), OPTIONS)).rejects.toThrow(/recording-3\.html .*--force/);
    const own = {
      csv: encodePile({ students: [], silent: [], unread: [], copies: [], remarks: [] }),
      html: await reviewPage(madeUp(), 'de'),
      midi: encodeMidi([{ timeSec: 0, releaseSec: 1, midi: 60, levelDb: -20 }]),
    };
    for (const kind of ['csv', 'html', 'midi'] as const) {
      await writeOutput(at(kind), own[kind]);
      for (const as of ['csv', 'html', 'midi'] as const) {
        const looked = checkOutput(at(kind), as, OPTIONS);
        if (as === kind) await looked;
        else await expect(looked).rejects.toThrow(/--force/);
      }
    }
  });

  it('is looked at before, and left as it was; then written whole, beside and moved', async () => {
    await checkOutput(at('new/below/out.csv'), 'csv', OPTIONS);
    expect(readdirSync(at('new/below'))).toEqual([]);
    for (const place of ['letter.txt/out.csv', '.'])
      await expect(checkOutput(at(place), 'csv', { inputs: [], force: true })).rejects.toThrow(
        /could not be written: (its folder is a file|it is a folder)\. Choose another/,
      );
    writeFileSync(at('target.csv'), '');
    chmodSync(at('target.csv'), 0o640);
    symlinkSync(at('target.csv'), at('link.csv'));
    await writeOutput(at('link.csv'), 'through the link');
    expect(readFileSync(at('target.csv'), 'utf8')).toBe('through the link');
    expect(statSync(at('target.csv')).mode & 0o777).toBe(0o640);
    expect(readdirSync(folder).filter((name) => name.endsWith('.part'))).toEqual([]);
  });
});

describe('evenfall, asked to write', { timeout: 120_000 }, () => {
  it('refuses before the work what it must not write over, and leaves it as it was', async () => {
    const before = readFileSync(at('take.wav'));
    for (const words of [
      ['transcribe', at('take.wav'), '--midi', at('take.wav'), '--force'],
      ['transcribe', at('take.wav'), '--midi', at('letter.txt')],
      ['desk', folder, '--csv', at('take.wav')],
      ['desk', folder, '--csv', at('letter.txt')],
      ['desk', folder, '--html', folder],
    ]) {
      const { code, out, err } = await evenfall(words, { env: { XDG_CACHE_HOME: at('cache') } });
      expect({ code, out }).toEqual({ code: 2, out: '' });
      expect(err).toMatch(/never written over|was not written by evenfall/);
    }
    expect(Buffer.compare(readFileSync(at('take.wav')), before)).toBe(0);
    expect(readFileSync(at('letter.txt'), 'utf8')).toBe('Dear teacher');
    expect(existsSync(at('cache'))).toBe(false);
  });

  it('puts a table or a MIDI file on standard output where the name is -', async () => {
    const table = await evenfall(['desk', at('take.wav'), '--csv', '-'], {
      env: { XDG_CACHE_HOME: at('cache') },
    });
    expect(table.out).toMatch(/^student,file,recorded,[^\n]*\r\n[^\n]*take\.wav[^\n]*E major[^\n]*\r\n$/);
    const midi = at('out.mid');
    await evenfall(['transcribe', at('take.wav'), '--midi', '-'], { outTo: midi });
    expect(parseMidi(readFileSync(midi)).header.ticksPerBeat).toBe(19_200);
  });

  it('ends with a code and a sentence, and no trace of the program, where standard output is full', async () => {
    const { code, err } = await evenfall(['exercises'], { outTo: '/dev/full' });
    expect(code).toBe(2);
    expect(err).toBe(
      'evenfall: standard output: It could not be written: there is no room left there. Choose another place.\n',
    );
  });
});
