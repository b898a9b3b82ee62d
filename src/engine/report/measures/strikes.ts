import { levelNoise, onsetNoise, strikeVariance } from './ear-noise.ts';
import type { ExpectedNote, ExpectedStep, Hand } from '../../exercise/index.ts';
import type { Heard, PlayedNote } from '../../listen/index.ts';
import type { Alignment } from '../../match/index.ts';
import { isDetour, strikesOf, unbrokenOf } from '../../timeline/index.ts';
import type { Strike as StrikeOf, StruckNote } from '../../timeline/index.ts';

/** One expected note that was struck, rightly or not. */
export interface StruckKey extends StruckNote {
  readonly played: PlayedNote;
  readonly expected: ExpectedNote;
  readonly right: boolean;
  /** SD of the ear's error of its onset, ms, and of its level, dB */
  readonly onsetSdMs: number;
  readonly levelSdDb: number;
}

/** One step as it was struck by one hand, or by both. */
export type Strike = StrikeOf<StruckKey>;

/** The time from one step to the next, with nothing missed between, and nothing repeated or gone back for, not even perhaps. */
export interface Interval {
  /** the step that it leads into */
  readonly step: number;
  readonly fromStep: number;
  readonly beats: number;
  /** beats from the first step to the middle of the interval */
  readonly atBeat: number;
  readonly ioiMs: number;
  /** IOI / beats, ms a beat */
  readonly perBeatMs: number;
  /** fingering goes against the hand on the way */
  readonly intoCrossing: boolean;
  /** variance that the listener's timing noise adds to perBeatMs, ms² */
  readonly noiseVariance: number;
}

/**
 * Alignment → the steps struck by `hand` (null: by either), in order of time; steps with no key struck are left out.
 * `perhapsAgainSec`: when a key was struck again or the player went back, though that is not sure.
 */
export function strikesBy(
  heard: Heard,
  alignment: Alignment,
  hand: Hand | null,
  perhapsAgainSec: readonly number[],
): readonly Strike[] {
  const [onsetSdOf, levelSdOf] = [onsetNoise(heard), levelNoise(heard)];
  const keys = alignment.matched.flatMap((note): StruckKey[] => {
    if (note.verdict !== 'correct' && note.verdict !== 'wrong') return [];
    const { expected, step, verdict } = note;
    if (hand !== null && expected.hand !== hand) return [];
    const played = heard.notes[note.played]!;
    const right = verdict === 'correct';
    const [onsetSdMs, levelSdDb] = [onsetSdOf(played), levelSdOf(played)];
    return [{ step, timeSec: played.timeSec, played, expected, right, onsetSdMs, levelSdDb }];
  });
  const detoursSec = alignment.extras
    .filter(({ kind }) => isDetour(kind))
    .map(({ played }) => heard.notes[played]!.timeSec);
  return strikesOf(keys, [...detoursSec, ...perhapsAgainSec], alignment.exercise);
}

/** Strikes → intervals between consecutive steps of the exercise. */
export function intervalsOf(
  strikes: readonly Strike[],
  alignment: Alignment,
  hand: Hand | null,
): readonly Interval[] {
  const { steps } = alignment.exercise;
  const plays = (step: ExpectedStep): boolean =>
    hand === null || step.notes.some((note) => note.hand === hand);
  const follows = (from: number, to: number): boolean => to > from && !steps.slice(from + 1, to).some(plays);
  return unbrokenOf(strikes, follows).map(({ from, to }): Interval => {
    const ioiMs = 1000 * (to.timeSec - from.timeSec);
    const beats = to.beat - from.beat;
    const { crossings } = steps[to.step]!;
    return {
      step: to.step,
      fromStep: from.step,
      beats,
      atBeat: (to.beat + from.beat) / 2,
      ioiMs,
      perBeatMs: ioiMs / beats,
      intoCrossing: crossings.some((crossing) => hand === null || crossing.hand === hand),
      noiseVariance: (strikeVariance(from.notes) + strikeVariance(to.notes)) / beats ** 2,
    };
  });
}
