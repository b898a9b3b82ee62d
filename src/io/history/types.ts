import type { StorageUse } from '../database/index.ts';
import type {
  AttemptSummary,
  AudioInput,
  ExerciseChoice,
  Intention,
  KeptNotice,
  Notice,
  Report,
} from '../../engine/index.ts';
import type { Trouble } from '../troubles/index.ts';

/** What is known of an attempt before it is analysed. */
export interface NewAttempt {
  /** as it is called since it began, a name of `nameFor`; left out: it gets one of this moment */
  readonly id?: string;
  readonly sound: AudioInput;
  /** as it is called on the page, e.g. "your recording" */
  readonly name: string;
  /** what was left out or changed on the way to the page */
  readonly remarks: readonly KeptNotice[];
  /** what the microphone calls itself; null: not known */
  readonly device: string | null;
  /** as chosen; null: it is to be recognised */
  readonly choice: ExerciseChoice | null;
  /** the tempo aimed at, beats a minute; null: none */
  readonly targetBpm: number | null;
  /** what of it was to be practised; null, or left out by version 0.1: nothing was said */
  readonly intention?: Intention | null;
}

/** One attempt in the journal, without its sound and its whole report: small, since all of them are read at once. */
export interface Entry {
  /** begins with its time, so that order of names is order of time */
  readonly id: string;
  /** when it was played, ms since 1970 */
  readonly whenMs: number;
  /** unanalysed: stored, and the analysis never came to its end; no-report: nothing to report was heard */
  readonly state: 'unanalysed' | 'told' | 'no-report';
  readonly name: string;
  readonly remarks: readonly KeptNotice[];
  readonly device: string | null;
  readonly choice: ExerciseChoice | null;
  readonly targetBpm: number | null;
  /** what of it was to be practised; absent: nothing was said */
  readonly intention?: Intention;
  readonly durationSec: number;
  /** size of the stored sound; 0: none is kept */
  readonly soundBytes: number;
  /** why there is no report, '' where there is one or none was tried */
  readonly reason: KeptNotice;
  /** only of state "told" */
  readonly summary: AttemptSummary | null;
  /** when it was deleted, ms since 1970; null: it is not. Deleted attempts can be brought back for a week */
  readonly deletedMs: number | null;
}

/** What came of listening to an attempt. */
export type Outcome = { readonly report: Report } | { readonly reason: Notice };

/** What became of the attempts in a file. */
export interface ImportOutcome {
  readonly added: number;
  /** were here already, the same */
  readonly same: number;
  /** were here already, but otherwise: both are kept */
  readonly both: number;
  /** why some were not taken over */
  readonly refused: readonly Trouble[];
  /** passages of one's own in it; whether they are any, whoever takes them looks; left out: there are none */
  readonly passages?: readonly unknown[];
}

/** Small things that are remembered besides attempts, as JSON. */
export type Remembered = Readonly<Record<string, unknown>>;

/**
 * The journal on this device. All that it promises rejects with StorageError, whose message is plain and says the way out.
 */
export interface History {
  /** Stores an attempt, state "unanalysed"; its entry. One of a name that is here already, deleted or not, stays as it is. */
  keep(attempt: NewAttempt): Promise<Entry>;
  /** Stores what came of it; the entry as it is now, null where there is none of that name. */
  complete(id: string, outcome: Outcome): Promise<Entry | null>;
  /** All entries, deleted ones too, oldest first. */
  entries(): Promise<readonly Entry[]>;
  /** Reports by name, in that order; those that are not there are left out. */
  reports(ids: readonly string[]): Promise<readonly Report[]>;
  sound(id: string): Promise<AudioInput | null>;
  /** Deletes so that it can be undone. */
  remove(ids: readonly string[]): Promise<void>;
  restore(ids: readonly string[]): Promise<void>;
  /** Lets go of the sound of attempts; their reports stay. This cannot be undone. */
  forgetSound(ids: readonly string[]): Promise<void>;
  remembered(): Promise<Remembered>;
  remember(name: string, value: unknown): Promise<void>;
  storage(): Promise<StorageUse>;
  /** Asks the browser not to clear the journal by itself; whether it agreed. */
  persist(): Promise<boolean>;
  /** The whole journal (deleted attempts left out) as one file, a .tar.gz; passages of one's own go along. */
  exportAll(onProgress?: (share: number) => void, passages?: readonly ExerciseChoice[]): Promise<Blob>;
  /** Merges a file that `exportAll` wrote; nothing that is here is overwritten. */
  importFrom(file: Blob, onProgress?: (share: number) => void): Promise<ImportOutcome>;
  close(): Promise<void>;
}
