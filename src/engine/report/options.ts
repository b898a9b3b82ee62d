import { ENGLISH } from '../exercise/index.ts';
import type { Locale } from '../exercise/index.ts';
import type { PianoProfile } from '../listen/index.ts';
import { DEFAULT_CRITERIA } from './criteria/index.ts';
import type { Criteria } from './criteria/index.ts';
import type { Report } from './types.ts';

/** What a report may be told besides what was heard. */
export interface ReportOptions {
  /** the tempo aimed at, beats a minute; null: none */
  readonly targetBpm: number | null;
  /** earlier reports of the same player, oldest first; those of other exercises are passed over */
  readonly earlier: readonly Report[];
  /** so many of the last of them were played in this sitting; 0: not known */
  readonly sitting: number;
  /** so many days of the calendar before this attempt each of `earlier` was played, in its order; empty: not known */
  readonly daysBefore: readonly number[];
  /** so much of the attempt's sound was lost on the way, as a device tells that was busy; 0: none */
  readonly soundLostSec: number;
  /** where a trouble begins; a teacher can change it */
  readonly criteria: Criteria;
  /** the pedal was held throughout, as its sound tells */
  readonly pedalHeld: boolean;
  /** the language and the note names of the words; everything else of the report is the same in all */
  readonly locale: Locale;
  /** this piano's keys as they sound at this place, learnt from other attempts; null: not known */
  readonly piano: PianoProfile | null;
}

export const REPORT_DEFAULTS: ReportOptions = {
  targetBpm: null,
  earlier: [],
  sitting: 0,
  daysBefore: [],
  soundLostSec: 0,
  pedalHeld: false,
  criteria: DEFAULT_CRITERIA,
  locale: ENGLISH,
  piano: null,
};
