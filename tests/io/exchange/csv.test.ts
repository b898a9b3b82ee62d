import { describe, expect, it } from 'vitest';
import { encodeCsv } from '../../../src/io/exchange/index.ts';
import { invent, INVENTED } from '../../ui/support/invent.ts';

/** RFC 4180 read back, without its rarer corners: enough for what is written. */
function cells(text: string, separator = ','): string[][] {
  const cell = new RegExp(`("(?:[^"]|"")*"|[^${separator}]*)(?:${separator}|$)`, 'g');
  return text
    .trimEnd()
    .split('\r\n')
    .map((line) => {
      const found = [...line.matchAll(cell)].map(([, one = '']) => one);
      return line.endsWith(separator) ? found : found.slice(0, -1);
    });
}
/** The same as rows by the names of their columns. */
function rows(text: string, separator = ','): Record<string, string>[] {
  const [names = [], ...lines] = cells(text, separator);
  return lines.map((line) => Object.fromEntries(names.map((name, at) => [name, line[at] ?? ''])));
}

describe('notes as separated values', () => {
  const { report, exercise } = invent(INVENTED.together);
  const lines = rows(encodeCsv(report));

  it('have a line for every note heard, missed and unsure, and the same cells in each', () => {
    expect(lines).toHaveLength(report.notes.length + report.missed.length + report.unsure.length);
    expect(new Set(cells(encodeCsv(report)).map((line) => line.length)).size).toBe(1);
  });

  it('give times to 0.1 ms under a column that names its unit', () => {
    const times = lines.flatMap(({ time_s: time = '' }) => (time === '' ? [] : [Number(time)]));
    report.notes.forEach((note, at) => expect(Math.abs(times[at]! - note.timeSec)).toBeLessThan(0.00006));
  });

  it('say what was struck for what, by which hand', () => {
    const wrong = lines.find(({ heard }) => heard === 'wrong');
    expect(wrong).toMatchObject({ note: 'E3', wanted_note: 'F3', hand: 'left' });
    expect(lines.filter(({ heard }) => heard === 'extra: slip')).toHaveLength(1);
  });

  it('have what was missed in its place', () => {
    const missed = lines.findIndex(({ heard }) => heard === 'missed');
    const { step } = report.missed[0]!;
    const stepsBefore = lines.slice(0, missed).map((line) => Number(line['step']));
    expect(Math.max(...stepsBefore)).toBeLessThan(step);
    expect(Number(lines[missed + 1]!['step'])).toBeGreaterThanOrEqual(step);
    expect(lines[missed]).toMatchObject({
      wanted_note: report.missed[0]!.name,
      hand: report.missed[0]!.hand,
    });
    expect(step).toBeLessThan(exercise.steps.length);
  });

  it('have interval, deviation and crossing at the step that they lead into', () => {
    const { report: late } = invent(INVENTED.lateThumb);
    const told = rows(encodeCsv(late));
    for (const { step, ioiMs, deviationMs } of late.measures.intervals) {
      const line = told.find((one) => one['step'] === String(step))!;
      expect([Number(line['interval_ms']), Number(line['deviation_ms'])]).toEqual([
        Number(ioiMs.toFixed(1)),
        Number(deviationMs.toFixed(1)),
      ]);
    }
    const crossed = told.filter(({ crossing }) => crossing !== '');
    expect(crossed.map(({ step }) => Number(step))).toEqual(late.measures.crossings.map(({ step }) => step));
    expect(told[0]).toMatchObject({ interval_ms: '', crossing: '' });
  });

  it('are written with decimal commas between semicolons where a spreadsheet expects that, names as they are called', () => {
    const options = { spreadsheet: 'comma', nameOf: (name: string) => name.replace('B', 'H') } as const;
    const text = encodeCsv(report, options);
    expect(text.startsWith('\uFEFF')).toBe(true);
    const commas = rows(text.slice(1), ';');
    expect(commas.map((line) => line['time_s']!.replace(',', '.'))).toEqual(
      lines.map((line) => line['time_s']),
    );
    expect(commas.map((line) => line['note'])).toEqual(lines.map((line) => line['note']!.replace('B', 'H')));
    expect(text).not.toMatch(/\d\.\d/);
  });

  it.each([
    ['point', 'soft, "perhaps"', '"unsure: soft, ""perhaps"""'],
    ['comma', 'soft; perhaps', '"unsure: soft; perhaps"'],
  ] as const)('quote what would end a cell (%s)', (spreadsheet, reason, cell) => {
    const unsure = [{ step: 1, midi: 60, hand: 'left' as const, reason }];
    expect(encodeCsv({ ...report, unsure }, { spreadsheet })).toContain(cell);
  });
});
