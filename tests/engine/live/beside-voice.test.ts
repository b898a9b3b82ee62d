import { expect, it } from 'vitest';
import { BesideVoice } from '../../../src/engine/live/beside-voice.ts';
import type { Guess } from '../../../src/engine/live/judge.ts';

const guess = (timeSec: number, midi: number, chance = 0.99, sounding = 0.95): Guess => ({
  note: { timeSec, midi, probability: chance, levelDb: 0, sounding },
  chance,
});
const drawn = (...guesses: readonly Guess[]): boolean[] => {
  const beside = new BesideVoice();
  return guesses.map((one) => beside.isPlaying(one));
};

it('one sure guess beside a voice is not drawn, however often it is made; the second key soon after is', () => {
  expect(drawn(guess(1, 60), guess(1.01, 60), guess(1.3, 64))).toEqual([false, false, true]);
});

it('what is less sure, does not sound on, comes late or lies far off is not drawn beside a voice', () => {
  expect(drawn(guess(1, 60), guess(1.3, 64, 0.9))).toEqual([false, false]);
  expect(drawn(guess(1, 60), guess(1.3, 64, 0.99, 0.6))).toEqual([false, false]);
  expect(drawn(guess(1, 60), guess(1.8, 64))).toEqual([false, false]);
  expect(drawn(guess(1, 60), guess(1.3, 90))).toEqual([false, false]);
});
