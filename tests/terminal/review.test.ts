import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { readReview, writeReview } from '../../src/io/review/index.ts';
import type { SoundFile } from '../../src/io/review/index.ts';
import { parseCommand } from '../../src/terminal/arguments.ts';
import type { Console } from '../../src/terminal/console.ts';
import { drawReview } from '../../src/terminal/drawing/review.ts';
import { HELPS } from '../../src/terminal/language/index.ts';
import { EXIT } from '../../src/terminal/problems.ts';
import { review } from '../../src/terminal/review.ts';
import { reviewPage } from '../../src/ui/review/page/in-node.ts';
import { madeUp, withExample } from '../io/review/made-up.ts';

const PAPER = { columns: 80, colour: false, unicode: true };
let folder: string;
beforeAll(async () => {
  folder = mkdtempSync(join(tmpdir(), 'evenfall-'));
  writeFileSync(join(folder, 'review.zip'), Buffer.from(await (await writeReview(madeUp())).arrayBuffer()));
  writeFileSync(join(folder, 'other.zip'), 'PK, and nothing else');
});
afterAll(() => rmSync(folder, { recursive: true }));

/** What the command says of words on its command line, in this process. */
async function said(...words: readonly string[]) {
  const out: string[] = [];
  const err: string[] = [];
  const console: Console = {
    paper: PAPER,
    out: (line) => void out.push(line),
    put: (content) => void out.push(String(content)),
    say: (line) => void err.push(line),
    overwrite: null,
  };
  const command = parseCommand(['review', ...words]);
  if (command.kind !== 'review') throw new Error('It was taken for another command.');
  const code = await review(command, console, (read, language) =>
    Promise.resolve(reviewPage(read, language)),
  );
  return { code, out: out.join('\n'), err: err.join('\n') };
}

it('a review of version 0.1 is told in German, its attempts too', async () => {
  const old = await readReview(new Blob([readFileSync('tests/version-0.1/review.zip')]));
  const text = drawReview(old, PAPER, 'de').join(' ').replace(/\s+/g, ' ');
  expect(text).toMatch(/Eine Rückmeldung für Mira Ohm, von Ms Ley/);
  expect(text).toMatch(
    /deine Aufnahme.*Jeder Ton richtig\. C aufwärts in der (unteren|oberen) Oktave und C aufwärts in der (unteren|oberen) Oktave kommen zu spät, um 124 und 118 ms/,
  );
  expect(text).toMatch(/28 von 29 Tönen richtig\. Einer fehlt: A abwärts/);
  expect(text).toMatch(/Die Lehrkraft sagt \(Versuch\): das stimmt nicht\./);
});

it('an example that the teacher played is told beside the attempt that it is for, and is no attempt', () => {
  const lines = drawReview(withExample(), PAPER);
  expect(lines.filter((line) => /^\d\. /.test(line))).toHaveLength(2);
  expect(lines.filter((line) => line.includes('Your teacher played it as an example'))).toHaveLength(1);
  expect(drawReview(withExample(), PAPER, 'de').join(' ')).toMatch(/zum Beispiel vorgespielt/);
});

