import { copyFileSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { parseMidi } from 'midi-file';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { encodeWav } from '../../src/io/exchange/index.ts';
import { ENGLISH_WORDS } from '../support/english.ts';
import { schemaFaults } from '../support/report-schema.ts';
import { evenfall, ROOT } from './built.ts';

const ATTEMPT = join(ROOT, 'audio-fixtures/clean-scale/attempt.wav');
const AS_E_MAJOR = ['--key', 'E major', '--form', 'scale', '--hands', 'right'];

describe('the command', () => {
  let folder: string;
  beforeAll(() => {
    folder = mkdtempSync(join(tmpdir(), 'evenfall-'));
    writeFileSync(
      join(folder, 'silence.wav'),
      new Uint8Array(encodeWav({ channels: [new Float32Array(96_000)], sampleRateHz: 48_000 })),
    );
    writeFileSync(join(folder, 'empty.wav'), '');
    writeFileSync(join(folder, 'letter.mp3'), 'Dear teacher, here is my recording.');
    copyFileSync(ATTEMPT, join(folder, 'mislabelled.m4a'));
  });
  afterAll(() => rmSync(folder, { recursive: true }));

  it('helps on stdout and ends with 0', async () => {
    const { code, out, err } = await evenfall(['--help']);
    expect({ code, err }).toEqual({ code: 0, err: '' });
    expect(out).toMatch(/evenfall analyse FILE/);
    for (const line of out.split('\n')) expect(line.length).toBeLessThanOrEqual(80);
    expect((await evenfall(['--version'])).out).toMatch(/^evenfall \d+\.\d+\.\d+\n$/);
  });

  it('judges by what somebody says is even, and says what that is at this tempo', async () => {
    const bound = async (...even: string[]): Promise<number> => {
      const { out } = await evenfall(['analyse', ATTEMPT, ...AS_E_MAJOR, '--as-chosen', ...even]);
      return Number(/up to (\d+\.\d) % is even at this tempo/.exec(out)?.[1]);
    };
    const usual = await bound();
    expect(usual).toBeGreaterThan(4);
    expect(await bound('--even', '4')).toBeCloseTo(usual / 2, 1);
  });

  it('prints one JSON object of the contract and nothing else on stdout', async () => {
    const { code, out, err } = await evenfall(['analyse', ATTEMPT, ...AS_E_MAJOR, '--json']);
    expect({ code, err }).toEqual({ code: 0, err: '' });
    const report = JSON.parse(out) as Record<string, unknown>;
    expect(schemaFaults(report)).toEqual([]);
    expect(report).toMatchObject({
      format: 'evenfall-report',
      version: 1,
      exercise: { key: 'E major', form: 'scale', hands: 'right', octaves: 1, octaveShift: 0 },
      audio: { sampleRateHz: 44_100 },
    });
    for (const part of ['tuning', 'notes', 'missed', 'unsure', 'measures'])
      expect(report).toHaveProperty(part);
  });

  it('recognises the exercise when none is said, and reads a file by its content', async () => {
    const { code, out, err } = await evenfall(['analyse', join(folder, 'mislabelled.m4a')]);
    expect({ code, err }).toEqual({ code: 0, err: '' });
    expect(out).toMatch(/^E major · scale, one octave · right hand\n/);
    expect(out).not.toContain('\x1b');
  });

  it('reads standard input', async () => {
    const { code, out } = await evenfall(['analyse', '-', '--json'], { input: readFileSync(ATTEMPT) });
    expect(code).toBe(0);
    expect(JSON.parse(out)).toMatchObject({ exercise: { key: 'E major' } });
  });

  it.each([
    ['wrong usage', () => ['analyse', ATTEMPT, '--key', 'E major'], 2, /add --form and --hands/],
    ['an option that does not exist', () => ['analyse', ATTEMPT, '--kye', 'E major'], 2, /no option --kye/],
    [
      'a file that does not exist',
      () => ['analyse', 'nowhere.wav'],
      3,
      /nowhere\.wav: There is no such file/,
    ],
    ['a folder', () => ['analyse', folder], 3, /It is a folder/],
    ['an empty file', () => ['analyse', join(folder, 'empty.wav')], 3, /empty \(0 bytes\)/],
    [
      'a file that is no sound',
      () => ['analyse', join(folder, 'letter.mp3')],
      3,
      /not a sound file.*Convert it/,
    ],
    ['silence', () => ['analyse', join(folder, 'silence.wav')], 4, /No playing was found/],
    ['silence, transcribed', () => ['transcribe', join(folder, 'silence.wav')], 4, /No playing was found/],
  ])(
    'ends after %s with its code, nothing on stdout and a reason on stderr',
    async (_, args, code, reason) => {
      const result = await evenfall(args());
      expect(result).toMatchObject({ code, out: '' });
      expect(result.err).toMatch(reason);
      expect(result.err).not.toMatch(/ {4}at /);
    },
  );

  it('goes on after a bad file and ends with the worst code', async () => {
    const files = [
      join(folder, 'letter.mp3'),
      ATTEMPT,
      join(folder, 'silence.wav'),
      join(folder, 'mislabelled.m4a'),
    ];
    const { code, out, err } = await evenfall(['analyse', ...files, '--json']);
    expect(code).toBe(4);
    const reports = out
      .trim()
      .split('\n')
      .map((line) => JSON.parse(line) as { file: string });
    expect(reports.map(({ file }) => file)).toEqual([files[1], files[3]]);
    expect(err.trim().split('\n')).toHaveLength(2);
  });

  it('transcribes to a table, to JSON, to a MIDI file and to a passage', async () => {
    const midi = join(folder, 'out.mid');
    const passage = join(folder, 'out.json');
    const table = await evenfall(['transcribe', ATTEMPT, '--midi', midi, '--as-exercise', passage]);
    expect(table).toMatchObject({ code: 0, err: '' });
    expect(table.out).toMatch(/E4/);
    const json = await evenfall(['transcribe', ATTEMPT, '--json']);
    const notes = JSON.parse(json.out) as { format: string; version: number; notes: { midi: number }[] };
    expect(notes).toMatchObject({ format: 'evenfall-notes', version: 1 });
    const struck = parseMidi(readFileSync(midi)).tracks[0]!.filter(({ type }) => type === 'noteOn');
    expect(struck).toHaveLength(notes.notes.length);
    const shown = await evenfall(['exercises', '--exercise', passage]);
    expect(shown).toMatchObject({ code: 0, err: '' });
    expect(shown.out).toMatch(/attempt/);
  });

  it('lists exercises, and writes one out with its fingers', async () => {
    expect((await evenfall(['exercises'])).out).toMatch(/B♭ major/);
    const { out } = await evenfall(['exercises', '--key', 'C major', '--form', 'scale']);
    // C major scale, right hand, one octave: 1 2 3 1 2 3 4 5 (the fingering that every method has; common practice, no source).
    expect([...out.matchAll(/[A-G]\d:(\d)/g)].map((match) => match[1]).join('')).toBe('123123454321321');
  });

  it('writes ASCII where the locale has no Unicode', async () => {
    const { out } = await evenfall(['analyse', ATTEMPT], { env: { LC_ALL: 'C' } });
    // eslint-disable-next-line no-control-regex -- that is ASCII
    expect(out).toMatch(/^[\x0a\x20-\x7e]+$/);
  });

  it('does not mind that nobody reads its output any more', async () => {
    const { code, err } = await evenfall(['exercises'], { closeOut: true });
    expect({ code, err }).toEqual({ code: 0, err: '' });
  });

  it.each([
    ['analyse', [ATTEMPT, ...AS_E_MAJOR]],
    ['analyse', [ATTEMPT]],
    ['analyse', ['audio-fixtures/late-thumb/attempt.wav', 'nowhere.wav']],
    ['transcribe', [ATTEMPT, 'letter.mp3', 'empty.wav']],
    ['exercises', ['--key', 'Bb major', '--form', 'scale']],
    ['exercises', ['--key', 'A minor']],
  ])('%s speaks German throughout where it is asked to: %j', async (name, args) => {
    const own = args.map((arg) => (/^(letter|empty)/.test(arg) ? join(folder, arg) : arg));
    const { out, err } = await evenfall(
      [name, ...own, '--language', 'de', '-q'].filter(
        (arg) => (name !== 'exercises' && name !== 'review') || arg !== '-q',
      ),
    );
    expect(out).not.toBe('');
    // Names of files and options, and what a teacher wrote, are nobody's to translate.
    const said = `${out}\n${err}`
      .replaceAll(/\S*\/\S*|--\S+ ("[^"]*"|\S+)|evenfall(?=:)/g, '')
      .split('\n')
      .filter((line) => !/^ {3}- |Ms Ley|Good work/.test(line));
    for (const line of said) expect(line).not.toMatch(ENGLISH_WORDS);
  });
});
