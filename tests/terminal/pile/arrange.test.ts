import { describe, expect, it } from 'vitest';
import { arrange } from '../../../src/terminal/pile/arrange.ts';
import { encodePile } from '../../../src/terminal/pile/csv.ts';
import { pileObject } from '../../../src/terminal/pile/json.ts';
import { leftOut } from '../../../src/terminal/pile/left-out.ts';
import { drawPile, summary } from '../../../src/terminal/pile/lines.ts';
import { pagesOf } from '../../../src/terminal/pile/pages.ts';
import type { PileSummary } from '../../../src/terminal/pile/pages.ts';
import type { Outcome } from '../../../src/terminal/pile/types.ts';
import { recordingOf, SCALE, sortedOf } from './piles.ts';

const DAY = Date.UTC(2026, 10, 14, 12);
const WEEK_MS = 7 * 24 * 3600 * 1000;
const PAPER = { columns: 80, colour: false, unicode: true };

const DAMAGED = { trouble: 'within', name: 'bad.m4a', of: { trouble: 'nothing-decoded' } } as const;
const OUTCOMES: readonly Outcome[] = [
  sortedOf(recordingOf('Mara/b.m4a', 'Mara', DAY), [0, 1]),
  sortedOf(recordingOf('x.m4a', '', DAY), [0]),
  sortedOf(recordingOf('Mara/a.m4a', 'Mara', DAY - WEEK_MS), [2]),
  sortedOf(recordingOf('Jonas/a.m4a', 'Jonas', DAY), [0], { ...SCALE, hands: 'left' }),
  { recording: recordingOf('bad.m4a', ''), problem: 'unreadable', trouble: DAMAGED },
  {
    recording: recordingOf('talk.m4a', 'Jonas'),
    sorted: {
      durationSec: 9,
      remarks: [{ notice: 'damaged-after' }],
      attempts: [],
      reason: { notice: 'speech', places: 4 },
      print: 'talk',
    },
  },
];

