import { describe, expect, it } from 'vitest';
import { buildExercise } from '../../../../src/engine/exercise/index.ts';
import { findingOf } from '../../../../src/engine/listen/findings.ts';
import type { Heard, PlayedNote } from '../../../../src/engine/listen/index.ts';
import type { Alignment, ExtraKind, MatchedNote } from '../../../../src/engine/match/index.ts';
import { onlySure, sureOfExtra, sureOfFault } from '../../../../src/engine/report/criteria/evidence.ts';
import { DEFAULT_CRITERIA } from '../../../../src/engine/report/index.ts';
import { heardOf, played } from '../../match/simulated.ts';

// By hand: what is surely wrong, missing or too many, where 99 % is asked for.

const EXERCISE = buildExercise({ key: 'C major', form: 'scale', hands: 'right', octaves: 1 });
const [EXPECTED] = EXERCISE.steps[1]!.notes;
const MATCHED = { step: 1, expected: EXPECTED! };
const SURE = DEFAULT_CRITERIA.sure;

type Finding = Heard['findings'][number];

/** What is left of one written note, or of one key too many, among these notes: the key is the first of them. */
function left(
  one: { readonly note?: MatchedNote; readonly kind?: ExtraKind },
  notes: readonly PlayedNote[] = [],
  more: { soundLost?: boolean; pedalHeld?: boolean; findings?: readonly Finding[] } = {},
) {
  const { findings = [], ...how } = more;
  const heard: Heard = { ...heardOf([], { findings }), notes };
  const alignment: Alignment = {
    exercise: EXERCISE,
    octaveShift: 0,
    semitoneShift: 0,
    matched: one.note === undefined ? [] : [one.note],
    extras: one.kind === undefined ? [] : [{ played: 0, kind: one.kind, step: 1 }],
    remarks: [],
    run: { startSec: 0, endSec: 9 },
    fit: 1,
  };
  const { alignment: sure, perhapsAgainSec } = onlySure(heard, alignment, DEFAULT_CRITERIA, how);
  return { matched: sure.matched, kept: sure.extras.length === 1, perhapsAgainSec };
}
const key = (confidence: number, midi = 60, timeSec = 5): PlayedNote => played(timeSec, midi, { confidence });

describe('how sure it is that a written note was not played right', () => {
  it.each<[string, MatchedNote, number]>([
    ['missed, and nothing said of it', { ...MATCHED, verdict: 'missed' }, 1],
    ['missed, by the closer look', { ...MATCHED, verdict: 'missed', sure: 0.7 }, 0.7],
    ['wrong: both errors of the ear at once', { ...MATCHED, verdict: 'wrong', played: 0 }, 0.96],
    ['right', { ...MATCHED, verdict: 'correct', played: 0 }, 1],
  ])('%s', (_, note, sure) => {
    expect(sureOfFault({ ...heardOf([]), notes: [key(0.6)] }, note)).toBeCloseTo(sure, 9);
  });
});

describe('how sure it is that a key was too many', () => {
  it.each<[string, ExtraKind, readonly PlayedNote[], number]>([
    ['a slip', 'slip', [], 0.6],
    ['a key like no other', 'other', [], 0.6],
    ['struck again', 'repeat', [key(1, 60, 4.899)], 0.96],
    ['struck again sooner than a finger can', 'repeat', [key(1, 60, 4.901)], 0],
    ['heard again sooner than a finger can', 'repeat', [key(1, 60, 5.099)], 0],
    ['beside another key', 'repeat', [key(1, 61, 4.95)], 0.96],
    ['gone back to', 'restart', [key(1, 60, 4.95)], 0.96],
  ])('%s', (_, kind, others, sure) => {
    const heard = { ...heardOf([]), notes: [key(0.6), ...others] };
    expect(sureOfExtra(heard, { played: 0, kind, step: 1 })).toBeCloseTo(sure, 9);
  });
});

