import type { AudioInput, FoundAttempt, Report, ReportOptions } from '../../engine/index.ts';

/** An attempt found in a file, with its own sound. */
export interface SortedAttempt extends Pick<FoundAttempt, 'startSec' | 'endSec' | 'recognition'> {
  /** null: no report, and why */
  readonly report: Report | null;
  readonly reason: string;
  /** the attempt alone, cut out of the recording, at the file's own rate: the one channel that was listened to */
  readonly sound: AudioInput;
}

/** What became of one file. */
export interface SortedFile {
  readonly durationSec: number;
  /** plain sentences on what could not be read or was left out */
  readonly remarks: readonly string[];
  /** in order of time; empty where nobody plays, and then why */
  readonly attempts: readonly SortedAttempt[];
  /** why there is no attempt in it; '' where there is one */
  readonly reason: string;
}

/** Decodes, splits, recognises and measures files beside the page, several at a time. */
export interface Sorters {
  /**
   * One file → its attempts. `onProgress` gets 0..1. Rejects with SortingError; one bad file never stops the others.
   */
  sort(
    file: Blob,
    name: string,
    options: Partial<ReportOptions>,
    onProgress?: (share: number) => void,
  ): Promise<SortedFile>;
  /** Calls off everything asked for so far, at once. */
  cancel(): void;
  close(): void;
}