describe('a pile', () => {
  const pile = arrange(OUTCOMES);

  it('is laid out by student, nobody last, each attempt against the one before at the same exercise', () => {
    expect(pile.students.map(({ name }) => name)).toEqual(['Jonas', 'Mara', '']);
    const mara = pile.students[1]!.attempts;
    expect(mara.map(({ recording }) => recording.name)).toEqual(['Mara/a.m4a', 'Mara/b.m4a', 'Mara/b.m4a']);
    expect(mara[0]!.since).toBeNull();
    expect(mara[1]!.since).toMatchObject({
      whenMs: DAY - WEEK_MS,
      changes: [{ kind: 'mistakes', before: 2, now: 0, better: true }],
    });
    expect(mara[2]!.since).toMatchObject({ whenMs: DAY, changes: [{ better: false }] });
    expect(pile.students[0]!.attempts[0]!.since).toBeNull();
  });

  it('keeps apart what could not be read and what nobody plays in', () => {
    expect(pile.unread).toEqual([expect.objectContaining({ name: 'bad.m4a' })]);
    expect(pile.silent.map(({ recording }) => recording.name)).toEqual(['talk.m4a']);
    expect(pile.remarks.map(({ remark }) => remark)).toEqual([{ notice: 'damaged-after' }]);
    expect(summary(pile, 'en')).toBe(
      '6 recordings, 5 attempts of 2 students; 1 without playing; 1 that could not be read.',
    );
  });

  it('lists what was left out, of a zip too, with its name and reason: in the terminal, the table, the page and the data', async () => {
    const whole = arrange(OUTCOMES, [{ name: 'week.zip/old.wav', reason: { trouble: 'zip-locked' } }]);
    const told = leftOut(whole, 'en').map(
      ({ file, reason }) =>
        [file, reason.replace('No playing was found in it. ', '').split('.')[0]!] as const,
    );
    expect(told.map(([file]) => file)).toEqual(['talk.m4a', 'bad.m4a', 'week.zip/old.wav', 'talk.m4a']);
    const { writeSummary } = {
      writeSummary: (page: PileSummary) => Promise.resolve(page.without.join('\n')),
    };
    const pages = pagesOf(whole, 0, { writeSummary, writePage: () => Promise.resolve('') });
    const page = ((await pages.next()).value as { html: string }).html;
    const terminal = drawPile(whole, { ...PAPER, columns: 400 }).join('\n');
    const table = encodePile(whole);
    const data = JSON.stringify(pileObject(whole));
    for (const [file, reason] of told)
      for (const text of [page, terminal, table, data]) {
        expect(text).toContain(file);
        expect(text).toContain(reason);
      }
  });

  it('tells each student’s fastest tempo still even in the data, and none of what was not right', () => {
    const EVEN = { evennessPercent: { value: 4, plusMinus: 0.5 } };
    const made = arrange([
      sortedOf(recordingOf('Mara/a.m4a', 'Mara', DAY), [0, 2], SCALE, EVEN),
      sortedOf(recordingOf('Mara/b.m4a', 'Mara', DAY), [1], { ...SCALE, key: 'A major' }, EVEN),
    ]);
    const [mara] = pileObject(made).students;
    expect(mara!.fastestEven).toEqual([{ exercise: SCALE, bpm: 80, plusMinus: null }]);
  });

  it('says it to who reads, in both languages, of what was played more than once', () => {
    const EVEN = { evennessPercent: { value: 4, plusMinus: 0.5 } };
    const other = { ...SCALE, key: 'A major' };
    const at = (bpm: number) => ({ ...EVEN, tempoBpm: { value: bpm } });
    const made = arrange([
      sortedOf(recordingOf('Mara/a.m4a', 'Mara', DAY), [0, 0], SCALE, at(84)),
      sortedOf(recordingOf('Mara/b.m4a', 'Mara', DAY), [2], SCALE, at(92)),
      sortedOf(recordingOf('Mara/c.m4a', 'Mara', DAY), [0], other, at(92)),
      sortedOf(recordingOf('Jonas/a.m4a', 'Jonas', DAY), [0, 0], other, at(92)),
    ]);
    const wide = { ...PAPER, columns: 200 };
    expect(drawPile(made, wide).filter((line) => line.includes('Fastest'))).toEqual([
      '  Fastest still even, A major · scale, one octave · right hand: at least 92 beats a minute.',
      '  Fastest still even, D major · scale, one octave · right hand: 88 ± 4 beats a minute.',
    ]);
    expect(drawPile(made, wide, 'de').join('\n')).toMatch(
      /\n {2}Am schnellsten noch gleichmäßig, A-Dur · .*: mindestens 92 Schläge in der Minute\.\n/,
    );
  });

  it('keeps to forty columns, and obeys nothing that a name says', () => {
    const name = 'a\x1b]0;title\x07\x1b[2J\u009b31m\u202egpj.exe\nb.m4a';
    const hostile = arrange([...OUTCOMES, sortedOf(recordingOf(name, 'Jonas', DAY), [1])]);
    const lines = drawPile(hostile, { ...PAPER, columns: 40 });
    for (const line of lines) expect(line.length).toBeLessThanOrEqual(40);
    // eslint-disable-next-line no-control-regex -- what must not be there
    for (const line of lines) expect(line).not.toMatch(/[\x00-\x1f\x7f-\x9f\u202e]/);
  });

  it('does not depend on the order in which the files were done', () => {
    expect(arrange([...OUTCOMES].reverse()).students).toEqual(pile.students);
  });

  it('reads in a terminal', () => {
    const lines = drawPile(pile, PAPER);
    const text = lines.join('\n');
    expect(text).toMatch(/^Jonas\n {2}D major · scale, one octave · left hand · 80 beats a minute\n/);
    expect(text).toMatch(/Since 7 Nov 2026: fewer mistakes, 0 \(before 2\)\./);
    expect(text).toMatch(/Since the attempt before: more mistakes, 1 \(before 0\)\./);
    expect(text).toMatch(/14 Nov 2026, Mara\/b\.m4a 0:20–0:35/);
    expect(text).toMatch(/\nno name\n/);
    for (const line of lines) expect([...line].length).toBeLessThanOrEqual(80);

    for (const line of drawPile(pile, { ...PAPER, unicode: false })) expect(line).toMatch(/^[\x20-\x7e]*$/);
  });

  it('lists a copy once, and says of which recording it is one', () => {
    const first = sortedOf(recordingOf('Mara/a.m4a', 'Mara', DAY), [0]);
    const second = sortedOf(recordingOf('Ilse/a.m4a', 'Ilse', DAY), [0]);
    if (!('sorted' in first) || !('sorted' in second)) throw new Error('Both are sorted.');
    const copied = arrange([first, { ...second, sorted: { ...second.sorted, print: first.sorted.print } }]);
    expect(copied.students.map(({ name }) => name)).toEqual(['Mara']);
    expect(leftOut(copied, 'en')).toEqual([
      { file: 'Ilse/a.m4a', student: 'Ilse', reason: 'It is the same recording as Mara/a.m4a.' },
    ]);
    expect(pileObject(copied).remarks).toEqual([
      { file: 'Ilse/a.m4a', remark: 'It is the same recording as Mara/a.m4a.' },
    ]);
  });

  it('says what an attempt may be where it cannot tell, and calls other playing that', () => {
    const unsure: Outcome = {
      recording: recordingOf('Mara/c.m4a', 'Mara', DAY),
      sorted: {
        durationSec: 60,
        remarks: [],
        reason: '',
        print: 'c',
        attempts: [
          {
            startSec: 61,
            endSec: 70,
            recognition: {
              choice: null,
              confidence: 0.5,
              octaveShift: 0,
              alternatives: [
                { choice: SCALE, fit: 0.9 },
                { choice: { ...SCALE, key: 'B minor', minorScale: 'natural' }, fit: 0.89 },
              ],
            },
            report: null,
            reason: 'No exercise fits.',
          },
          {
            startSec: 80,
            endSec: 90,
            recognition: { choice: null, confidence: 0, octaveShift: 0, alternatives: [] },
            report: null,
            reason: 'No exercise fits.',
          },
        ],
      },
    };
    const text = drawPile(arrange([unsure]), PAPER).join('\n');
    expect(text).toMatch(/cannot tell which exercise\n {4}Likeliest: D major · scale[^;]*; or B minor ·/);
    expect(text).toMatch(/other playing\n {4}No exercise fits\.\n/);
    expect(text).toMatch(/1:01–1:10/);
    expect(text).toMatch(/1 recording, 0 attempts of 1 student; 2 stretches of playing not recognised\.$/);
  });
});
