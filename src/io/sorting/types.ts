import type {
  AssessOptions,
  FoundAttempt,
  HandsAlone,
  KeptNotice,
  Notice,
  PianoProfile,
  Report,
  ReportOptions,
} from '../../engine/index.ts';
import type { SoundFile } from '../encode/index.ts';

/** An attempt found in a file, or other playing in it, whose `recognition` then has no choice. */
export interface FoundInFile extends Pick<FoundAttempt, 'startSec' | 'endSec' | 'recognition'> {
  /** null: no report, and why */
  readonly report: Report | null;
  readonly reason: KeptNotice;
  /** what an attempt of one hand taught about those of both; absent: nothing */
  readonly alone?: HandsAlone;
  /** … and of the piano: its tuning as it was read, levels of its keys, partials; absent: nothing */
  readonly taught?: PianoProfile;
}

/** The same with its own sound. */
export interface SortedAttempt extends FoundInFile {
  /** the attempt alone, cut out of the recording: the one channel that was listened to, WAV of 16 bits at the file's own rate */
  readonly sound: SoundFile;
}

/** What became of one file. */
export interface SortedFile<Attempt extends FoundInFile = SortedAttempt> {
  readonly durationSec: number;
  /** what could not be read or was left out */
  readonly remarks: readonly Notice[];
  /** in order of time; empty where nobody plays */
  readonly attempts: readonly Attempt[];
  /** why there is no attempt in it; '' where there is one */
  readonly reason: KeptNotice;
}

/**
 * How a report is written, what other recordings of the same piano taught of hands alone (`alone`) and of its keys (`piano`), its
 * tuning where somebody settled it (`pianoCents`) and that of others that are played (`elsewhereCents`), where each hand of this
 * player is known to have played (`handsPlayed`), and under which fingers (`fingerings`).
 */
export type SortOptions = ReportOptions &
  Pick<AssessOptions, 'alone' | 'handsPlayed' | 'pianoCents' | 'elsewhereCents' | 'fingerings' | 'own'>;

/** Decodes, splits, recognises and measures files beside the page, several at a time. */
export interface Sorters {
  /**
   * One file → its attempts. `onProgress` gets 0..1. Rejects with SortingError; one bad file never stops the others.
   */
  sort(
    file: Blob,
    name: string,
    options: Partial<SortOptions>,
    onProgress?: (share: number) => void,
  ): Promise<SortedFile>;
  /** Calls off everything asked for so far, at once. */
  cancel(): void;
  close(): void;
}
