import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { ENGLISH, tellReport } from '../../src/engine/index.ts';
import { allChoices } from '../../src/engine/index.ts';
import { drawReport, harmless } from '../../src/terminal/drawing/index.ts';
import { endOf, toPlain, wrapText } from '../../src/terminal/drawing/text.ts';
import { invent } from './invented.ts';
import type { Invention } from './invented.ts';

const PAPER = { columns: 80, colour: false, unicode: true };
const draw = (spec: Partial<Invention> & Pick<Invention, 'choice'>): string[] =>
  drawReport(invent(spec), PAPER);
/** the line that has the hand at its start */
const stringOf = (lines: readonly string[], hand: string): string =>
  lines.find((line) => line.startsWith(hand))!;
const at = (lines: readonly string[], hand: string, after: number): string =>
  lines[lines.indexOf(stringOf(lines, hand)) + after]!;
const ARPEGGIO = { key: 'Ab major', form: 'arpeggio', hands: 'right', octaves: 1 } as const;

it('a line for the terminal keeps its looks and nothing else that it would obey (ECMA-48)', () => {
  expect(harmless('\x1b[1mbold\x1b[0m, é\ttab\nnext')).toBe('\x1b[1mbold\x1b[0m, é\ttab\nnext');
  expect(harmless('\x1b]0;t\x07a\x1b[2Jb\u009b1mc\rd\u202ee\x08')).toBe('�]0;t�a�[2Jb�1mc�d�e�');
});

describe('the string of pearls in characters', () => {
  it('has a pearl for each note where it sounded, ticks for even time, names and fingers below', () => {
    const lines = draw({ choice: ARPEGGIO });
    expect(stringOf(lines, 'right')).toMatch(/^right {2}•─+•─+•─+•─+•─+•─+•$/);
    expect(at(lines, 'right', 1)).toMatch(/^0\.5 s {2}╵( +╵){6}$/);
    expect(at(lines, 'right', 2).trim().split(/ +/)).toEqual(['A♭', 'C', 'E♭', 'A♭', 'E♭', 'C', 'A♭']);
    expect(at(lines, 'right', 3).trim().split(/ +/)).toHaveLength(7);
    // Even playing: pearls stand on their ticks.
    const columns = (line: string, sign: string): number[] =>
      [...line].flatMap((c, i) => (c === sign ? [i] : []));
    expect(columns(stringOf(lines, 'right'), '•')).toEqual(columns(at(lines, 'right', 1), '╵'));
  });

  it('shows loudness by size', () => {
    const lines = draw({ choice: ARPEGGIO, levelDb: (step) => [-20, -12, -28][step] ?? -20 });
    expect(stringOf(lines, 'right')).toMatch(/•─+●─+∙─+•/);
  });

  it('shows a missed note as a ring, in its place', () => {
    const lines = draw({ choice: ARPEGGIO, missed: [{ step: 2, hand: 'right' }] });
    expect(stringOf(lines, 'right')).toMatch(/•─+•─+○─+•/);
    expect(lines.join('\n')).toContain('6 of 7 right, 1 missed');
  });

  it('hangs a wrong note below with its name', () => {
    const lines = draw({ choice: ARPEGGIO, wrong: [{ step: 1, hand: 'right', midi: 61, name: 'Db4' }] });
    const hook = [...stringOf(lines, 'right')].indexOf('┬');
    expect(hook).toBeGreaterThan(0);
    expect([...at(lines, 'right', 1)].slice(hook).join('')).toMatch(/^• D♭ instead of C/);
  });

  it('shows an extra note as a seed', () => {
    expect(stringOf(draw({ choice: ARPEGGIO, extraSec: [1.25] }), 'right')).toContain('·');
  });

  it('names what is missing in a chord, what was extra, and the octave of a note in the wrong one', () => {
    const chord = { key: 'C major', form: 'triads', hands: 'right', octaves: 1 } as const;
    const lines = draw({ choice: chord, missed: [{ step: 0, hand: 'right' }], extraSec: [3.1] });
    expect(at(lines, 'right', 1)).toContain('no C E G');
    expect(at(lines, 'right', 1)).toMatch(/ C$/);
    const wrong = draw({ choice: ARPEGGIO, wrong: [{ step: 1, hand: 'right', midi: 72, name: 'C5' }] });
    expect(at(wrong, 'right', 1)).toContain('C5 instead of C4');
  });

  it('arches over crossings, and tells how late the late ones were', () => {
    const crossing = {
      step: 1,
      hand: 'right',
      kind: 'thumb-under',
      direction: 'up',
      plusMinusMs: 3,
      ratio: 1.3,
    } as const;
    const late = draw({
      choice: ARPEGGIO,
      measures: { crossings: [{ ...crossing, delayMs: 92.4, late: true }] },
    });
    expect(at(late, 'right', -1)).toMatch(/⌒ \+92 ms/);
    const fine = draw({
      choice: ARPEGGIO,
      measures: { crossings: [{ ...crossing, delayMs: 9, late: false }] },
    });
    expect(at(fine, 'right', -1)).toMatch(/⌒/);
    expect(at(fine, 'right', -1)).not.toMatch(/ms/);
  });

  it('ties two hands by threads that lean to the one that came first', () => {
    const choice = { ...ARPEGGIO, hands: 'together' } as const;
    const lines = draw({
      choice,
      lateMs: (step, hand) => (hand === 'left' ? [0, -30, 30, -60][step]! || 0 : 0),
    });
    const threads = at(lines, 'right', 1);
    expect(threads.trim().replaceAll(/ +/g, ' ')).toMatch(/^│ ╱ ╲ ╱ 60 │ │ │$/);
    expect(lines.indexOf(stringOf(lines, 'right'))).toBeLessThan(lines.indexOf(stringOf(lines, 'left')));
  });

  it('shows a chord as a cluster with its name', () => {
    const lines = draw({ choice: { key: 'D minor', form: 'progression', hands: 'right', octaves: 1 } });
    expect(stringOf(lines, 'right')).toMatch(/^right {2}•••─+•••─+•••─+•••─+•••$/);
    expect(lines.join('\n')).toMatch(/i +iv +i +V7 +i/);
  });

  it('draws every exercise, however badly played, within the width and without an error', () => {
    const choices = allChoices();
    fc.assert(
      fc.property(
        fc.constantFrom(...choices),
        fc.double({ min: 0.15, max: 3, noNaN: true }),
        fc.array(fc.integer({ min: -400, max: 400 }), { minLength: 5, maxLength: 5 }),
        fc.array(fc.nat(60), { maxLength: 6 }),
        fc.array(fc.double({ min: 0, max: 60, noNaN: true }), { maxLength: 6 }),
        fc.integer({ min: 60, max: 120 }),
        (choice, beatSec, lateMs, missedSteps, extraSec, columns) => {
          const hand = choice.hands === 'left' ? 'left' : 'right';
          const report = invent({
            choice,
            beatSec,
            extraSec,
            lateMs: (step) => (lateMs[step % 5]! * beatSec) / 4,
            missed: missedSteps.map((step) => ({ step, hand })),
            wrong: [{ step: 3, hand, midi: 61, name: 'C#4' }],
          });
          for (const line of drawReport(report, { ...PAPER, columns })) {
            expect([...line].length, line).toBeLessThanOrEqual(columns);
          }
        },
      ),
      { numRuns: 200 },
    );
  });
});

