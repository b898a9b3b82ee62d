import { describe, expect, it } from 'vitest';
import { fitLogistic } from './logistic.ts';

describe('the model that strikes are judged by', () => {
  it('is fitted as textbooks fit it: hours of study against an examination passed (a worked example much printed; from memory)', () => {
    const hours = [
      [0.5, 0],
      [0.75, 0],
      [1, 0],
      [1.25, 0],
      [1.5, 0],
      [1.75, 0],
      [1.75, 1],
      [2, 0],
      [2.25, 1],
      [2.5, 0],
      [2.75, 1],
      [3, 0],
      [3.25, 1],
      [3.5, 0],
      [4, 1],
      [4.25, 1],
      [4.5, 1],
      [4.75, 1],
      [5, 1],
      [5.5, 1],
    ] as const;
    const seen = hours.map(([hour, passed]) => ({ values: [hour, 1], known: 0, isTrue: passed === 1 }));
    const [slope, bias] = fitLogistic(seen, 2);
    expect(slope).toBeCloseTo(1.5046, 1);
    expect(bias).toBeCloseTo(-4.0777, 1);
  });

  it('fits what is not known of it otherwise', () => {
    const seen = [0, 0, 0, 1].map((one) => ({ values: [1], known: 2, isTrue: one === 1 }));
    expect(fitLogistic(seen, 1)[0]).toBeCloseTo(Math.log(1 / 3) - 2, 1);
  });
});
