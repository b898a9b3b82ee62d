import {
  appendFileSync,
  copyFileSync,
  existsSync,
  mkdirSync,
  mkdtempSync,
  readFileSync,
  readdirSync,
  rmSync,
  writeFileSync,
} from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { encodeWav } from '../../src/io/encode/index.ts';
import { ENGLISH_WORDS } from '../support/english.ts';
import { deskFaults } from '../support/desk-schema.ts';
import { evenfall, ROOT, type Result } from './built.ts';

const fixture = (name: string): string => join(ROOT, 'audio-fixtures', name, 'attempt.wav');
const folder = mkdtempSync(join(tmpdir(), 'evenfall-desk-'));
const pile = join(folder, 'week 46');
const kept = join(folder, 'cache');

/** Runs `desk`. `stopWhen`: looked at all the time; Ctrl-C is pressed when it says so. */
const desk = (
  args: readonly string[],
  cache = kept,
  stopWhen: () => boolean = () => false,
): Promise<Result> => evenfall(['desk', ...args], { env: { TZ: 'UTC', XDG_CACHE_HOME: cache }, stopWhen });

const filesBelow = (path: string): readonly string[] =>
  readdirSync(path, { recursive: true, encoding: 'utf8' }).sort();

beforeAll(() => {
  mkdirSync(join(pile, 'Mara'), { recursive: true });
  copyFileSync(fixture('left-hand'), join(pile, 'Mara', '20261107.wav'));
  copyFileSync(fixture('left-hand'), join(pile, 'Mara', '20261114.wav'));
  // A copy would be told as one: this has something behind its sound.
  appendFileSync(join(pile, 'Mara', '20261114.wav'), 'a week later');
  copyFileSync(fixture('clean-scale'), join(pile, 'Jonas - e dur.wav'));
  writeFileSync(join(pile, 'broken.m4a'), 'This is no sound.');
  writeFileSync(join(pile, 'notes.txt'), 'Dear teacher');
  mkdirSync(join(folder, 'letters'));
  writeFileSync(join(folder, 'letters/to-a-teacher.txt'), 'Dear teacher');
});
afterAll(() => rmSync(folder, { recursive: true }));

