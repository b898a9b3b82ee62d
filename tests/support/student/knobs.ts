import type { Mistake } from './mistakes.ts';

/** How a student plays: every knob of the performance. Times in seconds or ms as named; chances are per expected note. */
export interface StudentKnobs {
  /** beats a minute; what a beat holds, the exercise says */
  readonly bpm: number;
  /** standard deviation of each onset about its place, ms */
  readonly jitterMs: number;
  /** change of the interval from first to last, per cent (+: slows down) */
  readonly driftPercent: number;
  /** each crossing of these kinds and directions comes so late, and all after it too */
  readonly lateCrossing: {
    readonly ms: number;
    readonly kind?: 'thumb-under' | 'over-thumb';
    readonly direction?: 'up' | 'down';
  } | null;
  /** last onset − first onset of a chord within one hand, ms; order by chance */
  readonly chordSpreadMs: number;
  /** left before right (+) with this mean and standard deviation, ms */
  readonly handsApartMs: { readonly mean: number; readonly sd: number };
  /** a key is held past the next onset of its hand (+: legato) or let go before it (−: detached), ms */
  readonly overlapMs: number;
  /** velocity of a middling note, 1..127; a step of velocity is 0.26 dB */
  readonly velocity: number;
  readonly loudnessJitterDb: number;
  /** first and last notes against the middle, dB */
  readonly endsDb: number;
  readonly thumbDb: number;
  /** all but the lowest and highest note of a chord, dB */
  readonly innerDb: number;
  readonly leftHandDb: number;
  readonly octaveShift: number;
  /** how many of each, at places drawn by chance; or exactly these */
  readonly mistakes: MistakeCounts | readonly Mistake[];
  /** broken off after this share of the steps; null: played to the end */
  readonly stopAfter: number | null;
  readonly pedal: 'none' | 'held';
  /** silence before the first and after the last note */
  readonly leadInSec: number;
  readonly leadOutSec: number;
}

/** How many of each, at places drawn by chance, never two in neighbouring steps. */
export interface MistakeCounts {
  /** another key in place of the right one, mostly a semitone or a whole tone away */
  readonly wrong: number;
  readonly missed: number;
  /** a neighbouring key caught with the right one */
  readonly slips: number;
  /** the same key struck again before going on */
  readonly repeats: number;
  /** a stop, and back by a few steps */
  readonly restarts: number;
}

export const NO_MISTAKES: MistakeCounts = { wrong: 0, missed: 0, slips: 0, repeats: 0, restarts: 0 };

/** A tidy student: 10 ms of jitter, just legato, no mistakes. */
export const STUDENT_DEFAULTS: StudentKnobs = {
  bpm: 80,
  jitterMs: 10,
  driftPercent: 0,
  lateCrossing: null,
  chordSpreadMs: 12,
  handsApartMs: { mean: 0, sd: 8 },
  overlapMs: 10,
  velocity: 70,
  loudnessJitterDb: 1,
  endsDb: 0,
  thumbDb: 0,
  innerDb: 0,
  leftHandDb: 0,
  octaveShift: 0,
  mistakes: NO_MISTAKES,
  stopAfter: null,
  pedal: 'none',
  leadInSec: 0.6,
  leadOutSec: 1.2,
};
