import type { AssessOptions, Assessment, AudioInput, ExerciseChoice, RoomCheck } from '../../engine/index.ts';
import type { Trouble } from '../troubles/index.ts';

/** What the page asks of the worker. The id is repeated by every reply. */
export type AnalysisRequest =
  | {
      readonly kind: 'attempt';
      readonly id: number;
      readonly audio: AudioInput;
      readonly choice: ExerciseChoice | null;
      readonly options: Partial<AssessOptions>;
    }
  | {
      readonly kind: 'room';
      readonly id: number;
      readonly silence: AudioInput;
      readonly played: AudioInput;
    };

/** What the worker answers. */
export type AnalysisReply =
  | { readonly id: number; readonly kind: 'progress'; readonly share: number }
  | { readonly id: number; readonly kind: 'done'; readonly assessment: Assessment }
  | { readonly id: number; readonly kind: 'checked'; readonly room: RoomCheck }
  | { readonly id: number; readonly kind: 'failed'; readonly trouble: Trouble };
