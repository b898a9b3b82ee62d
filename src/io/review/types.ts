import type { AudioInput, ExerciseChoice, Report } from '../../engine/index.ts';
import type { SoundFile } from '../encode/index.ts';

export type { SoundFile };

/** Where a remark is pinned. Steps are those of the attempt's report, from 0. */
export type Place =
  | { readonly kind: 'attempt' }
  /** one note struck, missed or unsure; `timeSec` on the attempt's clock, null for what did not sound */
  | {
      readonly kind: 'note';
      readonly step: number | null;
      readonly midi: number;
      readonly timeSec: number | null;
    }
  | { readonly kind: 'stretch'; readonly fromStep: number; readonly toStep: number };

/** Something a teacher says about a place, typed or spoken (at least one of both). */
export interface Remark {
  readonly id: string;
  readonly place: Place;
  /** plain text, '' where only spoken */
  readonly text: string;
  /** the spoken remark, compressed; null: none */
  readonly voice: SoundFile | null;
}

/** What a teacher holds against a verdict of the tool. It stands beside the tool's own, never over it. */
export interface Correction {
  /** the note that it is about, as in `Place`; 'attempt': the verdict in words */
  readonly place: Place;
  /** what the teacher says of it */
  readonly verdict: 'correct' | 'wrong' | 'missed' | 'not-played' | 'mistaken';
  readonly why: string;
}

/** An exercise to practise, and what is asked of it. */
export interface Assigned {
  readonly exercise: ExerciseChoice;
  /** beats a minute; null: none */
  readonly targetBpm: number | null;
  /** attempts in a row that are to meet the criteria; null: as usual */
  readonly inARow: number | null;
  /** evenness at most, per cent; null: as usual */
  readonly evennessPercent: number | null;
  readonly note: string;
}

/** One attempt that travels. */
export interface SentAttempt {
  readonly id: string;
  /** when it was played, ms since 1970; null: not known */
  readonly whenMs: number | null;
  /** of the recording, as the student or the file calls it */
  readonly name: string;
  readonly report: Report;
  /** what the tool took it for, where the teacher chose another exercise; null: the same */
  readonly recognisedAs: ExerciseChoice | null;
  /** null: it travels without */
  readonly sound: SoundFile | null;
  readonly remarks: readonly Remark[];
  readonly corrections: readonly Correction[];
}

/** A review from a teacher, or attempts from a student to a teacher: one kind of file. */
export interface Review {
  readonly kind: 'review' | 'attempts';
  readonly id: string;
  readonly madeMs: number;
  /** as they call themselves; '' where it is not said */
  readonly student: string;
  readonly teacher: string;
  /** about all of it, plain text */
  readonly words: string;
  readonly attempts: readonly SentAttempt[];
  readonly assignment: readonly Assigned[];
}

/** Sound as the page plays it, for the files that hold it. */
export type Decode = (bytes: ArrayBuffer, name: string) => Promise<AudioInput>;
