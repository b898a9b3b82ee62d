import type { Assessment, AudioInput, ExerciseChoice, ReportOptions } from '../../engine/index.ts';

/** What the page asks of the worker. */
export interface AnalysisRequest {
  /** repeated by every reply */
  readonly id: number;
  readonly audio: AudioInput;
  readonly choice: ExerciseChoice | null;
  readonly options: Partial<ReportOptions>;
}

/** What the worker answers. */
export type AnalysisReply =
  | { readonly id: number; readonly kind: 'progress'; readonly share: number }
  | { readonly id: number; readonly kind: 'done'; readonly assessment: Assessment }
  | { readonly id: number; readonly kind: 'failed'; readonly message: string };
