import type { StorageUse } from '../database/index.ts';
import type {
  AttemptSummary,
  ExerciseChoice,
  HandsAlone,
  PianoProfile,
  Report,
  Shape,
  Words,
} from '../../engine/index.ts';
import type { Trouble } from '../troubles/index.ts';
import type { Correction, Remark, SoundFile } from '../review/types.ts';
import type { FILE, PLAYING, SETTLED, STUDENT, TEMPLATE } from './backup-check.ts';

/** A record that is kept: how often it was changed, so that of two of one name the later is known; absent: never. */
interface Kept {
  readonly version?: number;
}

/** A piano of which is known which keys were struck. */
export type SettledPiano = Shape<typeof SETTLED>;

/** What may be brought back until it is ended. */
interface Deletable {
  /** when it was deleted, ms since 1970; null: it is not */
  readonly deletedMs: number | null;
}

/** Somebody whose recordings lie here. */
export interface Student extends Shape<typeof STUDENT>, Kept, Deletable {}

/** A recording that was handed in. */
export interface GivenFile extends Omit<Shape<typeof FILE>, 'reason'>, Kept, Deletable {
  /** why it failed or was refused, '' where it did not; version 0.1 kept an English sentence */
  readonly reason: Trouble | string;
  /** the recording as it came is still here, to be heard; absent: it is not */
  readonly whole?: boolean;
}

/** One stretch of playing that was found, small enough to keep thousands of them at hand. */
export interface Playing extends Shape<typeof PLAYING>, Kept, Deletable {
  /** of the report that counts: as chosen, else as recognised; null: there is none */
  readonly summary: AttemptSummary | null;
  /** ± of its evenness, per cent; null: not known */
  readonly evennessPlusMinus: number | null;
  /** of that report, as it was told when it was measured; what lists of version 0.1 have */
  readonly verdict: string;
  /** the same as it is told in any language; null: there is no report, absent in lists of version 0.1 */
  readonly words?: Words | null;
  /** how many remarks and corrections it has */
  readonly remarks: number;
  readonly soundBytes: number;
}

/** Both reports of one attempt, and what it taught. */
export interface Reports {
  /** as the tool recognised it; null: it could not */
  readonly own: Report | null;
  /** as the exercise that the teacher chose; null: none was */
  readonly chosen: Report | null;
  /** what an attempt of one hand taught about those of both; absent: nothing */
  readonly alone?: HandsAlone;
  /** … and of the piano; absent: nothing */
  readonly taught?: PianoProfile;
}

/** What a teacher says of one attempt. */
export interface Said {
  readonly remarks: readonly Remark[];
  readonly corrections: readonly Correction[];
  /** played by the teacher, as an example; absent or null: nothing */
  readonly example?: Example | null;
}

/** What a teacher played as an example, heard as an attempt is. */
export interface Example {
  readonly report: Report;
  /** as it travels: small */
  readonly sound: SoundFile;
  readonly madeMs: number;
}

/** An attempt as it is put in. */
export interface NewPlaying {
  readonly playing: Playing;
  readonly reports: Reports;
  /** WAV of 16 bits, or as the student sent it; null: without */
  readonly sound: SoundFile | null;
}

/** All that lies here, without sounds and reports. */
export interface Desktop {
  readonly students: readonly Student[];
  readonly files: readonly GivenFile[];
  readonly playings: readonly Playing[];
}

/** Own words, or exercises, that the teacher uses again. */
export interface Template extends Shape<typeof TEMPLATE>, Kept {}

/** What is changed of a record: some of its fields, told from how it stands when they are. */
export interface FieldChange<Record> {
  readonly id: string;
  readonly fields: (now: Record) => Partial<Record>;
}

/** Names of what was changed or ended in another window. */
export interface Changed {
  readonly students: readonly string[];
  readonly files: readonly string[];
  readonly playings: readonly string[];
  /** absent: none */
  readonly templates?: readonly string[];
}

