import { expect, it } from 'vitest';
import type { ExerciseChoice, HandsAlone } from '../../../src/engine/index.ts';
import { aloneElsewhere } from '../../../src/terminal/pile/arrange.ts';
import type { Outcome } from '../../../src/terminal/pile/types.ts';
import { recordingOf, SCALE, sortedOf } from './piles.ts';

const MORNING = new Date(2026, 10, 14, 9).getTime();
const EVENING = new Date(2026, 10, 14, 19).getTime();
const DAY_BEFORE = new Date(2026, 10, 13, 23).getTime();
const TOGETHER: ExerciseChoice = { ...SCALE, hands: 'together' };

const lookAt = (midi: number): HandsAlone => ({ [`${midi}>${midi}`]: [{ seen: 'A'.repeat(256) }] });

function taughtIn(name: string, student: string, whenMs: number | null, alone: HandsAlone): Outcome {
  const one = sortedOf(recordingOf(name, student, whenMs), [0]);
  if (!('sorted' in one)) return one;
  return { ...one, sorted: { ...one.sorted, attempts: one.sorted.attempts.map((it) => ({ ...it, alone })) } };
}

it('both hands are told what others of their student and day taught, whenever these were played', () => {
  const told = aloneElsewhere([
    sortedOf(recordingOf('both.wav', 'Mara', MORNING), [0], TOGETHER),
    taughtIn('left.wav', 'Mara', MORNING, lookAt(48)),
    taughtIn('right.wav', 'Mara', EVENING, lookAt(60)),
    taughtIn('before.wav', 'Mara', DAY_BEFORE, lookAt(50)),
    taughtIn('Ilse.wav', 'Ilse', MORNING, lookAt(52)),
    taughtIn('no day.wav', 'Mara', null, lookAt(53)),
    {
      recording: recordingOf('bad.wav', 'Mara', MORNING),
      problem: 'failed',
      trouble: { trouble: 'own-fault' },
    },
  ]);
  expect(told[0]).toEqual({ ...lookAt(60), ...lookAt(48) });
  expect(told.slice(1)).toEqual([null, null, null, null, null, null]);
});

it('a recording is not told what it knows itself, and without a day nothing is known of others', () => {
  const own = taughtIn('own.wav', 'Mara', MORNING, lookAt(48));
  const both = sortedOf(recordingOf('own.wav', 'Mara', MORNING), [0], TOGETHER);
  if (!('sorted' in own) || !('sorted' in both)) throw new Error('sorted');
  const session: Outcome = {
    ...both,
    sorted: { ...both.sorted, attempts: [...own.sorted.attempts, ...both.sorted.attempts] },
  };
  expect(aloneElsewhere([session])).toEqual([null]);
  const undated = sortedOf(recordingOf('both.wav', 'Mara'), [0], TOGETHER);
  expect(aloneElsewhere([undated, taughtIn('left.wav', 'Mara', null, lookAt(48))])).toEqual([null, null]);
});
