import type { Exercise } from '../exercise/index.ts';
import type { ExtraKind } from '../match/index.ts';
import { usualBeatSec, waysOf } from './pace.ts';
import { isDetour, strikesOf, type Strike, type StruckNote } from './strikes.ts';

export { STOP_BEATS } from './pace.ts';
export { isDetour, strikesOf, unbrokenOf } from './strikes.ts';
export type { Strike, StruckNote, Unbroken } from './strikes.ts';

/** A strike and where it would have been. All seconds. */
export interface TimedStrike<N extends StruckNote = StruckNote> extends Strike<N> {
  /** in the recording: where it would have fallen in the pulse that is being played */
  readonly tickSec: number;
  /** how far it lies behind that pulse (−: before it); after a stop, all that the stop was too long */
  readonly lateSec: number;
  /** what of that the pulse has moved on by: time that was lost for good (−: gained) */
  readonly lostSec: number;
  /** made even: at one tempo, stops as long as a step */
  readonly evenSec: number;
}

/** An attempt in time. */
export interface Timeline<N extends StruckNote = StruckNote> {
  /** in order of time */
  readonly strikes: readonly TimedStrike<N>[];
  /** median seconds of a beat over the unbroken ways between steps; null of fewer than two strikes */
  readonly beatSec: number | null;
  /** the same of a step, as long as the steps of this exercise are on average */
  readonly stepSec: number | null;
  /**
   * Each step's even place in the recording, seconds: a struck one's tick, and where one that was not struck is to be thought.
   * Empty where nothing was struck.
   */
  readonly tickSec: ReadonlyMap<number, number>;
}

/**
 * The strikes of an attempt and its exercise → the attempt in time: when each step was struck, and where even playing would have
 * struck it. The only place where this is reckoned; picture, figures, command, print and "hear it even" all read it here.
 *
 * What a student should see decides: one late note stands beside its tick, and the others on theirs. So a tick says where a note
 * was due *in the pulse that was being played*, not on a ruler laid over the whole:
 *
 * 1. A note is due one usual interval after the pulse of the note before it. What is usual follows the tempo (`pace.ts`): in a
 *    steady ritardando every note is on its tick.
 * 2. The pulse moves on with the player: what a note is late is lost for good as far as the next note is late too (the nearer of
 *    both, if both lie to one side; else nothing). After a thumb that cost time the following notes stand on their ticks again;
 *    after one that was late alone, likewise, for the pulse has not moved. In terms of how far the notes have strayed from the
 *    pace, the pulse is their recursive median over three (Nodes & Gallagher 1982, memory): it keeps a step and drops a spike.
 * 3. After a stop, a note struck again or a way back the pulse begins anew with the note that follows; so it does where a note was
 *    only perhaps struck again, for then the time that went by is none of even playing.
 *
 * Made even, the ticks keep one distance a beat, the median; the time lost on the way is gone, and a stop becomes a step. A note
 * struck again or a way back takes the time that it took.
 *
 * Moved in time or played at another speed, all places move and stretch with the notes.
 */
