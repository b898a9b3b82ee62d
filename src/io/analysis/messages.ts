import type { AssessOptions, Assessment, AudioInput, ExerciseChoice, RoomCheck } from '../../engine/index.ts';
import type { Expected, LiveEvent, LiveOptions, OwnSound, PianoProfile } from '../../engine/index.ts';
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

/** What the page tells the live listener's worker. */
export type ToLiveListener =
  | {
      readonly kind: 'open';
      readonly sampleRateHz: number;
      readonly options: Partial<LiveOptions>;
    }
  | { readonly kind: 'block'; readonly channels: readonly Float32Array[] }
  | { readonly kind: 'own-sound'; readonly sound: OwnSound }
  | { readonly kind: 'piano'; readonly piano: PianoProfile }
  | { readonly kind: 'expected'; readonly expected: Expected }
  | { readonly kind: 'end' };

/** What it answers. */
export type FromLiveListener =
  | { readonly kind: 'events'; readonly events: readonly LiveEvent[] }
  | { readonly kind: 'failed'; readonly trouble: Trouble }
  /** everything pushed before `end` has been heard out */
  | { readonly kind: 'ended' };
