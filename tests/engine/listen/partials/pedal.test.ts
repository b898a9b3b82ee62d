import { describe, expect, it } from 'vitest';
import { assess } from '../../../../src/engine/index.ts';
import type { ExerciseChoice } from '../../../../src/engine/index.ts';
import { render } from '../../../support/render.ts';
import type { PianoName, StudentKnobs } from '../../../support/render.ts';

const SCALE: ExerciseChoice = { key: 'A major', form: 'scale', hands: 'left', octaves: 2 };

/** A scale in a room that decays by 60 dB in so many seconds (0: none), as loud as the piano itself → what is told of pedal and touch. */
async function told(piano: PianoName, decaySec: number, student: Partial<StudentKnobs>) {
  const sound = await render({
    seed: 3,
    piano,
    exercise: SCALE,
    student: { bpm: 70, jitterMs: 5, ...student },
    home: { room: decaySec === 0 ? null : { decaySec, directDb: 0 } },
  });
  const assessment = assess(sound, SCALE);
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

  it.each([
    ['legato, 70 ms over the next', 1.2, 70],
    ['detached', 0.6, -80],
  ])('%s in a room of %d s is no pedal', async (_, decaySec, overlapMs) => {
    const { held, codes } = await told(piano, decaySec, { overlapMs });
    expect(held).toBe(false);
    expect(codes).toEqual(['at-the-criterion']);
  });
});
