import { expect, it } from 'vitest';
import { RATE_HZ, SampleHistory } from '../../../src/engine/listen/audio/index.ts';
import type { NetworkNote } from '../../../src/engine/listen/network/index.ts';
import { LiveTuning } from '../../../src/engine/live/tuning.ts';
import { playStrings } from '../listen/strings.ts';

/** So many strings by formula, all 40 cents flat, read as they sound → the tuning that is listened by. */
function centsAfter(count: number, isVoiced: boolean): number {
  const strokes = Array.from({ length: count }, (_, i) => ({
    timeSec: 0.2 + 0.5 * i,
    midi: 55 + i,
    cents: -40,
  }));
  const sound = Float64Array.from(playStrings(strokes, { seconds: 0.6 + 0.5 * count }));
  const history = new SampleHistory(20 * RATE_HZ);
  history.append(sound, 0, sound.length);
  const tuning = new LiveTuning(history, null);
  strokes.forEach(({ timeSec, midi }, i) => {
    const note: NetworkNote = { timeSec, midi, probability: 0.9, levelDb: 0, sounding: 1 };
    const after = strokes[i + 1];
    tuning.offsetOf(note, after === undefined ? undefined : { ...note, ...after }, isVoiced);
  });
  return tuning.cents();
}

// Syllables before the playing agreed by chance, and for five seconds no key was heard (development piano).
it('four strings that agree tell the tuning; beside a voice it takes eight', () => {
  expect(Math.abs(centsAfter(4, false) + 40)).toBeLessThan(5);
  expect(centsAfter(4, true)).toBe(0);
  expect(Math.abs(centsAfter(8, true) + 40)).toBeLessThan(5);
});