describe('the words and figures', () => {
  it('say each figure with its unit and its ±, and what could not be measured', () => {
    const text = draw({
      choice: ARPEGGIO,
      measures: {
        evennessPercent: { value: 9.44, plusMinus: 0.41 },
        evennessMs: { value: 33.2, plusMinus: 1.4 },
        evenUpToPercent: 5.62,
        tempoBpm: { value: 77.04, plusMinus: 0.21 },
        touchMs: { notMeasured: 'the damping cannot be heard' },
      },
    }).join('\n');
    expect(text).toContain('9.4 ± 0.4 %; 33 ± 1 ms; up to 5.6 % is even at this tempo');
    expect(text).toContain('♩ = 77.0 ± 0.2; aim 80');
    expect(text).toContain('A4 = 436.2 Hz (−15 ± 1 cents)');
    expect(text).toContain('Not measured: touch — the damping cannot be heard');
  });

  it('say of chords how they change, and of two hands which comes first', () => {
    const text = draw({
      choice: { key: 'C major', form: 'triads', hands: 'together', octaves: 1 },
      measures: {
        changeGapMs: { value: -35.4, plusMinus: 12.2 },
        innerBalanceDb: { value: -2.4, plusMinus: 0.5 },
        togetherness: {
          leadMs: { value: 18.2, plusMinus: 2.1 },
          apartSdMs: { value: 9.4, plusMinus: 1.2 },
          steps: [],
          leftLouderDb: { value: 1 },
        },
      },
    })
      .join(' ')
      .replaceAll(/\s+/g, ' ');
    expect(text).toContain('held 35 ± 12 ms into the next; inner notes −2.4 ± 0.5 dB');
    expect(text).toContain('right first by 18 ± 2 ms; apart by 9 ± 1 ms');
  });

  it('name no side of nought that is not sure', () => {
    const triads = { key: 'C major', form: 'triads', hands: 'together', octaves: 1 } as const;
    const words = (choice: Invention['choice'], measures: Invention['measures']): string =>
      draw({ choice, ...(measures && { measures }) })
        .join(' ')
        .replaceAll(/\s+/g, ' ');
    const togetherness = {
      leadMs: { value: 6, plusMinus: 3 },
      apartSdMs: { value: 9.4, plusMinus: 1.2 },
      steps: [],
      leftLouderDb: { value: 1 },
    };
    const changeGapMs = { value: 40, plusMinus: 30 };
    const chords = words(triads, {
      changeGapMs,
      innerBalanceDb: { value: -1.9, plusMinus: 1 },
      togetherness,
    });
    expect(chords).toContain('connected or just apart (± 30 ms); inner notes louder or softer (± 1.0 dB)');
    expect(chords).toContain('neither surely first (± 3 ms); apart by 9 ± 1 ms');

    const line = words(ARPEGGIO, {
      turnDeviationMs: { value: 12, plusMinus: 8 },
      lastIntervalDeviationMs: { value: 60, plusMinus: 8 },
      thumbAccentDb: { value: 1.1, plusMinus: 0.9 },
    });
    expect(line).toContain('turn longer or shorter (± 8 ms)');
    expect(line).toContain('last +60 ± 8 ms');
    expect(line).toContain('thumb louder or softer (± 0.9 dB)');
  });

  it('use the accent only on a terminal with colour, and nothing but ASCII where there is no Unicode', () => {
    const report = invent({ choice: ARPEGGIO, missed: [{ step: 1, hand: 'right' }] });
    expect(drawReport(report, PAPER).join('')).not.toContain('\x1b');
    expect(drawReport(report, { ...PAPER, colour: true }).join('')).toContain('\x1b[1;94m');

    expect(drawReport(report, { ...PAPER, unicode: false }).join('')).toMatch(/^[\x20-\x7e]*$/);
  });

  it('mark the emphasis even where a line breaks in it', () => {
    const report = invent({ choice: ARPEGGIO });
    const marked = drawReport(report, { columns: 60, colour: true, unicode: true })
      // eslint-disable-next-line no-control-regex -- the escape sequences of the accent
      .flatMap((line) => [...line.matchAll(/\x1b\[1;94m(.*?)\x1b\[0m/g)].map((match) => match[1]))
      .join(' ');
    expect(marked).toBe(tellReport(report, ENGLISH).emphasis);
  });
});

describe('a terminal without Unicode', () => {
  it.each([
    ['♩ = 66, zwei Töne; der Rest ist gleichmäßig', '1/4 = 66, zwei Toene; der Rest ist gleichmaessig'],
    ['Café „so“ 音', 'Cafe "so" ?'],
    ['Töne      13 richtig', 'Toene     13 richtig'],
    ['Größe  1 ± 2  3', 'Groesse 1 +/- 2 3'],
    ['  ü   b', '  ue  b'],
  ])('is written to in ASCII, what stands in columns stays there: %s', (text, plain) => {
    expect(toPlain(text)).toBe(plain);
  });
});

it.each([
  ['folder/attempt.wav', 30, 'folder/attempt.wav'],
  ['folder/attempt.wav', 12, '…attempt.wav'],
  ['folder/attempt.wav', 0, '…'],
])('of the name %s %i columns hold %s', (name, width, end) => {
  expect(endOf(name, width)).toBe(end);
});

describe('wrapText', () => {
  it.each([
    ['late by 118 and 116 ms; the rest', 20, ['late by 118 and', '116 ms; the rest']],
    ['first +117 ± 3 ms; last', 14, ['first', '+117 ± 3 ms;', 'last']],
    ['only C–E, ♩ = 66, two', 12, ['only C–E,', '♩ = 66, two']],
    ['--hands left --octaves 2', 22, ['--hands left', '--octaves 2']],
    ['steps 1 2 3 4', 8, ['steps 1', '2 3 4']],
  ])('%s, at %i columns', (text, width, lines) => {
    expect(wrapText(text, width)).toEqual(lines);
  });

  it('keeps every word in order and no line too long', () => {
    fc.assert(
      fc.property(
        fc.array(fc.stringMatching(/^[a-z♯]{1,20}$/), { minLength: 1 }),
        fc.integer({ min: 20, max: 80 }),
        (words, width) => {
          const lines = wrapText(words.join(' '), width);
          expect(lines.join(' ')).toBe(words.join(' '));
          for (const line of lines) expect([...line].length).toBeLessThanOrEqual(width);
        },
      ),
    );
  });
});
