import { describe, expect, it } from 'vitest';
import { encodeCsv } from '../../../src/io/exchange/index.ts';
import { invent, INVENTED } from '../../ui/support/invent.ts';

/** RFC 4180 read back, without its rarer corners: enough for what is written. */
function cells(text: string): string[][] {
  return text
    .trimEnd()
    .split('\r\n')
    .map((line) =>
      [...line.matchAll(/("(?:[^"]|"")*"|[^,]*)(?:,|$)/g)].slice(0, 12).map(([, cell = '']) => cell),
    );
}

describe('notes as comma-separated values', () => {
  const { report } = invent(INVENTED.together);
  const lines = cells(encodeCsv(report));

  it('have a line for every note heard, missed and unsure, and the same cells in each', () => {
    expect(lines).toHaveLength(1 + report.notes.length + report.missed.length + report.unsure.length);
    for (const line of lines) expect(line).toHaveLength(12);
  });

  it('name the columns with their units, and give times to 0.1 ms', () => {
    expect(lines[0]).toContain('time_s');
    report.notes.forEach((note, at) =>
      expect(Math.abs(Number(lines[at + 1]![8]) - note.timeSec)).toBeLessThan(0.00006),
    );
  });

  it('say what was struck for what', () => {
    const wrong = lines.find((line) => line[3] === 'wrong')!;
    expect([wrong[4], wrong[6]]).toEqual(['E3', 'F3']);
    expect(lines.filter((line) => line[3] === 'missed')).toHaveLength(1);
    expect(lines.filter((line) => line[3] === 'extra: slip')).toHaveLength(1);
  });

  it('quote what holds a comma or a quotation mark', () => {
    const unsure = [{ step: 1, midi: 60, hand: 'left' as const, reason: 'soft, "perhaps"' }];
    expect(encodeCsv({ ...report, unsure })).toContain('"unsure: soft, ""perhaps"""');
  });
});