/** What a backup brought. */
export interface BackupOutcome {
  /** students, recordings and attempts that were not here */
  readonly students: number;
  readonly files: number;
  readonly attempts: number;
  /** attempts that were here already; what was said of them there and not here stands with it now */
  readonly known: number;
  /** parts that could not be read */
  readonly refused: number;
  readonly changed: Changed;
  /** passages of the teacher's own in it; whether they are any, whoever takes them looks; left out: there are none */
  readonly passages?: readonly unknown[];
}

/** A recording to be put in. */
export interface Given {
  readonly path: string;
  readonly blob: Blob;
  readonly writtenMs: number | null;
}

/** Recordings of students on the teacher's device. Everything rejects with StorageError, whose message is plain. */
export interface TeachingStore {
  /** A name that sorts by its time. */
  newId(): string;
  /** Everything that is not deleted; what was deleted before is ended for good by this, unless another window is open that may bring it back. */
  load(): Promise<Desktop>;
  addFile(file: GivenFile, blob: Blob): Promise<void>;
  /** A recording as it came; null: it is not there any more. */
  blob(fileId: string): Promise<Blob | null>;
  /** Puts in what was found in a file, and lets go of the file itself unless it is to be kept `whole`. False: another window has done so already. */
  finish(file: GivenFile, found: readonly NewPlaying[]): Promise<boolean>;
  templates(): Promise<readonly Template[]>;
  addTemplates(templates: readonly Template[]): Promise<void>;
  changeTemplates(changes: readonly FieldChange<Template>[]): Promise<readonly Template[]>;
  addFiles(files: readonly GivenFile[]): Promise<void>;
  addStudents(students: readonly Student[]): Promise<void>;
  /**
   * Changes records field by field, as they stand here now: another window may have changed others of their fields. What they are
   * after that; one that is not there is left out.
   */
  changeStudents(changes: readonly FieldChange<Student>[]): Promise<readonly Student[]>;
  changeFiles(changes: readonly FieldChange<GivenFile>[]): Promise<readonly GivenFile[]>;
  changePlayings(changes: readonly FieldChange<Playing>[]): Promise<readonly Playing[]>;
  /** Records of these names, as far as they are there. */
  records(names: Changed): Promise<Desktop>;
  /** Calls whenever another window has changed something. */
  onChanged(call: (changed: Changed) => void): void;
  /** Lets go of recordings as they came; what was found in them stays. */
  letGo(fileIds: readonly string[]): Promise<void>;
  /** Attempts without a file of their own, as a student sent them. */
  addPlayings(found: readonly NewPlaying[]): Promise<void>;
  reports(id: string): Promise<Reports>;
  putReports(id: string, reports: Reports): Promise<void>;
  sound(id: string): Promise<SoundFile | null>;
  said(id: string): Promise<Said>;
  /**
   * Changes what was said, as it stands here now: another window may have said something since this one looked. What it is after
   * that.
   */
  changeSaid(id: string, change: (said: Said) => Said): Promise<Said>;
  /** Ends files, attempts and students for good, with sounds, reports and remarks. */
  end(what: {
    readonly students?: readonly string[];
    readonly files?: readonly string[];
    readonly playings?: readonly string[];
    readonly templates?: readonly string[];
  }): Promise<void>;
  /** All that is kept here → one file, with passages of the teacher's own; longer recordings as they came stay behind. */
  backup(onProgress?: (share: number) => void, passages?: readonly ExerciseChoice[]): Promise<Blob>;
  /** Puts in what of a backup is not here yet; nothing that is here is overwritten. */
  bringIn(file: Blob, onProgress?: (share: number) => void): Promise<BackupOutcome>;
  /** Asks the browser to keep all this until somebody deletes it; whether it promised. */
  persist(): Promise<boolean>;
  room(): Promise<StorageUse>;
  close(): Promise<void>;
}
