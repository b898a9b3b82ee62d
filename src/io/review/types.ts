import type { AudioInput, Report, Shape } from '../../engine/index.ts';
import type { SoundFile } from '../encode/index.ts';
import type { ASSIGNED, CORRECTION, Manifest, PLACE } from './manifest.ts';

export type { SoundFile };

/** Where a remark is pinned. Steps are those of the attempt's report, from 0; `timeSec` is on the attempt's clock. */
export type RemarkPlace = Shape<typeof PLACE>;
/** What a teacher holds against a verdict of the tool. */
export type Correction = Shape<typeof CORRECTION>;
/** An exercise to practise, and what is asked of it. */
export type Assigned = Shape<typeof ASSIGNED>;

type FiledAttempt = Manifest['attempts'][number];
type FiledRemark = FiledAttempt['remarks'][number];

/** Something a teacher says about a place, typed or spoken: as in the manifest, with the sound itself (null: none). */
export type Remark = Omit<FiledRemark, 'voice'> & { readonly voice: SoundFile | null };

/** One attempt that travels: as in the manifest, with its report, its sound (null: without) and its remarks. */
export type SentAttempt = Omit<FiledAttempt, 'report' | 'sound' | 'remarks'> & {
  readonly report: Report;
  readonly sound: SoundFile | null;
  readonly remarks: readonly Remark[];
};

/** A review from a teacher, or attempts from a student to a teacher: one kind of file. */
export type Review = Omit<Manifest, 'format' | 'version' | 'attempts'> & {
  readonly attempts: readonly SentAttempt[];
};

/** Sound as the page plays it, for the files that hold it. */
export type Decode = (bytes: ArrayBuffer, name: string) => Promise<AudioInput>;

/** Attempts of a review that are the student's own, in their order, each with what the teacher played as an example; null: nothing. */
export interface WithExample {
  readonly attempt: SentAttempt;
  readonly example: SentAttempt | null;
}