describe('evenfall desk', { timeout: 120_000 }, () => {
  it('sorts a folder, says what changed, goes on after a bad file, and writes nothing into the folder', async () => {
    const before = filesBelow(pile);
    const { code, out, err } = await desk([pile]);
    expect(err).toBe('evenfall: 1 other file was passed over.\n');
    expect(out).toMatch(/\nLeft out\n {2}broken\.m4a: .*Convert\s+it/s);
    expect(err).not.toMatch(/ {4}at /);
    expect(code).toBe(3);
    expect(out).toMatch(
      /^Jonas\n {2}E major · scale, one octave · right hand · 96 beats a minute\n {4}Every note right/,
    );
    expect(out).toMatch(/\nMara\n {2}C minor · tonic arpeggio, two octaves · left hand/);
    expect(out).toMatch(/Since 7 Nov 2026: as before\.\n {4}14 Nov 2026, Mara\/20261114\.wav 0:0/);
    expect(out).toMatch(/\n4 recordings, 3 attempts of 2 students; 1 that could not be read\.\n$/);
    expect(filesBelow(pile)).toEqual(before);
  });

  it('speaks German throughout where it is asked to, on its pages too', async () => {
    const pages = join(folder, 'seiten');
    const { out, err } = await desk([pile, '--language', 'de', '--html', pages]);
    const index = readFileSync(join(pages, 'index.html'), 'utf8').replace(/<style>[\s\S]*?<\/style>/, '');
    const shown = index.replace(/<head>[\s\S]*?<\/head>/, '').replace(/<[^>]*>/g, '\n');
    for (const text of [out, err, shown])
      for (const line of text.split('\n')) expect(line).not.toMatch(ENGLISH_WORDS);
    expect(out).toMatch(/Seit dem 7\. Nov\.? 2026: wie zuvor\./);
    expect(out).toMatch(/4 Aufnahmen, 3 Versuche von 2 Personen; 1 nicht lesbar\./);
  });

  it('prints one JSON object of its published schema, and a table beside it', async () => {
    const csv = join(folder, 'out.csv');
    const { out, err } = await desk([pile, '--json', '--csv', csv, '--quiet', '--fresh']);
    expect(err.trim().split('\n')).toHaveLength(1);
    const object = JSON.parse(out) as {
      students: { name: string; attempts: unknown[] }[];
      unread: unknown[];
    };
    expect(deskFaults(object)).toEqual([]);
    expect(object.students.map(({ name, attempts }) => [name, attempts.length])).toEqual([
      ['Jonas', 1],
      ['Mara', 2],
    ]);
    expect(object.unread).toHaveLength(1);
    const rows = readFileSync(csv, 'utf8').trimEnd().split('\r\n');
    expect(rows).toHaveLength(5);
    expect(rows[4]).toMatch(/^,broken\.m4a,,+.*not a sound file/);
    expect(rows[0]).toMatch(/^student,file,recorded,start_s,/);
    expect(rows[2]).toMatch(/^Mara,Mara\/20261107\.wav,2026-11-07T00:00:00\.000Z,/);
  });

  it('keeps what it has sorted, by content: the same again takes from there, also under another name', async () => {
    const results = (): readonly string[] => filesBelow(join(kept, 'evenfall/desk'));
    const first = await desk([pile]);
    const names = results();
    // One name a content.
    expect(names).toHaveLength(3);
    for (const name of names) {
      const path = join(kept, 'evenfall/desk', name);
      writeFileSync(path, readFileSync(path, 'utf8').replaceAll(/"endSec":[\d.]+/g, '"endSec":754'));
    }
    copyFileSync(fixture('clean-scale'), join(folder, 'another.wav'));
    expect((await desk([pile])).out).toBe(first.out.replaceAll(/–\d+:\d\d/g, '–12:34'));
    expect((await desk([join(folder, 'another.wav')])).out).toMatch(/–12:34/);
    expect((await desk([pile, '--fresh'])).out).toBe(first.out);
    expect((await desk([pile, '--bpm', '90'])).out).not.toMatch(/–12:34/);
  });

  it('stops at Ctrl-C with 130, says how to go on, and leaves nothing half done', async () => {
    const many = join(folder, 'many');
    mkdirSync(many);
    for (let index = 0; index < 12; index++) {
      const silence = new Float32Array(10 * 44_100).fill(0.001 * index);
      writeFileSync(
        join(many, `${index}.wav`),
        new Uint8Array(encodeWav({ channels: [silence], sampleRateHz: 44_100 })),
      );
    }
    const cache = join(folder, 'other cache');
    const results = (): readonly string[] =>
      existsSync(join(cache, 'evenfall/desk')) ? filesBelow(join(cache, 'evenfall/desk')) : [];
    // A result lies there before it is told of; a helper that writes another has told of its first. At most four work at once.
    const { code, out, err } = await desk([many], cache, () => results().length >= 5);
    expect({ code, out }).toEqual({ code: 130, out: '' });
    const done = Number(
      /^evenfall: Stopped\. (\d+) of 12 recordings are sorted and kept; the same/.exec(err)?.[1],
    );
    expect(done).toBeGreaterThanOrEqual(1);
    expect(done).toBeLessThan(12);
    for (const name of results().filter((one) => one.endsWith('.json')))
      expect(JSON.parse(readFileSync(join(cache, 'evenfall/desk', name), 'utf8'))).toHaveProperty('attempts');
    expect((await desk([many], cache)).code).toBe(4);
    expect(results().filter((name) => name.endsWith('.json'))).toHaveLength(12);
  });

  it.each([
    ['no folder', () => [], 2, /desk needs a folder/],
    ['a folder that is not there', () => [join(folder, 'nowhere')], 3, /nowhere: There is no such file/],
    ['a folder without recordings', () => [join(folder, 'letters')], 4, /There is no recording in it/],
    ['workers of no number', () => [pile, '--workers', '1.5'], 2, /must be a whole number from 1 to 16/],
    ['an option that does not exist', () => [pile, '--cvs', 'x'], 2, /no option --cvs.*Did you mean "--csv"/],
  ])('ends after %s with its code and a reason', async (_, args, code, reason) => {
    const result = await desk(args());
    expect(result).toMatchObject({ code, out: '' });
    expect(result.err).toMatch(reason);
  });

  it('refuses more recordings than a week can bring', async () => {
    const heap = join(folder, 'heap');
    mkdirSync(heap);
    for (let index = 0; index < 201; index++) writeFileSync(join(heap, `${index}.wav`), 'RIFF0000WAVE');
    const { code, err } = await desk([heap]);
    expect(code).toBe(2);
    expect(err).toMatch(/There are 201 recordings; at most 200/);
    expect(existsSync(join(heap, 'out'))).toBe(false);
  });
});
