import type { ExerciseChoice, Hands } from '../exercise/index.ts';

/** What one report says about readiness, small enough to keep thousands of them at hand. Figures are null where they could not be had. */
export interface AttemptSummary {
  readonly exercise: ExerciseChoice;
  /** the tempo aimed at, beats a minute; null: none */
  readonly targetBpm: number | null;
  /** notes written, and what became of them; the rest was right */
  readonly expected: number;
  readonly wrong: number;
  readonly missed: number;
  readonly extra: number;
  readonly unsure: number;
  readonly evennessPercent: number | null;
  readonly tempoBpm: number | null;
  /** crossings that the report calls late, and by how much the worst one came late, ms (negative: early) */
  readonly lateCrossings: number;
  readonly worstCrossingMs: number | null;
  readonly chordSpreadMs: number | null;
  /** median distance of the hands, ms, without its sign */
  readonly handsApartMs: number | null;
  /** the row of the table of situations that gave the verdict */
  readonly situation: string;
}

/** A summary and when its attempt was played, ms since 1970. */
export interface Practised {
  readonly whenMs: number;
  readonly summary: AttemptSummary;
}

/** Something that keeps an attempt from the criterion. */
export interface Shortfall {
  readonly kind: 'notes' | 'unsure' | 'evenness' | 'crossings' | 'chords' | 'hands' | 'tempo';
  /** as a clause, e.g. "the time from note to note varied by 9.4 %, and up to 8 % counts as even" */
  readonly says: string;
  /** only just missed */
  readonly narrow: boolean;
}

/** 'new': not played yet, or nothing of it could be measured. */
export type Level = 'new' | 'not-yet' | 'nearly' | 'ready';

/** Where one exercise of one hand (or both) stands. */
export interface Standing {
  readonly exercise: ExerciseChoice;
  readonly level: Level;
  /** one sentence on why */
  readonly reason: string;
  /** one sentence on what is still missing, '' when it is ready */
  readonly missing: string;
  readonly attempts: number;
  /** attempts at the criterion without a break, the last one counted first */
  readonly inARow: number;
  /** of the last attempt; null: never */
  readonly lastMs: number | null;
  /** the tempo aimed at last, beats a minute */
  readonly targetBpm: number | null;
}

/** Something that may be begun now, since something else is ready. */
export interface Offer {
  readonly kind: 'other-hand' | 'together' | 'next-key';
  readonly exercise: ExerciseChoice;
  readonly targetBpm: number | null;
  /** one sentence on why it is offered */
  readonly reason: string;
}

/** Hand by hand where one form of one key stands, the variants (octaves, minor scales) played last. */
export interface Place {
  readonly key: string;
  readonly form: ExerciseChoice['form'];
  readonly byHands: Readonly<Record<Hands, Standing>>;
}

/** One item of a plan. */
export interface PlanItem {
  readonly exercise: ExerciseChoice;
  readonly targetBpm: number | null;
  /** whole minutes */
  readonly minutes: number;
  readonly why: 'weak' | 'long-ago' | 'new';
  /** one sentence */
  readonly reason: string;
}
