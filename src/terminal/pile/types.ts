import type { Change, ExerciseChoice, HandsAlone, KeptNotice, Notice, Report } from '../../engine/index.ts';
import type { SortReply } from '../../io/sorting/messages.ts';
import type { Trouble } from '../../io/troubles/index.ts';
import type { FoundInFile, SortedFile } from '../../io/sorting/types.ts';

/** Where the bytes of a recording lie. */
export interface Source {
  readonly path: string;
  /** its name in the archive that lies there; null: the file itself */
  readonly member: string | null;
}

/** One recording of a pile. */
export interface Recording {
  readonly source: Source;
  /** as it is shown: its path below what was given */
  readonly name: string;
  /** '' where neither folder nor file name tells */
  readonly student: string;
  /** tuning of the piano that this student plays as a rule; null: not known */
  readonly pianosCents: readonly number[];
  /** by its name, else by the file's own time, ms since 1970; null: neither is known */
  readonly whenMs: number | null;
  /** what sorting it may hold, MB */
  readonly needsMb: number;
}

/** What became of a recording: no sound, so that many can be kept. */
export interface Sorted extends SortedFile<FoundInFile> {
  /** of two recordings with one print the bytes are the same */
  readonly print: string;
}

/** A recording that was sorted, or why it was not. */
export type Outcome = { readonly recording: Recording } & (
  { readonly sorted: Sorted } | { readonly problem: 'unreadable' | 'failed'; readonly trouble: Trouble }
);

/** An attempt of a student, or other playing in which no exercise is sure. */
export interface PileAttempt {
  readonly recording: Recording;
  readonly found: FoundInFile;
  /** what changed since the student's last attempt at the same exercise; null: it is the first here */
  readonly since: {
    readonly report: Report;
    readonly whenMs: number | null;
    readonly changes: readonly Change[];
  } | null;
}

/** One student's attempts, oldest first. */
export interface PileStudent {
  /** '' where it is not known */
  readonly name: string;
  readonly attempts: readonly PileAttempt[];
}

/** What a pile of recordings came to. */
export interface Pile {
  /** in order of their names, those without a name last */
  readonly students: readonly PileStudent[];
  /** recordings without any playing, and why */
  readonly silent: readonly { readonly recording: Recording; readonly reason: KeptNotice }[];
  /** recordings and archives that could not be read, whole or in part; the reason does not name them again */
  readonly unread: readonly { readonly name: string; readonly student: string; readonly reason: Trouble }[];
  /** recordings whose bytes are those of another, under whose name they are listed */
  readonly copies: readonly { readonly recording: Recording; readonly of: string }[];
  /** what is to be said of single recordings, e.g. that the rest was left out */
  readonly remarks: readonly { readonly recording: Recording; readonly remark: Notice }[];
}

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
