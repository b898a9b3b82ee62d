import { describe, expect, it } from 'vitest';
import {
  assignmentsOf,
  byExercise,
  DEFAULT_CRITERIA,
  type AssignedExercise,
  type AttemptSummary,
  type ExerciseChoice,
} from '../../../src/engine/index.ts';
import { askedWords, progressWords } from '../../../src/ui/practice/assigned-words.ts';
import { planWords } from '../../../src/ui/practice/words.ts';
import { attempts } from '../../engine/standing/history.ts';

const SCALE: ExerciseChoice = { key: 'D major', form: 'scale', hands: 'right', octaves: 2 };
const ASKED: AssignedExercise = {
  exercise: SCALE,
  targetBpm: 72,
  inARow: 3,
  evennessPercent: 6.5,
  note: '',
  sinceMs: 0,
};
const plain = (text: string): string => text.replace(/[\u202f\u00a0]/g, ' ');
const after = (made: readonly Partial<AttemptSummary>[]) =>
  assignmentsOf([ASKED], byExercise(attempts(SCALE, made)), DEFAULT_CRITERIA)[0]!;

describe('what a teacher asks for', () => {
  it.each([
    [{}, '♩ = 72, three times in a row, variation 6.5 % at most'],
    [{ targetBpm: null, evennessPercent: 8 }, 'three times in a row, variation 8 % at most'],
    [{ inARow: 1, targetBpm: null, evennessPercent: null }, 'once'],
    [{ inARow: null, targetBpm: null, evennessPercent: null }, 'as usual'],
  ] as const)('is said: %j', (more, words) => {
    expect(plain(askedWords({ ...ASKED, ...more }))).toBe(words);
  });
});

describe('how far it is', () => {
  it.each([
    ['nothing', [], 'Not played since.'],
    ['one that was good', [{ evennessPercent: 5 }], 'One of three in a row so far.'],
    ['one that was not', [{ wrong: 1 }], 'Last time one note was wrong.'],
    [
      'one not as even as asked',
      [{ evennessPercent: 7.5 }],
      'Last time the timing varied by 7.5 % from note to note, and up to 6.5 % counts as even.',
    ],
  ] as const)('is said after %s', (_name, made, words) => {
    expect(plain(progressWords(after(made)))).toBe(words);
  });

  it('is said in the plan of the day too', () => {
    const reason = { kind: 'assigned' as const, assignment: after([]) };
    expect(planWords({ exercise: SCALE, targetBpm: 72, minutes: 5, restMinutes: 0, reason })).toBe(
      '5 minutes, ♩ = 72. Your teacher asks for it. Not played since.',
    );
  });
});
