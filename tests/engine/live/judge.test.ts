import { describe, expect, it } from 'vitest';
import { Judge } from '../../../src/engine/live/judge.ts';
import type { NetworkNote } from '../../../src/engine/listen/network/index.ts';

const GUESS = 0.75;
const note = (timeSec: number, midi: number, probability: number): NetworkNote => ({
  timeSec,
  midi,
  probability,
  levelDb: 0,
  sounding: 0.9,
});
const keys = (judge: Judge, notes: readonly NetworkNote[]): number[] =>
  judge.guess(notes, GUESS).map((guess) => guess.note.midi);
/** a lower key for certain, and its octave, of which the network is less sure */
const pair = (timeSec: number, midi: number): NetworkNote[] => [
  note(timeSec, midi, 0.99),
  note(timeSec + 0.01, midi + 12, 0.6),
];

describe('a guess at the upper of two keys an octave apart', () => {
  it('is not made while single notes are played: it may be a partial of the lower one', () => {
    const judge = new Judge();
    [60, 62, 64].forEach((midi, i) => judge.settle([note(0.3 * i, midi, 0.99)], 0.35));
    expect(keys(judge, pair(0.9, 65))).toEqual([65]);
  });

  it('is made while hands play octaves', () => {
    const judge = new Judge();
    [60, 62, 64].forEach((midi, i) =>
      judge.settle([note(0.3 * i, midi, 0.99), note(0.3 * i, midi + 12, 0.99)], 0.35),
    );
    expect(keys(judge, pair(0.9, 65))).toEqual([65, 77]);
  });

  it('needs its lower key: alone, the same belief is too little', () => {
    const judge = new Judge();
    [60, 62, 64].forEach((midi, i) =>
      judge.settle([note(0.3 * i, midi, 0.99), note(0.3 * i, midi + 12, 0.99)], 0.35),
    );
    expect(keys(judge, [note(0.9, 77, 0.6)])).toEqual([]);
  });
});
