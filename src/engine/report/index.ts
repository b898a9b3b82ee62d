export type * from './types.ts';
import type { Heard } from '../listen/index.ts';
import type { Alignment } from '../match/index.ts';
import type { Report } from './types.ts';

export interface ReportOptions {
  /** the tempo aimed at, beats a minute; null: none */
  readonly targetBpm: number | null;
}
export const REPORT_DEFAULTS: ReportOptions = { targetBpm: null };

/** What was heard and how it answers the exercise → every figure and the words. */
export function writeReport(
  heard: Heard,
  alignment: Alignment,
  options: Partial<ReportOptions> = {},
): Report {
  throw new Error(alignment.exercise.title + heard.durationSec + String(options.targetBpm));
}