describe('a written note', () => {
  const missed = (sure?: number): MatchedNote => ({
    ...MATCHED,
    verdict: 'missed',
    ...(sure !== undefined && { sure }),
  });
  const wrong: MatchedNote = { ...MATCHED, verdict: 'wrong', played: 0 };

  it.each([
    ['missing as surely as is asked for', missed(SURE), [], 'missed'],
    ['missing less surely', missed(SURE - 0.001), [], 'unsure'],
    ['wrong as surely as is asked for', wrong, [key(0.901)], 'wrong'],
    ['wrong less surely', wrong, [key(0.899)], 'unsure'],
  ] as const)('is said to be what it was, or asked about: %s', (_, note, notes, verdict) => {
    expect(left({ note }, notes).matched).toMatchObject([{ step: 1, verdict }]);
  });

  it('that is asked about says that it is not certain', () => {
    expect(left({ note: missed(0.5) }).matched).toEqual([
      { ...MATCHED, verdict: 'unsure', reason: { notice: 'not-certain', name: EXPECTED!.name } },
    ]);
  });
});

describe('a key too many', () => {
  it.each<[ExtraKind, number, boolean, boolean]>([
    ['slip', 0.99, true, false],
    ['slip', 0.989, false, false],
    ['repeat', 0.901, true, false],
    ['repeat', 0.899, false, true],
    ['repeat', 0.1, false, true],
    ['repeat', 0.099, false, false],
    ['restart', 0.899, false, true],
  ])('a %s believed by %f is told: %s, or perhaps took time: %s', (kind, confidence, kept, perhaps) => {
    expect(left({ kind }, [key(confidence)])).toMatchObject({ kept, perhapsAgainSec: perhaps ? [5] : [] });
  });

  it('that is an echo took no time', () => {
    const echo = left({ kind: 'repeat' }, [key(1), key(1, 60, 4.95)]);
    expect(echo).toMatchObject({ kept: false, perhapsAgainSec: [] });
  });

  it.each<[string, ExtraKind, readonly PlayedNote[], boolean]>([
    ['with another, its string ringing already', 'other', [key(1, 67, 5.05), key(1, 60, 2)], false],
    ['by itself', 'other', [key(1, 67, 5.07), key(1, 60, 2)], true],
    ['with another, never struck before', 'other', [key(1, 67, 5.05), key(1, 60, 8)], true],
    ['with another, struck just before', 'other', [key(1, 67, 5.05), key(1, 60, 4.95)], true],
    ['gone back to', 'restart', [key(1, 67, 5.05), key(1, 60, 2)], true],
  ])('under a held pedal is none where its string rang already: %s', (_, kind, others, kept) => {
    expect(left({ kind }, [key(1), ...others], { pedalHeld: true }).kept).toBe(kept);
    expect(left({ kind }, [key(1), ...others]).kept).toBe(true);
  });
});

describe('in poor sound', () => {
  const missed: MatchedNote = { ...MATCHED, verdict: 'missed' };
  const POOR: readonly (readonly [string, Parameters<typeof left>[2], missing: boolean, tooMany: boolean])[] =
    [
      ['good sound', {}, true, true],
      ['sound of which some was lost', { soundLost: true }, false, false],
      ...(['too-quiet', 'noise', 'speech'] as const).map(
        (kind) => [kind, { findings: [{ kind, detail: '' }] }, false, false] as const,
      ),
      ['clipping', { findings: [findingOf({ notice: 'clipping', times: 9 })] }, true, false],
      ['hum', { findings: [{ kind: 'hum', detail: '' }] }, true, true],
    ];

  it.each(POOR)(
    '%s: a note may be told missing or not, a key too many or not',
    (_, more, missing, tooMany) => {
      expect(left({ note: missed }, [], more).matched[0]!.verdict).toBe(missing ? 'missed' : 'unsure');
      expect(left({ kind: 'slip' }, [key(1)], more).kept).toBe(tooMany);
    },
  );

  it.each(POOR)('%s: a wrong note is one, and going back is', (_, more) => {
    expect(
      left({ note: { ...MATCHED, verdict: 'wrong', played: 0 } }, [key(1)], more).matched[0]!.verdict,
    ).toBe('wrong');
    expect(left({ kind: 'restart' }, [key(1)], more).kept).toBe(true);
  });
});
