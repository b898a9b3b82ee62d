import { describe, expect, it } from 'vitest';
import { spotsOf } from '../../../src/ui/plots/pearls/spots.ts';
import { stretchBetween, stretchRange, wholeRange } from '../../../src/ui/plots/pearls/stretches.ts';
import { invent, INVENTED } from '../support/invent.ts';

const { report, exercise } = invent(INVENTED.lateThumb);
const spots = spotsOf(report, exercise);

describe('a stretch', () => {
  it('is the same whichever end is touched first', () => {
    expect(stretchBetween(5, 2)).toEqual(stretchBetween(2, 5));
  });

  it('is heard from before its first note to before the note after its last', () => {
    const { fromSec, toSec } = stretchRange(spots, { fromStep: 2, toStep: 4 })!;
    expect(fromSec).toBeLessThan(spots[2]!.timeSec);
    expect(fromSec).toBeGreaterThan(spots[1]!.timeSec);
    expect(toSec).toBeGreaterThan(spots[4]!.timeSec);
    expect(toSec).toBeLessThan(spots[5]!.timeSec);
  });

  it('at the end rings out, and the whole holds all notes', () => {
    expect(stretchRange(spots, { fromStep: 12, toStep: 12 })!.toSec).toBeCloseTo(spots[12]!.timeSec + 1.2, 6);
    const whole = wholeRange(spots)!;
    expect(whole.fromSec).toBeLessThan(spots[0]!.timeSec);
    expect(whole.toSec).toBeGreaterThan(spots[12]!.timeSec);
  });

  it('of nothing that sounded is nothing', () => {
    expect(stretchRange([], { fromStep: 0, toStep: 3 })).toBeNull();
    expect(wholeRange([])).toBeNull();
  });
});
