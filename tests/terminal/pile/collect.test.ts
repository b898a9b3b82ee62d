import { mkdirSync, mkdtempSync, readFileSync, rmSync, symlinkSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import { zipSync } from 'fflate';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { collect } from '../../../src/terminal/pile/collect.ts';
import { inMemory } from '../../../src/io/decode/index.ts';
import { keep, keptFolder, keptName, printOf, readKept } from '../../../src/terminal/pile/kept.ts';
import { readStudents, Roster } from '../../../src/terminal/pile/students.ts';

const SAMPLES = resolve(import.meta.dirname, '../../io/decode/samples');
const sample = (name: string): Uint8Array => Uint8Array.from(readFileSync(join(SAMPLES, name)));
let top: string;
const put = (path: string, bytes: Uint8Array | string): void => {
  mkdirSync(join(top, path, '..'), { recursive: true });
  writeFileSync(join(top, path), bytes);
};

beforeAll(() => {
  top = join(mkdtempSync(join(tmpdir(), 'evenfall-')), 'week 46');
  put('Mara/AUD-20261101-WA0003.m4a', sample('aac-mono.m4a'));
  put('Mara/older/no ending', sample('opus-mono.ogg'));
  put('Jonas - D major.mp3', sample('mp3-stereo.mp3'));
  put('damaged.m4a', 'no sound at all');
  put('notes.txt', 'Dear teacher');
  put('sheet.pdf', '%PDF-1.7');
  put('.hidden.wav', sample('wav-s24.wav'));
  put('.git/x.wav', sample('wav-s24.wav'));
  put('out/index.html', '<!doctype html>');
  put('out/sound.wav', sample('wav-s24.wav'));
  put(
    'Lena.zip',
    zipSync({
      'a.m4a': sample('aac-mono.m4a'),
      'memo without ending': sample('opus-mono.ogg'),
      'read me.txt': new Uint8Array(3),
      '__MACOSX/a.m4a': new Uint8Array(3),
    }),
  );
  put(
    'Nora.zip',
    zipSync({ '..\\..\\etc\\a.m4a': new Uint8Array(3), 'more.zip': zipSync({ 'a.m4a': new Uint8Array(3) }) }),
  );
  put('cut.zip', zipSync({ 'a.m4a': sample('aac-mono.m4a') }).slice(0, -9));
  symlinkSync(top, join(top, 'round'));
});
afterAll(() => rmSync(join(top, '..'), { recursive: true }));

describe('a folder', () => {
  it('gives its recordings, told by their content, with student and day; not what is hidden, and not what we write', async () => {
    const { recordings, others, refused } = await collect([top], [join(top, 'out')], new Roster([]));
    expect(recordings.map(({ name, student }) => [name, student])).toEqual([
      ['damaged.m4a', 'Damaged'],
      ['Jonas - D major.mp3', 'Jonas'],
      [join('Lena.zip', 'a.m4a'), 'Lena'],
      [join('Lena.zip', 'memo without ending'), 'Lena'],
      [join('Mara', 'AUD-20261101-WA0003.m4a'), 'Mara'],
      [join('Mara', 'older', 'no ending'), 'Mara'],
      [join('Nora.zip', 'etc', 'a.m4a'), 'Nora'],
    ]);
    expect(recordings[4]!.whenMs).toBe(new Date(2026, 10, 1).getTime());
    expect(recordings[2]!.source).toEqual({ path: join(top, 'Lena.zip'), member: 'a.m4a' });
    expect(others).toBe(3);
    expect(refused).toEqual([
      { name: 'cut.zip', reason: { trouble: 'zip-damaged' } },
      { name: join('Nora.zip', 'more.zip'), reason: { trouble: 'file-other', what: 'zip' } },
    ]);
  });

  it('may also be a single recording, which then has the folder that it lies in', async () => {
    const { recordings } = await collect([join(top, 'Mara', 'AUD-20261101-WA0003.m4a')], [], new Roster([]));
    expect(recordings.map(({ name, student }) => [name, student])).toEqual([
      ['AUD-20261101-WA0003.m4a', 'Mara'],
    ]);
  });

  it('that is not there is an error of the system', async () => {
    await expect(collect([join(top, 'nowhere')], [], new Roster([]))).rejects.toThrow(/ENOENT/);
  });
});

describe('results kept', () => {
  const sorted = { durationSec: 3, remarks: [], attempts: [], reason: 'Silence.', print: '1' };

  it('are found again by the bytes and all else that they depend on, and by nothing else', async () => {
    const folder = join(top, '..', 'kept');
    const nameOf = async (bytes: readonly number[], besides: readonly unknown[]) =>
      keptName(await printOf(inMemory(Uint8Array.from(bytes))), besides);
    const name = await nameOf([1, 2], ['0.1.0', null]);
    expect(await readKept(folder, name)).toBeNull();
    await keep(folder, name, sorted);
    expect(await readKept(folder, name)).toEqual(sorted);
    expect(await nameOf([1, 3], ['0.1.0', null])).not.toBe(name);
    expect(await nameOf([1, 2], ['0.1.0', 80])).not.toBe(name);
    writeFileSync(join(folder, `${name}.json`), '{"durationSec":3,"rem');
    expect(await readKept(folder, name)).toBeNull();
    writeFileSync(join(folder, `${name}.json`), '{"durationSec":"3"}');
    expect(await readKept(folder, name)).toBeNull();
  });

  it('lie in the cache folder of the user', () => {
    expect(keptFolder({ XDG_CACHE_HOME: '/x/cache' })).toBe(join('/x/cache', 'evenfall', 'desk'));
    expect(keptFolder({ XDG_CACHE_HOME: 'not/absolute' })).toMatch(/\.cache.evenfall.desk$/);
  });

  it('cannot be kept where there is no folder, and that is no fault', async () => {
    await expect(keep(join(top, 'notes.txt', 'kept'), 'a', sorted)).resolves.toBeUndefined();
  });
});

describe('students', () => {
  it('are known by a file, a line each, and what is not in it is told as it stands', async () => {
    put(
      'students.txt',
      '\ufeff# 3b\r\n\r\nMara Lind: mara, -72 cents, ML, +4 cents\nJörg\n'.normalize('NFD'),
    );
    const known = await readStudents(join(top, 'students.txt'));
    expect(known).toEqual([
      { name: 'Mara Lind', aliases: ['mara', 'ML'], pianosCents: [-72, 4] },
      { name: 'Jörg', aliases: [], pianosCents: [] },
    ]);
    const roster = new Roster(known);
    const paths = [
      'w/MARA/x.wav',
      'w/ML 2.m4a',
      'w/Joerg - C.m4a',
      'w/Nils.m4a',
      'w/NILS 2.m4a',
      'w/rec 1.m4a',
    ];
    expect(paths.map((path) => roster.studentOf(path))).toEqual([
      'Mara Lind',
      'Mara Lind',
      'Jörg',
      'Nils',
      'Nils',
      '',
    ]);
    expect(roster.proposed).toEqual(['Nils']);
    expect(['Mara Lind', 'Jörg', 'Nils'].map((name) => roster.pianosCentsOf(name))).toEqual([
      [-72, 4],
      [],
      [],
    ]);
    expect(await readStudents(null)).toEqual([]);
    await expect(readStudents(join(top, 'nowhere.txt'))).rejects.toThrow(/nowhere\.txt/);
  });
});