export function layInTime<N extends StruckNote>(
  strikes: readonly Strike<N>[],
  exercise: Exercise,
): Timeline<N> {
  const beatSec = usualBeatSec(strikes);
  const ways = waysOf(strikes, exercise);
  const timed: TimedStrike<N>[] = [];
  const pulse: number[] = [];
  strikes.forEach((strike, at) => {
    const { timeSec } = strike;
    const way = ways[at - 1];
    const before = timed[at - 1];
    const put = (dueSec: number, tickSec: number, evenSec: number, pulseSec: number): void => {
      timed.push({ ...strike, tickSec, lateSec: timeSec - dueSec, lostSec: pulseSec - dueSec, evenSec });
      pulse.push(pulseSec);
    };
    if (before === undefined || way === undefined) return put(timeSec, timeSec, timeSec, timeSec);
    if (way.follows === 'anew') return put(timeSec, timeSec, before.evenSec + way.gapSec, timeSec);
    const evenSec = before.evenSec + way.beats * beatSec!;
    const dueSec = pulse[at - 1]! + way.beats * way.paceSec;
    if (way.follows === 'stopped') return put(dueSec, timeSec, evenSec, timeSec);
    const lateSec = timeSec - dueSec;
    const next = ways[at];
    const nextLateSec = next?.follows === 'on' ? lateSec + next.gapSec - next.beats * next.paceSec : lateSec;
    put(dueSec, dueSec, evenSec, dueSec + nearer(lateSec, nextLateSec));
  });
  const places = timed.map((strike, at) => ({
    ...strike,
    pulseSec: pulse[at]!,
    paceSec: ways[at]?.paceSec ?? beatSec ?? 1,
  }));
  const stepSec = beatSec === null ? null : beatSec * beatsPerStep(exercise);
  return { strikes: timed, beatSec, stepSec, tickSec: ticksOf(places, exercise) };
}

/** Beats from one step to the next, on average over the exercise. */
export function beatsPerStep({ steps }: Exercise): number {
  const last = steps.at(-1);
  return last === undefined || last.step === 0 ? 1 : last.beat / last.step;
}

/** What of a report's note its timeline goes by. */
export interface TimedNote {
  readonly timeSec: number;
  readonly step: number | null;
  readonly verdict: 'correct' | 'wrong' | 'extra';
  readonly extraKind?: ExtraKind;
}

/** What of a report its timeline goes by. */
export interface TimedReport<N extends TimedNote = TimedNote> {
  readonly notes: readonly N[];
  readonly perhapsAgainSec?: readonly number[];
}

/** A report → its timeline. */
export function timelineOf<N extends TimedNote>(
  { notes, perhapsAgainSec = [] }: TimedReport<N>,
  exercise: Exercise,
): Timeline<N & StruckNote> {
  const struck = notes.filter(
    (note): note is N & StruckNote => note.step !== null && note.verdict !== 'extra',
  );
  const detours = notes.filter(({ extraKind }) => extraKind !== undefined && isDetour(extraKind));
  const detoursSec = [...detours.map(({ timeSec }) => timeSec), ...perhapsAgainSec];
  return layInTime(strikesOf(struck, detoursSec, exercise), exercise);
}

/** Of two numbers of one sign the one nearer to 0; else 0. */
function nearer(a: number, b: number): number {
  if (a * b <= 0) return 0;
  return Math.abs(a) < Math.abs(b) ? a : b;
}

interface Place extends TimedStrike {
  /** where the pulse is that goes on from it */
  readonly pulseSec: number;
  /** seconds a beat from here on */
  readonly paceSec: number;
}

/** Ticks of all steps. One not struck was due in the pulse of the one before, or where that lies outside its neighbours, in proportion. */
function ticksOf(strikes: readonly Place[], exercise: Exercise): ReadonlyMap<number, number> {
  const bySteps = new Map(strikes.map((strike) => [strike.step, strike]));
  const inOrder = [...strikes].sort((a, b) => a.step - b.step);
  return new Map(
    exercise.steps.flatMap(({ step, beat }): [number, number][] => {
      const own = bySteps.get(step);
      if (own !== undefined) return [[step, own.tickSec]];
      const before = inOrder.findLast((strike) => strike.step < step);
      const after = inOrder.find((strike) => strike.step > step);
      if (before === undefined)
        return after === undefined ? [] : [[step, after.timeSec - (after.beat - beat) * after.paceSec]];
      const dueSec = before.pulseSec + (beat - before.beat) * before.paceSec;
      if (after === undefined) return [[step, Math.max(dueSec, before.timeSec)]];
      if (dueSec > before.timeSec && dueSec < after.timeSec) return [[step, dueSec]];
      const share = (beat - before.beat) / (after.beat - before.beat);
      return [[step, before.timeSec + share * (after.timeSec - before.timeSec)]];
    }),
  );
}
