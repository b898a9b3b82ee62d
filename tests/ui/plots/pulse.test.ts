import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { evenPulse, medianSecPerBeat, pulseStretches } from '../../../src/ui/plots/pearls/pulse.ts';
import { cutSilences } from '../../../src/ui/plots/pearls/warp.ts';

const even = (count: number, startSec: number, secPerBeat: number) =>
  Array.from({ length: count }, (_, step) => ({
    beat: step / 2,
    timeSec: startSec + (step / 2) * secPerBeat,
  }));

describe('the even pulse', () => {
  it('of even notes is theirs, wherever they begin and however fast they are', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 2, max: 60 }),
        fc.double({ min: 0, max: 100, noNaN: true }),
        fc.double({ min: 0.2, max: 3, noNaN: true }),
        (count, startSec, secPerBeat) => {
          const pulse = evenPulse(even(count, startSec, secPerBeat));
          expect(pulse?.startSec).toBeCloseTo(startSec, 6);
          expect(pulse?.secPerBeat).toBeCloseTo(secPerBeat, 6);
        },
      ),
    );
  });

  it('runs from the first note to the last: (0,0), (1,1), (2,3) → 3/2 s a beat from 0 (closed form)', () => {
    const pulse = evenPulse([
      { beat: 0, timeSec: 0 },
      { beat: 1, timeSec: 1 },
      { beat: 2, timeSec: 3 },
    ]);
    expect(pulse).toEqual({ startSec: 0, secPerBeat: 1.5 });
  });

  it('needs two different beats', () => {
    expect(evenPulse([{ beat: 1, timeSec: 2 }])).toBeNull();
    expect(
      evenPulse([
        { beat: 1, timeSec: 2 },
        { beat: 1, timeSec: 3 },
      ]),
    ).toBeNull();
    expect(medianSecPerBeat([])).toBeNull();
  });

  it('starts anew after a stop, so that the stop bends neither side', () => {
    const before = even(6, 1, 0.8);
    const after = even(6, 0, 0.8).map(({ beat, timeSec }) => ({ beat: beat + 3, timeSec: timeSec + 9 }));
    const stretches = pulseStretches([...before, ...after]);
    expect(stretches).toHaveLength(2);
    for (const { pulse } of stretches) expect(pulse.secPerBeat).toBeCloseTo(0.8, 9);
  });
});

describe('cut silences', () => {
  const onsets = fc
    .array(fc.double({ min: 0, max: 60, noNaN: true }), { minLength: 2, maxLength: 40 })
    .map((times) => [...times].sort((a, b) => a - b));

  it('never put one moment before an earlier one, and keep what is not cut', () => {
    fc.assert(
      fc.property(onsets, (times) => {
        const { drawnSec } = cutSilences(times, 2, 1);
        for (let i = 1; i < times.length; i += 1) {
          const real = times[i]! - times[i - 1]!;
          const drawn = drawnSec(times[i]!) - drawnSec(times[i - 1]!);
          expect(drawn).toBeCloseTo(real > 2 ? 1 : real, 6);
        }
      }),
    );
  });

  it('say how long the silence was', () => {
    expect(cutSilences([0, 1, 6], 2, 1).cuts).toEqual([{ fromSec: 1.5, toSec: 5.5, silenceSec: 5 }]);
  });
});
