import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { arrange } from '../../../src/terminal/pile/arrange.ts';
import { encodePile } from '../../../src/terminal/pile/csv.ts';
import { recordingOf, sortedOf } from './piles.ts';

/** RFC 4180, section 2, read back: fields in quotes may hold commas, line breaks and doubled quotes. */
function parsed(text: string): readonly (readonly string[])[] {
  const rows: string[][] = [[]];
  let field = '';
  let quoted = false;
  for (let at = 0; at < text.length; at++) {
    const sign = text[at]!;
    if (quoted) {
      if (sign !== '"') field += sign;
      else if (text[at + 1] === '"') field += text[at++];
      else quoted = false;
    } else if (sign === '"') quoted = true;
    else if (sign === ',') {
      rows.at(-1)!.push(field);
      field = '';
    } else if (text.startsWith('\r\n', at)) {
      rows.at(-1)!.push(field);
      field = '';
      rows.push([]);
      at++;
    } else field += sign;
  }
  return rows.slice(0, -1);
}

describe('a pile as a table', () => {
  it('has a row an attempt and the same columns in each', () => {
    const rows = parsed(encodePile(arrange([sortedOf(recordingOf('Mara/a, "b".m4a', 'Mara', 0), [0, 2])])));
    expect(rows).toHaveLength(3);
    expect(new Set(rows.map((row) => row.length)).size).toBe(1);
    const cell = (row: number, column: string): string => rows[row]![rows[0]!.indexOf(column)]!;
    expect(cell(1, 'file')).toBe('Mara/a, "b".m4a');
    expect(cell(1, 'recorded')).toBe('1970-01-01T00:00:00.000Z');
    expect([cell(1, 'missed'), cell(2, 'missed')]).toEqual(['0', '2']);
    expect(cell(2, 'tempo_bpm')).toBe('80.0');
    expect(cell(2, 'evenness_percent')).toBe('');
  });

  it('holds nothing that a terminal obeys', () => {
    const rows = parsed(
      encodePile(arrange([sortedOf(recordingOf('a\x1b[31m\x07=.m4a', '\x1b=Mara', 0), [0])])),
    );
    expect(rows[1]!.slice(0, 2)).toEqual(["'=Mara", 'a[31m=.m4a']);
  });

  it('never gives a spreadsheet a formula, whatever files and students are called', () => {
    const name = fc
      .tuple(fc.constantFrom('=', '+', '-', '@', '\t', '\r', '"', ''), fc.string())
      .map((parts) => parts.join(''));
    fc.assert(
      fc.property(name, name, (file, student) => {
        const rows = parsed(encodePile(arrange([sortedOf(recordingOf(file, student), [0])])));
        expect(rows).toHaveLength(2);
        for (const cell of rows[1]!) {
          if (/^[=+\-@\t\r\n]/.test(cell)) expect(cell).toMatch(/^-?\d+(\.\d+)?$/);
        }
        expect(rows[1]![1]!.replace(/^'/, '')).toBe(file.replace(/^'/, ''));
      }),
    );
  });
});
