import type { ExerciseChoice, Hand, Hands, Intention, Touch } from '../exercise/index.ts';

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
  /** how uneven the loudness was, dB, against the levels of this piano's own keys; absent: they were not known, or it could not be had */
  readonly loudnessDb?: Uncertain;
  /** overlap (+) or gap (−) from key to key, ms; absent: it was not heard */
  readonly overlapMs?: Uncertain;
  /** the row of the table of situations that gave the verdict */
  readonly situation: string;
  /** what of it was to be practised, and whether that was done; absent: all of it, or an attempt kept by version 0.1 */
  readonly practised?: { readonly intention: Intention; readonly done: boolean };
}

/** A figure with its ±. */
export interface Uncertain {
  readonly value: number;
  readonly plusMinus: number;
}

/** A summary and when its attempt was played, ms since 1970. */
export interface Practised {
  readonly whenMs: number;
  /** the day of the calendar there, counted from 1970; absent: by UTC */
  readonly day?: number;
  readonly summary: AttemptSummary;
}

/** Something that keeps an attempt from the criterion. `narrow`: only just missed. */
export type Shortfall = { readonly narrow: boolean } & (
  | { readonly kind: 'notes'; readonly wrong: number; readonly missed: number; readonly extra: number }
  | { readonly kind: 'unsure'; readonly count: number; readonly of: number }
  | { readonly kind: 'crossings'; readonly count: number; readonly worstMs: number }
  | { readonly kind: 'evenness'; readonly percent: number; readonly bound: number }
  | { readonly kind: 'chords' | 'hands'; readonly ms: number; readonly bound: number }
  /** the figure could not be had */
  | { readonly kind: 'evenness-unknown' | 'tempo-unknown' }
  | { readonly kind: 'tempo'; readonly bpm: number; readonly targetBpm: number }
  | { readonly kind: 'touch'; readonly meant: Touch; readonly gapMs: number }
  | { readonly kind: 'loudness'; readonly db: number; readonly bound: number }
);

/** 'new': not played yet, or nothing of it could be measured. */
export type Level = 'new' | 'not-yet' | 'nearly' | 'ready';

/** Where one exercise of one hand (or both) stands, and why. */
export interface Standing {
  readonly exercise: ExerciseChoice;
  readonly level: Level;
  /** what kept the last attempt from the criterion, in the order in which a teacher would speak of it */
  readonly shortfalls: readonly Shortfall[];
  readonly attempts: number;
  /** attempts at the criterion without a break, the last one counted first */
  readonly inARow: number;
  /** so often among those it was returned to after half a week and more */
  readonly returns: number;
  /** on so many days of the calendar were those played */
  readonly days: number;
  /** so many in a row, on so many days, make it ready */
  readonly wanted: number;
  readonly wantedDays: number;
  /** of the last attempt; null: never */
  readonly lastMs: number | null;
  /** the tempo aimed at last, beats a minute */
  readonly targetBpm: number | null;
  /** the least tempo by which it is judged, beats a minute; null: any will do */
  readonly leastBpm: number | null;
  /** ready at that: what is asked of it next, beats a minute; null: nothing faster, or it is not ready */
  readonly nextBpm: number | null;
  /** the first try of each of the last days on which it was played: how many, and how many of them were at the criterion */
  readonly cold: { readonly days: number; readonly right: number };
  /** of hands together that would be ready: hands that were never ready alone */
  readonly waitsFor: readonly Hand[];
}

/** Something that may be begun now, since something else is ready. */
export interface Offer {
  readonly kind: 'other-hand' | 'together' | 'next-form' | 'next-key' | 'more-octaves' | 'faster';
  readonly exercise: ExerciseChoice;
  readonly targetBpm: number | null;
  /** what is ready; of hands together one of the hands */
  readonly since: ExerciseChoice;
}

/** Hand by hand where one form of one key stands, the variants (octaves, minor scales) played last. */
export interface FormStandings {
  readonly key: string;
  readonly form: ExerciseChoice['form'];
  readonly byHands: Readonly<Record<Hands, Standing>>;
}

/** An exercise that a teacher asks for, and what is asked of it. */
export interface AssignedExercise {
  readonly exercise: ExerciseChoice;
  /** beats a minute; null: any tempo will do */
  readonly targetBpm: number | null;
  /** attempts in a row at the criterion; null: as usual */
  readonly inARow: number | null;
  /** evenness at most, per cent; null: as usual */
  readonly evennessPercent: number | null;
  /** how it is to be practised, by which it is judged; absent: as it is written */
  readonly intention?: Intention;
  /** what the teacher says with it, '' for nothing */
  readonly note: string;
  /** attempts from then on count, ms since 1970 */
  readonly sinceMs: number;
}

/** How far an assigned exercise is. */
export interface Assignment {
  readonly asked: AssignedExercise;
  /** of the attempts since it was asked for, judged by what is asked */
  readonly standing: Standing;
  /** when it was first met, ms since 1970; null: it is still to be done */
  readonly metMs: number | null;
}

/** Why something is in the plan of a day. */
export type PlanReason =
  /** a teacher asked for it */
  | { readonly kind: 'assigned'; readonly assignment: Assignment }
  | { readonly kind: 'weak'; readonly standing: Standing }
  | { readonly kind: 'long-ago'; readonly days: number }
  /** ready, and played not long ago */
  | { readonly kind: 'upkeep' }
  | { readonly kind: 'offer'; readonly offer: Offer }
  /** the hands go together already, and this hand alone is not ready */
  | { readonly kind: 'hand-first' }
  /** there is time left: another form of the key in work, each hand alone */
  | { readonly kind: 'beside' }
  /** nothing was played yet */
  | { readonly kind: 'first' };

/** One item of a plan. */
export interface PlanItem {
  readonly exercise: ExerciseChoice;
  /** how it is to be practised, as a teacher asks; absent: as it is written */
  readonly intention?: Intention;
  readonly targetBpm: number | null;
  /** whole minutes */
  readonly minutes: number;
  /** minutes of rest after it; 0: none */
  readonly restMinutes: number;
  readonly reason: PlanReason;
}
