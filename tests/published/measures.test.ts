import { describe, expect, it } from 'vitest';
import { justNoticeableMs } from '../../src/engine/report/criteria/index.ts';
import { MEAN_RANGE } from '../../src/engine/report/measures/noise.ts';
import { nPVI } from '../../src/engine/report/measures/npvi.ts';
import { createRandom } from '../support/random.ts';

describe('nPVI', () => {
  // Livingstone's published table of worked examples of the nPVI.
  it.each([
    [[1, 2, 3], 53.3333],
    [[3, 3, 6], 33.3333],
    [[4, 6, 8], 34.2857],
    [[4, 7, 7], 27.2727],
  ])('of %j is %f, as published', (durations, value) => {
    expect(nPVI(durations)).toBeCloseTo(value, 4);
  });

  // Worked by hand from the formula of the nPVI.
  it('of [2, 5, 1, 3] is 106.3', () => {
    expect(nPVI([2, 5, 1, 3])).toBeCloseTo(106.3, 1);
  });

  it('of a crotchet–quaver rhythm, C4 D8 C4 D8 C4, is 66.67', () => {
    expect(nPVI([2, 1, 2, 1, 2])).toBeCloseTo(66.67, 2);
  });

  it('of equal durations is 0, and does not depend on the unit', () => {
    expect(nPVI([0.4, 0.4, 0.4])).toBe(0);
    expect(nPVI([400, 700, 700])).toBeCloseTo(nPVI([4, 7, 7]), 10);
  });
});

describe('the just-noticeable difference of an interval', () => {
  // Friberg & Sundberg 1995: 6 ms under 240 ms, 2.5 % above.
  it.each([
    [100, 6],
    [239, 6],
    [240, 6],
    [400, 10],
    [1000, 25],
  ])('of %i ms is %f ms', (ioiMs, value) => {
    expect(justNoticeableMs(ioiMs)).toBeCloseTo(value, 10);
  });
});

describe('the mean range of Gaussian values', () => {
  // Tippett 1925 (values from memory): 1.128, 1.693, 2.059, 2.326 for 2 to 5. Checked by drawing.
  it.each([2, 3, 4, 5])('of %i is as tabled, to 1 %%', (count) => {
    const random = createRandom(count);
    let sum = 0;
    const draws = 40_000;
    for (let draw = 0; draw < draws; draw++) {
      const values = Array.from({ length: count }, () => random.normal(1));
      sum += Math.max(...values) - Math.min(...values);
    }
    expect(sum / draws / MEAN_RANGE[count]!).toBeCloseTo(1, 1.7);
  });
});