describe('evenfall review', () => {
  it('prints who, when, the words, each attempt with its remarks in their places, and what to practise', async () => {
    const { code, out, err } = await said(join(folder, 'review.zip'));
    expect({ code, err }).toEqual({ code: 0, err: '' });
    for (const part of [
      /^A review for Student Seven, from The teacher on the hill, 25 November 2026$/m,
      /^Take the arpeggio slower than you think\.$/m,
      /^1\. A♭ major · tonic arpeggio, two octaves · right hand$/m,
      /^ {3}monday evening\.webm, played 24 November 2026, with its sound$/m,
      /The teacher says of the attempt: that is mistaken\./,
      /^ {3}- note 5 \(C5\): Bring the thumb under sooner/m,
      /^ {3}- notes 7 to 10 \(A♭5 to A♭4\): Lovely and even here\.$/m,
      /^ {3}- the attempt: \(spoken\)$/m,
      /Taken for: F major/,
      /^ {3}The teacher says of note 6 \(F3\): it was right\./m,
      /^ {2}1\. A♭ major .*: only\n {5}A♭–C–E♭–A♭–C–E♭–A♭, long–short, three times in a row, at 60 beats a minute,/m,
      /^ {2}2\. A minor · melodic minor scale, two octaves · hands together: as usual$/m,
    ])
      expect(out).toMatch(part);
    for (const line of out.split('\n')) expect([...line].length).toBeLessThanOrEqual(80);
  });

  it('prints JSON without the bytes of the sounds', async () => {
    const { out, err } = await said(join(folder, 'review.zip'), '--json');
    const sizeOf = (sound: SoundFile | null) =>
      sound === null ? null : { mime: sound.mime, bytes: sound.bytes.length };
    const made = madeUp();
    const told: unknown = JSON.parse(out);
    expect(told).toEqual(
      JSON.parse(
        JSON.stringify({
          format: 'evenfall-review',
          version: 1,
          ...made,
          attempts: made.attempts.map((attempt) => ({
            ...attempt,
            sound: sizeOf(attempt.sound),
            remarks: attempt.remarks.map((remark) => ({ ...remark, voice: sizeOf(remark.voice) })),
          })),
        }),
      ),
    );
    // There is a sound and none, a spoken remark and none.
    expect(made.attempts.map(({ sound }) => sound === null)).toEqual(expect.arrayContaining([true, false]));
    expect(made.attempts.flatMap(({ remarks }) => remarks.map(({ voice }) => voice === null))).toEqual(
      expect.arrayContaining([true, false]),
    );
    expect(err).toBe('');
  });

  it('prints a line of JSON for each of several, with its file', async () => {
    const files = [join(folder, 'review.zip'), join(folder, 'review.zip')];
    const { out } = await said(...files, '--json');
    const lines = out.split('\n').map((line) => JSON.parse(line) as Record<string, unknown>);
    expect(lines.map((line) => Object.keys(line)[0])).toEqual(['file', 'file']);
    expect(lines.map(({ file }) => file)).toEqual(files);
    expect(lines.map(({ format, version }) => [format, version])).toEqual([
      ['evenfall-review', 1],
      ['evenfall-review', 1],
    ]);
  });

  it('says which file is not there, and why a page cannot be written', async () => {
    const missing = await said(join(folder, 'none.zip'));
    expect(missing.code).not.toBe(0);
    expect(missing.err).toMatch(/none\.zip/);
    const nowhere = join(folder, 'other.zip/page.html');
    const { code, err, out } = await said(join(folder, 'review.zip'), '--html', nowhere);
    expect(code).toBe(EXIT.wrongUsage);
    expect(err).toMatch(
      /other\.zip\/page\.html: It could not be written: its folder is a file\. Choose another place/,
    );
    expect(out).toBe('');
  });

  it('writes the page, in a language', async () => {
    const page = join(folder, 'page.html');
    await said(join(folder, 'review.zip'), '--html', page, '--language', 'de');
    expect(readFileSync(page, 'utf8')).toMatch(/<html lang="de">[\s\S]*Eine Rückmeldung für Student Seven/);
  });

  it('refuses what is no review, with 3 and the reason, and goes on with the rest', async () => {
    const { code, out, err } = await said(join(folder, 'other.zip'), join(folder, 'review.zip'));
    expect(code).toBe(3);
    expect(err).toMatch(/other\.zip: This review cannot be opened\. It is no zip file/);
    expect(out).toMatch(/A review for Student Seven/);
  });

  it('is drawn in ASCII where the terminal knows no other signs', async () => {
    const read = await readReview(await writeReview(madeUp()));
    const lines = drawReview(read, { columns: 60, unicode: false });
    // eslint-disable-next-line no-control-regex -- all that is not ASCII
    expect(lines.join('')).not.toMatch(/[^\x00-\x7f]/);
    expect(lines.join('\n')).toMatch(/Ab major : tonic arpeggio/);
  });

  it('tells what came from a student as such', () => {
    const [line] = drawReview({ ...madeUp(), kind: 'attempts' }, PAPER);
    expect(line).toBe('Attempts of Student Seven, to The teacher on the hill, 25 November 2026');
  });

  it.each([
    [['review'], /needs a review file/],
    [['review', 'a.zip', '--html'], /html/],
    [['review', 'a.zip', 'b.zip', '--html', 'x.html'], /can hold one review/],
    [['review', 'a.zip', '--language', 'dee'], /Did you mean "de"/],
    [['review', 'a.zip', '--jsn'], /Did you mean "--json"/],
    [['reviw', 'a.zip'], /Did you mean "review"/],
  ])('%j is wrong usage', (words, message) => {
    expect(() => parseCommand(words)).toThrow(message);
  });

  it('has its help', () => {
    expect(HELPS.en.review).toMatch(/evenfall review FILE/);
    expect(HELPS.en.all).toMatch(/evenfall review FILE/);
  });
});
