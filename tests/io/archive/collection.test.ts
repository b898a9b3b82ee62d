import { readFileSync } from 'node:fs';
import { resolve } from 'node:path';
import { describe, expect, it } from 'vitest';
import { ArchiveError, openCollection } from '../../../src/io/archive/index.ts';
import { sample } from '../decode/reference.ts';
import { layZip, type Laid } from './zip.ts';

const text = (letters: string): Uint8Array => new TextEncoder().encode(letters);
const bytes = (...values: readonly (string | number)[]): Uint8Array =>
  Uint8Array.from(values.flatMap((one) => (typeof one === 'number' ? [one] : [...text(one)])));
const NOTE: Laid = { name: 'one.txt', bytes: text('one, and one again, and one again') };
const named = (...names: readonly (string | Uint8Array)[]): Blob =>
  new Blob([layZip(names.map((name) => ({ ...NOTE, name })))]);
const namesIn = async (file: Blob): Promise<readonly string[]> =>
  (await openCollection(file)).members.map(({ name }) => name);

/** Bytes by the Unicode Consortium's tables VENDORS/MICSFT/PC/CP437.TXT, CP850.TXT and WINDOWS/CP1252.TXT. */
describe('names are read as they were meant', () => {
  it.each([
    {
      page: '437 or 850: ä is 84',
      name: bytes('J', 0x84, 'ger/Tonleiter.m4a'),
      meant: 'Jäger/Tonleiter.m4a',
    },
    { page: '437 or 850: ü 81, ß e1', name: bytes('Gr', 0x81, 0xe1, 'e.wav'), meant: 'Grüße.wav' },
    {
      page: '437 or 850: Ö 99, é 82',
      name: bytes(0x99, 'zlem Andr', 0x82, '.wav'),
      meant: 'Özlem André.wav',
    },
    { page: '850: ø 9b, Á b5', name: bytes('S', 0x9b, 'ren ', 0xb5, 'lvaro.wav'), meant: 'Søren Álvaro.wav' },
    { page: '1252: ä is e4', name: bytes('J', 0xe4, 'ger/Tonleiter.m4a'), meant: 'Jäger/Tonleiter.m4a' },
    { page: '1252: ü fc, ß df', name: bytes('Gr', 0xfc, 0xdf, 'e.wav'), meant: 'Grüße.wav' },
    { page: '1252: é e9, ö f6', name: bytes('Ren', 0xe9, ' Bj', 0xf6, 'rn.wav'), meant: 'René Björn.wav' },
    { page: 'UTF-8, unsaid (macOS)', name: bytes('J', 0xc3, 0xa4, 'ger.wav'), meant: 'Jäger.wav' },
  ])('in code page $page', async ({ name, meant }) => {
    expect(await namesIn(named(name))).toEqual([meant]);
  });

  it('in one code page for all of an archive, which its clearest name tells', async () => {
    // õ of 850 is ä of 1252; the ü of the second name settles it.
    expect(await namesIn(named(bytes('J', 0xe4, 'ger.wav'), bytes('M', 0xfc, 'ller.wav')))).toEqual([
      'Jäger.wav',
      'Müller.wav',
    ]);
  });

  it('with the slashes of Windows, and without ways out of the folder or signs that are not seen', async () => {
    expect(
      await namesIn(
        named('week 47\\Anna\\scale.m4a', '../../x.wav', 'C:\\Ben\\a.wav', 'on\u202ee.wav', '..'),
      ),
    ).toEqual(['week 47/Anna/scale.m4a', 'x.wav', 'Ben/a.wav', 'one.wav', '5']);
  });

  it('and told apart where two are alike', async () => {
    expect(await namesIn(named('a/take.wav', 'a/take.wav', 'a\\TAKE.wav', 'a/take (2).wav'))).toEqual([
      'a/take.wav',
      'a/take (2).wav',
      'a/TAKE (3).wav',
      'a/take (2) (2).wav',
    ]);
  });
});

describe('what is sound is taken, what is not is named', () => {
  it('a locked member, another packing and one that would grow without end beside a good one', async () => {
    const file = layZip([
      NOTE,
      { ...NOTE, name: 'locked.wav', flags: 1 },
      { ...NOTE, name: 'odd.wav', method: 14, packed: text('x') },
      { ...NOTE, name: 'bomb.wav', sizeBytes: 2 ** 21 },
    ]);
    const { members, refused } = await openCollection(new Blob([file]));
    expect(members.map(({ name }) => name)).toEqual(['one.txt']);
    expect(refused).toEqual([
      { name: 'locked.wav', reason: { trouble: 'zip-locked' } },
      { name: 'odd.wav', reason: { trouble: 'zip-packed-otherwise' } },
      { name: 'bomb.wav', reason: { trouble: 'zip-member-swells', name: 'bomb.wav' } },
    ]);
  });

  it('a damaged member leaves the others whole', async () => {
    const { members } = await openCollection(
      new Blob([layZip([{ ...NOTE, name: 'bad.wav', crc: 1 }, NOTE])]),
    );
    await expect(members[0]!.read()).rejects.toThrow(/bad\.wav is damaged/);
    expect(new TextDecoder().decode(await members[1]!.read())).toMatch(/^one, and/);
  });

  it.each([
    ['two files in one place', layZip([NOTE, { ...NOTE, name: 'two', headerAt: 0, unlaid: true }])],
    ['a file cut short', layZip([NOTE]).slice(0, -9)],
    ['one part of several', layZip([NOTE], { disk: 1 })],
  ])('but nothing of %s', async (_, file) => {
    await expect(openCollection(new Blob([file]))).rejects.toThrow(ArchiveError);
  });
});

it('a zip64 file as another program writes it is opened', async () => {
  const file = readFileSync(resolve(import.meta.dirname, 'samples/zip64.zip'));
  const { members, refused } = await openCollection(new Blob([file]));
  expect(refused).toEqual([]);
  expect(members.map(({ name, sizeBytes }) => ({ name, sizeBytes }))).toEqual([
    { name: 'Anna/scale.ogg', sizeBytes: 2315 },
  ]);
  const whole = new Uint8Array(sample('opus-mono.ogg'));
  expect(Buffer.compare(await members[0]!.read(), whole)).toBe(0);
  expect(Buffer.compare(await members[0]!.head(100), whole.slice(0, 100))).toBe(0);
});

it.each([0, 8])(
  'the first bytes of a member tell what it is, without the rest (method %i)',
  async (method) => {
    const long = Uint8Array.from({ length: 300_000 }, (_, at) => (at * at) >> 7);
    const [member] = (await openCollection(new Blob([layZip([{ name: 'long', bytes: long, method }])])))
      .members;
    expect(Buffer.compare(await member!.head(70_000), long.slice(0, 70_000))).toBe(0);
    expect(Buffer.compare(await member!.head(400_000), long)).toBe(0);
  },
);
