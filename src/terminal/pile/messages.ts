import type { ExerciseChoice, HandsAlone } from '../../engine/index.ts';
import type { SortReply } from '../../io/sorting/messages.ts';
import type { Sorted, Source } from './types.ts';

/** The word with which the command starts itself as a helper. */
export const HELPER = '--helper';

/** What the command asks of one of its helpers. */
export interface PileRequest {
  readonly source: Source;
  /** for messages */
  readonly name: string;
  readonly targetBpm: number | null;
  /** variation of time that is even at seven notes a second, %; null: as by default */
  readonly evennessPercent: number | null;
  /** what other recordings taught of hands alone */
  readonly alone: HandsAlone | null;
  /** tuning of the student's piano; null: not known */
  readonly pianosCents: readonly number[];
  /** passages of one's own that it may be, besides the set */
  readonly own: readonly ExerciseChoice[];
  readonly kept: KeptPlace;
}

/** Where results are kept, and which of them are of use. */
export interface KeptPlace {
  readonly folder: string;
  /** of this program: another one's results are not of use */
  readonly version: string;
  /** do all anew, whatever is kept */
  readonly fresh: boolean;
}

export type PileReply = SortReply<Sorted>;
