import { describe, expect, it } from 'vitest';
import { Judge } from '../../../src/engine/live/judge.ts';
import type { NetworkNote } from '../../../src/engine/listen/network/index.ts';

const note = (timeSec: number, midi: number, probability: number): NetworkNote => ({
  timeSec,
  midi,
  probability,
  levelDb: 0,
  sounding: 0.9,
});
const keys = (notes: readonly { readonly midi: number }[]): number[] => notes.map(({ midi }) => midi);
const guessed = (judge: Judge, notes: readonly NetworkNote[]): number[] =>
  keys(judge.guess(notes).map((guess) => guess.note));
/** a judge who has heard this struck, one moment after another */
const after = (...moments: readonly (readonly number[])[]): Judge => {
  const judge = new Judge();
  moments.forEach((midis, i) => play(judge, 0.3 * i, midis));
  return judge;
};
const play = (judge: Judge, timeSec: number, midis: readonly number[]): void =>
  judge.played(judge.settle(midis.map((midi) => note(timeSec, midi, 0.99))).certain);
/** a lower key for certain, and its octave, which the network hardly believes in */
const pair = (timeSec: number, midi: number): NetworkNote[] => [
  note(timeSec, midi, 0.99),
  note(timeSec + 0.01, midi + 12, 0.15),
];
const OCTAVES = [
  [60, 72],
  [62, 74],
  [64, 76],
] as const;

describe('the other one of two keys an octave apart, hardly heard', () => {
  it('is nothing while single notes are played: it may be a partial of the lower one', () => {
    const judge = after([60], [62], [64]);
    expect(guessed(judge, pair(0.9, 65))).toEqual([65]);
    expect(judge.settle(pair(0.9, 65))).toMatchObject({ certain: [{ midi: 65 }], open: [] });
  });

  it('is guessed while hands play octaves, and left open when it is heard again no better', () => {
    const judge = after(...OCTAVES);
    expect(guessed(judge, pair(0.9, 65))).toEqual([65, 77]);
    expect(judge.settle(pair(0.9, 65))).toMatchObject({ certain: [{ midi: 65 }], open: [{ midi: 77 }] });
  });

  it('is guessed of the lower hand, too, and where the likely one was guessed by an earlier question', () => {
    const judge = after(...OCTAVES);
    expect(guessed(judge, [note(0.9, 77, 0.99)])).toEqual([77]);
    expect(guessed(judge, [note(0.91, 65, 0.15)])).toEqual([65]);
  });

  it('needs a likely one: alone, the same belief is too little', () => {
    expect(guessed(after(...OCTAVES), [note(0.9, 77, 0.15)])).toEqual([]);
  });

  it('is one key: where its hand has just been rather than beyond the other one', () => {
    const judge = after(...OCTAVES);
    const [low, middle, high] = [note(0.9, 65, 0.2), note(0.9, 77, 0.99), note(0.9, 89, 0.3)];
    expect(guessed(judge, [low, middle, high])).toEqual([77, 65]);
  });

  it('is not expected where one hand plays chords of an octave', () => {
    const judge = after([60, 64, 67, 72], [62, 65, 69, 74], [64, 67, 71, 76]);
    expect(guessed(judge, pair(0.9, 65))).toEqual([65]);
  });

  it('is still expected after something was heard that nobody played', () => {
    const judge = after(...OCTAVES);
    for (let i = 0; i < 12; i++) judge.settle([note(2 + 0.3 * i, 50 + (i % 3), 0.99)]);
    expect(guessed(judge, pair(20, 65))).toEqual([65, 77]);
  });

  it('is expected again in the next attempt, but no longer when one hand has gone on alone', () => {
    const judge = after(...OCTAVES);
    expect(guessed(judge, pair(60, 65))).toEqual([65, 77]);
    for (let i = 0; i < 7; i++) play(judge, 61 + 0.3 * i, [60 + i]);
    expect(guessed(judge, pair(64, 65))).toEqual([65]);
  });
});
