import { beforeAll, describe, expect, it } from 'vitest';
import { buildExercise } from '../../../src/engine/exercise/index.ts';
import type { ExerciseChoice, Hands } from '../../../src/engine/exercise/index.ts';
import { listenAndKeep } from '../../../src/engine/listen/index.ts';
import type { Candidate } from '../../../src/engine/listen/index.ts';
import { matchNotes } from '../../../src/engine/match/index.ts';
import type { Alignment } from '../../../src/engine/match/index.ts';
import { recheck } from '../../../src/engine/recheck/index.ts';
import { everyMoment, likelyMoments } from '../../../src/engine/recheck/moments.ts';
import { NO_MISTAKES, render } from '../../support/render.ts';
import type { Mistake } from '../../support/student/mistakes.ts';

/** Steps of one key each, at these times; null: nothing was heard of it. */
const stepsAt = (times: readonly (number | null)[]) =>
  times.map((timeSec, at) => {
    const notes = [{ midi: 60 + at, hand: 'left' as const, timeSec }];
    return { step: at, written: [60 + at], timeSec, notes };
  });

const shown = (moments: readonly number[]): number[] => moments.map((sec) => Number(sec.toFixed(3)));

/** The same a beat apart. */
function momentsOf(times: readonly (number | null)[], step: number, candidates: readonly Candidate[] = []) {
  const beats = times.map((_, beat) => beat);
  return shown(likelyMoments(stepsAt(times), beats, step, candidates));
}

const halfHeard = (midi: number, timeSec: number, probability: number): Candidate => ({
  midi,
  timeSec,
  probability,
  loudnessDb: 0,
  sounding: 0.5,
  note: null,
});

describe('when a step of which nothing was heard may have come', () => {
  it.each([
    ['evenly between its neighbours', [1, null, 1.2], 1, [1.1]],
    ['the second of two in a row', [1, null, null, 1.3], 2, [1.2]],
    ['before the first, at the pace that follows', [null, 1.1, 1.2, 1.3], 0, [1]],
    ['after the last, at the pace before', [1, 1.1, null], 2, [1.2]],
    ['more in a row than were passed over: nobody knows', [1, null, null, null, null, 1.5], 2, []],
    ['neighbours out of order tell no time', [1.2, null, 1], 1, []],
    ['one neighbour alone tells no pace', [1, null], 1, []],
    ['nothing was heard at all', [null, null, null], 1, []],
  ] as const)('%s', (_, times, step, wanted) => {
    expect(momentsOf(times, step)).toEqual(wanted);
  });

  it('where one of its keys was half heard, near the moment expected, the surest two first', () => {
    const candidates = [
      halfHeard(61, 1.08, 0.1),
      halfHeard(61, 1.13, 0.3),
      halfHeard(61, 1.065, 0.2),
      halfHeard(61, 1.19, 0.9),
      halfHeard(62, 1.1, 0.9),
    ];
    expect(momentsOf([1, null, 1.2], 1, candidates)).toEqual([1.1, 1.13, 1.065]);
  });
});

describe('all the time in which a step of which nothing was heard may have come', () => {
  const AFTER_ONE = [1.068, 1.124, 1.18, 1.236, 1.292];
  it.each([
    ['between its neighbours, clear of both, at most 60 ms apart', [1, null, 1.36], 1, AFTER_ONE],
    ['however many are not heard in a row', [1, null, null, null, null, 1.36], 3, AFTER_ONE],
    ['before the first, a step and a half', [null, 1.36, 1.6], 0, AFTER_ONE],
    ['after the last, a step and a half', [0.76, 1, null], 2, AFTER_ONE],
    ['not of the last two: nobody knows whether they were played', [0.8, 1, null, null], 3, []],
    ['at an end with no pace beside it', [1, null], 1, []],
    ['no room between the neighbours', [1, null, 1.01], 1, []],
    ['the player went back', [1.3, null, 1], 1, []],
    ['nothing was heard at all', [null, null], 0, []],
  ] as const)('%s', (_, times, step, wanted) => {
    expect(shown(everyMoment(stepsAt(times), step))).toEqual(wanted);
  });
});

// Truth from a sampled grand with known strokes (development piano, see tests/support).
async function fast(
  hands: Hands,
  seed: number,
  mistakes: readonly Mistake[] | typeof NO_MISTAKES = NO_MISTAKES,
) {
  const choice: ExerciseChoice = { key: 'Eb minor', form: 'scale', hands, octaves: 2 };
  const student = {
    bpm: 360,
    octaveShift: -1,
    overlapMs: -25,
    velocity: 48,
    jitterMs: 4,
    handsApartMs: { mean: -14, sd: 5 },
    endsDb: -4,
    mistakes,
  };
  const home = { tuningCents: -17, room: null };
  const sound = await render({ seed, piano: 'dev', exercise: choice, student, home });
  const { heard, sound: kept } = listenAndKeep(sound);
  const blind = matchNotes(heard, buildExercise(choice));
  return { blind, again: recheck(heard, blind, kept).alignment };
}

const count = ({ matched }: Alignment, verdict: string): number =>
  matched.filter((note) => note.verdict === verdict).length;
/** accused by the criteria of the report: 99 % sure */
const accused = ({ matched }: Alignment): readonly number[] =>
  matched.flatMap((note) => (note.verdict === 'missed' && (note.sure ?? 1) >= 0.99 ? [note.step] : []));

describe.each([
  ['together', 1],
  ['left', 7],
] as const)('twelve steps a second, %s', (hands, seed) => {
  let played: Awaited<ReturnType<typeof fast>>;
  beforeAll(async () => {
    played = await fast(hands, seed);
  });

  it('what the blind ear passed over is found', () => {
    expect(count(played.blind, 'missed')).toBeGreaterThan(0);
    expect(count(played.again, 'correct')).toBeGreaterThan(count(played.blind, 'correct'));
  });

  it('nothing that was struck is called missing', () => {
    expect(accused(played.again)).toEqual([]);
  });
});

it('a step left out in fast playing is not made up', async () => {
  const leftOut = [5, 18];
  const mistakes = leftOut.map((step): Mistake => ({ kind: 'missed', step, note: 0 }));
  const { again } = await fast('left', 1, mistakes);
  for (const step of leftOut)
    expect(again.matched.find((note) => note.step === step)!.verdict).not.toBe('correct');
});
