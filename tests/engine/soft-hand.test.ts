import { describe, expect, it } from 'vitest';
import { assess, assessRecording } from '../../src/engine/index.ts';
import type { ExerciseChoice, Form, Hands } from '../../src/engine/exercise/index.ts';
import { listenAndKeep } from '../../src/engine/listen/index.ts';
import { recogniseFrom } from '../../src/engine/match/index.ts';
import { withSoftHand } from '../../src/engine/soft-hand.ts';
import { NO_MISTAKES, render } from '../support/render.ts';
import { DB_PER_VELOCITY } from '../support/student/perform.ts';

const HOME = { room: { decaySec: 0.4, directDb: 4 } };
const choiceOf = (form: Form, hands: Hands): ExerciseChoice => ({ key: 'G major', form, hands, octaves: 1 });

/** The upper hand softer by so many dB; one hand alone as loud as the lower one. */
function play(form: Form, hands: Hands, softerDb: number, seed = 62) {
  const isBoth = hands === 'together';
  return render({
    seed,
    piano: 'dev',
    exercise: choiceOf(form, hands),
    student: {
      leftHandDb: isBoth ? softerDb : 0,
      velocity: 70 - (isBoth ? softerDb / 2 / DB_PER_VELOCITY : 0),
      chordSpreadMs: 4,
      mistakes: NO_MISTAKES,
    },
    home: HOME,
  });
}

// Both hands on the development piano (see tests/support); the upper one so soft that by the notes heard blind it is the lower hand alone.
describe('an upper hand that is much softer', () => {
  it.each<[Form, number]>([
    ['triads', 8],
    ['progression', 10],
    ['arpeggio', 10],
  ])('%s, %i dB: both hands are recognised, and none of their notes is accused', async (form, softerDb) => {
    const sound = await play(form, 'together', softerDb);
    const { heard, sound: kept } = listenAndKeep(sound);
    const blind = recogniseFrom(heard);
    expect(blind.choice).toEqual(choiceOf(form, 'left'));
    const told = withSoftHand(heard, blind, kept);
    expect(told.choice).toEqual(choiceOf(form, 'together'));
    expect(told.handLikelihood).toBeUndefined();
    expect(told.alternatives.map(({ choice }) => choice)).not.toContainEqual(told.choice);
    const assessment = assess(sound, null);
    if (assessment.kind !== 'report') throw new Error(assessment.kind);
    const { exercise, notes, missed } = assessment.report;
    expect(exercise).toMatchObject(choiceOf(form, 'together'));
    expect(notes.filter(({ verdict }) => verdict !== 'correct')).toEqual([]);
    expect(missed).toEqual([]);
  });

  it('is recognised in a longer recording, too', async () => {
    const { heard, sound } = listenAndKeep(await play('triads', 'together', 8));
    const found = assessRecording(heard, sound);
    expect(found.map(({ recognition }) => recognition.choice)).toEqual([choiceOf('triads', 'together')]);
    expect(found[0]!.assessment).toMatchObject({
      kind: 'report',
      report: { exercise: { hands: 'together' } },
    });
  });

  it('is not looked for without the sound', async () => {
    const { heard } = listenAndKeep(await play('triads', 'together', 8));
    const blind = recogniseFrom(heard);
    expect(withSoftHand(heard, blind, null)).toBe(blind);
  });
});

describe('one hand alone', () => {
  it.each<[Form, Hands]>([
    ['triads', 'left'],
    ['triads', 'right'],
    ['progression', 'left'],
    ['arpeggio', 'left'],
    ['scale', 'right'],
  ])('%s, %s: no other hand is made up', async (form, hands) => {
    for (const seed of [61, 62]) {
      const { heard, sound } = listenAndKeep(await play(form, hands, 0, seed));
      const blind = recogniseFrom(heard);
      expect(withSoftHand(heard, blind, sound)).toBe(blind);
    }
  });
});
