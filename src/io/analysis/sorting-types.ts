import type { AudioInput, FoundAttempt, Report, ReportOptions } from '../../engine/index.ts';

/** An attempt found in a file, with its own sound. */
export interface SortedAttempt extends Pick<FoundAttempt, 'startSec' | 'endSec' | 'recognition'> {
  /** null: no report, and why */
  readonly report: Report | null;
  readonly reason: string;
  /** the attempt alone, cut out of the recording, at the file's own rate; one channel where both are alike */
  readonly sound: AudioInput;
}

/** What became of one file. */
export interface SortedFile {
  readonly durationSec: number;
  /** plain sentences on what could not be read or was left out */
  readonly remarks: readonly string[];
  readonly attempts: readonly SortedAttempt[];
}

/** Decodes, splits, recognises and measures files beside the page, several at a time. */
export interface Sorters {
  /**
   * One file → its attempts. `onProgress` gets 0..1. Rejects with DecodeError for a file that cannot be read, AnalysisError
   * where it was called off or the engine failed; one bad file never stops the others.
   */
  sort(
    file: Blob,
    name: string,
    options: Partial<ReportOptions>,
    onProgress?: (share: number) => void,
  ): Promise<SortedFile>;
  /** Calls off everything asked for so far. */
  cancel(): void;
  close(): void;
}
