import type { ExpectedNote, Hand } from '../../exercise/index.ts';
import type { Heard, PlayedNote } from '../../listen/index.ts';
import type { Alignment } from '../../match/index.ts';

/** One expected note that was struck, rightly or not. */
export interface StruckKey {
  readonly played: PlayedNote;
  readonly expected: ExpectedNote;
  readonly right: boolean;
}

/** One step as it was struck by one hand, or by both. */
export interface Strike {
  readonly step: number;
  readonly beat: number;
  /** mean onset of its keys */
  readonly timeSec: number;
  readonly keys: readonly StruckKey[];
}

/** The time from one step to the next, with nothing missed, repeated or gone back for between. */
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

/** Alignment → the steps struck by `hand` (null: by either), in order; steps with no key struck are left out. */
export function strikesOf(heard: Heard, alignment: Alignment, hand: Hand | null): readonly Strike[] {
  const beats = new Map(alignment.exercise.steps.map((step) => [step.step, step.beat]));
  const byStep = new Map<number, StruckKey[]>();
  for (const note of alignment.matched) {
    if (note.verdict !== 'correct' && note.verdict !== 'wrong') continue;
    if (hand !== null && note.expected.hand !== hand) continue;
    const key = {
      played: heard.notes[note.played]!,
      expected: note.expected,
      right: note.verdict === 'correct',
    };
    byStep.set(note.step, [...(byStep.get(note.step) ?? []), key]);
  }
  return [...byStep]
    .sort(([a], [b]) => a - b)
    .map(([step, keys]) => ({
      step,
      beat: beats.get(step)!,
      timeSec: keys.reduce((sum, key) => sum + key.played.timeSec, 0) / keys.length,
      keys,
    }));
}

/** Strikes → intervals between consecutive steps of the exercise (measures.md, IOI). */
export function intervalsOf(
  strikes: readonly Strike[],
  heard: Heard,
  alignment: Alignment,
  hand: Hand | null,
): readonly Interval[] {
  const breaks = alignment.extras
    .filter((extra) => extra.kind === 'repeat' || extra.kind === 'restart')
    .map((extra) => heard.notes[extra.played]!.timeSec);
  return strikes.slice(1).flatMap((strike, index): Interval[] => {
    const before = strikes[index]!;
    const ioiMs = 1000 * (strike.timeSec - before.timeSec);
    const broken = breaks.some((timeSec) => timeSec > before.timeSec && timeSec < strike.timeSec);
    if (strike.step !== before.step + 1 || broken || ioiMs <= 0) return [];
    const beats = strike.beat - before.beat;
    const crossings = alignment.exercise.steps[strike.step]!.crossings;
    return [
      {
        step: strike.step,
        fromStep: before.step,
        beats,
        atBeat: (strike.beat + before.beat) / 2,
        ioiMs,
        perBeatMs: ioiMs / beats,
        intoCrossing: crossings.some((crossing) => hand === null || crossing.hand === hand),
        noiseVariance:
          (heard.onsetSdMs ** 2 * (1 / strike.keys.length + 1 / before.keys.length)) / beats ** 2,
      },
    ];
  });
}
