import { describe, expect, it } from 'vitest';
import { assess } from '../../../../src/engine/index.ts';
import type { ExerciseChoice } from '../../../../src/engine/index.ts';
import { inventedPassages } from '../../../support/passages.ts';
import { render } from '../../../support/render.ts';
import type { PianoName, StudentKnobs } from '../../../support/render.ts';

const SCALE: ExerciseChoice = { key: 'A major', form: 'scale', hands: 'left', octaves: 2 };

const CHORDS: ExerciseChoice = { key: 'D major', form: 'progression', hands: 'right', octaves: 1 };

/** An exercise in a room that decays by 60 dB in so many seconds (0: none), as loud as the piano itself → what is told of pedal and touch. */
async function told(
  piano: PianoName,
  decaySec: number,
  student: Partial<StudentKnobs>,
  { exercise = SCALE, damperTimes = 1 }: { exercise?: ExerciseChoice; damperTimes?: number } = {},
) {
  const sound = await render({
    seed: 3,
    piano,
    exercise,
    student: { bpm: 70, jitterMs: 5, ...student },
    home: { room: decaySec === 0 ? null : { decaySec, directDb: 0 }, damperTimes, tuningCents: -40 },
  });
  const assessment = assess(sound, exercise);
  if (assessment.kind !== 'report') throw new Error(assessment.kind);
  const { measures, words } = assessment.report;
  const codes = words.said!.statements.map(({ situation }) => situation);
  return { held: measures.pedalHeld === true, touch: measures.touchMs, codes };
}

describe.each(['dev', 'test'] as const)('on the %s piano', (piano) => {
  it.each([0.6, 1.2])('a pedal held is told, room of %d s', async (decaySec) => {
    const { held, touch, codes } = await told(piano, decaySec, { pedal: 'held' });
    expect(held).toBe(true);
    expect(touch).toHaveProperty('notMeasured');
    expect(codes).toEqual(['at-the-criterion', 'pedal-held']);
  });

  it('a pedal held is told of chords, though each hides some strings of the one before', async () => {
    const { held } = await told(piano, 0.4, { pedal: 'held', bpm: 60 }, { exercise: CHORDS });
    expect(held).toBe(true);
  });

  it('chords whose keys come one after the other are held until the next, and are no pedal', async () => {
    const student = { chordSpreadMs: 105, bpm: 50, overlapMs: 0 };
    expect((await told(piano, 0.4, student, { exercise: CHORDS })).held).toBe(false);
  });

  it.each([
    ['legato, 70 ms over the next', 1.2, 70, 1],
    ['detached', 0.6, -80, 1],
    ['held 150 ms over the next, on dampers of twice the usual time', 0.6, 150, 2],
  ])('%s in a room of %d s is no pedal', async (_, decaySec, overlapMs, damperTimes) => {
    const { held, codes } = await told(piano, decaySec, { overlapMs }, { damperTimes });
    expect(held).toBe(false);
    expect(codes).toEqual(['at-the-criterion']);
  });

  it('a passage whose long notes lie under quick ones is no pedal', async () => {
    const [, exercise] = inventedPassages(2);
    const { held, codes } = await told(piano, 0, {}, { exercise: exercise! });
    expect(held).toBe(false);
    expect(codes).toEqual(['at-the-criterion']);
  });
});
