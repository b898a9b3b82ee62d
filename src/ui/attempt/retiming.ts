import type { Exercise, Report, ReportedNote } from '../../engine/index.ts';
import { timeMap, type Attack } from '../../io/playback/index.ts';

/** A way to hear the recording: where each attack goes. */
export interface Version {
  readonly attacks: readonly Attack[];
}

/** How an attempt can be heard besides as it was played; null where there is nothing to be changed or not enough to go by. */
export interface Versions {
  /** as it was played: the attacks stay where they are, and are kept whole when it is played slower */
  readonly played: Version;
  /** each step on its even place, at the attempt's own tempo */
  readonly even: Version | null;
  /** as played, only without the delay of the late crossings */
  readonly crossings: Version | null;
}

/** An extra note this near to a step is struck with it, seconds: there is no room to move one without the other. */
const TOGETHER_SEC = 0.06;

/** One step as it was struck. */
interface Struck {
  readonly beat: number;
  readonly step: number;
  /** mean onset of its keys */
  readonly timeSec: number;
  readonly firstSec: number;
  readonly lastSec: number;
  /** a note was struck again, or the player went back, on the way here */
  readonly anew: boolean;
}

/** Report → the ways to hear its recording. What was struck together moves together, so chords and hands stay as they were. */
export function versionsOf(report: Report, exercise: Exercise): Versions {
  const { struck, extrasSec } = strikes(report, exercise);
  const asPlayed = struck.map(({ timeSec }) => timeSec);
  const even = evenTimes(struck, report);
  const late = report.measures.crossings.filter((crossing) => crossing.late);
  const crossings = late.length === 0 ? null : withoutDelays(struck, late);
  const version = (heardSec: readonly number[]): Version => ({ attacks: moved(struck, extrasSec, heardSec) });
  return {
    played: version(asPlayed),
    even: even === null ? null : version(even),
    crossings: crossings === null ? null : version(crossings),
  };
}

/** Steps that follow each other without a note struck again or a way back; a stop does not part them. */
function evenTimes(struck: readonly Struck[], report: Report): readonly number[] | null {
  const tempo = report.measures.tempoBpm;
  if (!('value' in tempo) || struck.length < 3) return null;
  const secPerBeat = 60 / tempo.value;
  const heard: number[] = [];
  struck.forEach((strike, index) => {
    const before = struck[index - 1];
    if (before === undefined) heard.push(strike.timeSec);
    else if (strike.anew) heard.push(heard[index - 1]! + strike.timeSec - before.timeSec);
    else heard.push(heard[index - 1]! + (strike.beat - before.beat) * secPerBeat);
  });
  return heard;
}

/** Everything from a late crossing on comes earlier by its delay; with both hands late at once, by the longer. */
function withoutDelays(struck: readonly Struck[], late: Report['measures']['crossings']): readonly number[] {
  let earlierSec = 0;
  return struck.map(({ step, timeSec, anew }) => {
    const delays = late.filter((crossing) => crossing.step === step).map(({ delayMs }) => delayMs);
    if (!anew) earlierSec += Math.max(0, ...delays) / 1000;
    return timeSec - earlierSec;
  });
}

/** Steps and the extra notes between them → attacks, with `heardSec` the new mean onset of each step. */
function moved(
  struck: readonly Struck[],
  extrasSec: readonly number[],
  heardSec: readonly number[],
): readonly Attack[] {
  const steps = struck.map(({ firstSec, lastSec, timeSec }, index) => ({
    fromSec: firstSec,
    lastSec,
    toSec: firstSec + heardSec[index]! - timeSec,
  }));
  const { toHeard } = timeMap(steps);
  const extras = extrasSec.map((fromSec) => ({ fromSec, lastSec: fromSec, toSec: toHeard(fromSec) }));
  return [...steps, ...extras].sort((a, b) => a.fromSec - b.fromSec);
}

function strikes(
  report: Report,
  exercise: Exercise,
): { readonly struck: readonly Struck[]; readonly extrasSec: readonly number[] } {
  const bySteps = new Map<number, ReportedNote[]>();
  for (const note of report.notes)
    if (note.verdict !== 'extra' && note.step !== null)
      bySteps.set(note.step, [...(bySteps.get(note.step) ?? []), note]);
  const extras = report.notes.filter((note) => note.verdict === 'extra');
  const back = extras.filter(({ extraKind }) => extraKind === 'repeat' || extraKind === 'restart');
  const steps = [...bySteps]
    .map(([step, notes]) => {
      const times = notes.map((note) => note.timeSec);
      return {
        step,
        beat: exercise.steps[step]?.beat ?? step,
        timeSec: times.reduce((sum, time) => sum + time, 0) / times.length,
        times,
      };
    })
    .sort((a, b) => a.timeSec - b.timeSec);
  const struck = steps.map(({ times, ...strike }, index): Struck => {
    const before = steps[index - 1];
    const near = extras
      .map((note) => note.timeSec)
      .filter((sec) => times.some((time) => Math.abs(time - sec) < TOGETHER_SEC));
    return {
      ...strike,
      firstSec: Math.min(...times, ...near),
      lastSec: Math.max(...times, ...near),
      anew:
        before !== undefined &&
        (before.step >= strike.step ||
          back.some(({ timeSec }) => timeSec > before.timeSec && timeSec < strike.timeSec)),
    };
  });
  const extrasSec = extras
    .map((note) => note.timeSec)
    .filter((sec) => !struck.some(({ firstSec, lastSec }) => sec >= firstSec && sec <= lastSec));
  return { struck, extrasSec };
}
