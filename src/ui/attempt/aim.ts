import type { ExerciseChoice, Intention, ReportOptions } from '../../engine/index.ts';

/** What an attempt was meant to be, as chosen before it. */
export interface Aim {
  /** null: it is to be recognised */
  readonly choice: ExerciseChoice | null;
  /** beats a minute; null: none */
  readonly targetBpm: number | null;
  /** what of it was to be practised; null, or left out by version 0.1: all of it, once */
  readonly intention?: Intention | null;
}

/** What a new report looks back on. */
export type Past = Pick<ReportOptions, 'earlier' | 'sitting' | 'daysBefore'>;
