import { describe, expect, it } from 'vitest';
import { clock, listed, shown, signed, withUnit } from '../../../src/ui/kit/figures.ts';

describe('a figure', () => {
  it.each([
    [9.42, 1, '9.4'],
    [-6.4, 0, '−6'],
    [-0.3, 0, '0'],
    [0, 1, '0.0'],
  ])('%s to %s decimals is shown as %s', (value, decimals, text) => {
    expect(shown(value, decimals)).toBe(text);
  });

  it.each([
    [92.3, '+92'],
    [-6, '−6'],
    [0.2, '0'],
    [-0.2, '0'],
  ])('%s with its sign is %s', (value, text) => {
    expect(signed(value)).toBe(text);
  });

  it('stays on one line with its unit: U+202F, the narrow no-break space of Unicode', () => {
    expect(withUnit('92', 'ms')).toBe('92\u202fms');
  });
});

it.each([
  [0, '0:00'],
  [7.9, '0:07'],
  [102, '1:42'],
  [-1, '0:00'],
])('%s s is %s on the clock', (sec, text) => {
  expect(clock(sec)).toBe(text);
});

it.each([
  [[], ''],
  [['A'], 'A'],
  [['A', 'B'], 'A and B'],
  [['A', 'B', 'C'], 'A, B and C'],
])('%j is listed as "%s"', (words, text) => {
  expect(listed(words)).toBe(text);
});
