import { exerciseIn } from '../../engine/index.ts';
import type { Assessment, Exercise, ExerciseChoice, Notice, Report } from '../../engine/index.ts';
import type { Trouble } from '../../io/troubles/index.ts';
import type { RecordingMicrophone } from './devices.ts';
import type { Player } from './player.svelte.ts';
import type { Sound } from './sound.ts';

/** What the page does with an attempt now. */
export type Phase =
  | { readonly kind: 'idle' }
  /** the microphone is explained, nothing is asked for yet */
  | { readonly kind: 'explaining' }
  | { readonly kind: 'opening' }
  | { readonly kind: 'ready'; readonly microphone: RecordingMicrophone }
  | { readonly kind: 'recording'; readonly microphone: RecordingMicrophone }
  | { readonly kind: 'reading'; readonly name: string }
  | { readonly kind: 'listening'; readonly name: string; readonly share: number };

/** Something that did not work: what, why, and the sound where there is any: nothing that was recorded is lost. */
export interface Failure {
  readonly what: 'microphone' | 'microphone-gone' | 'file' | 'analysis';
  readonly why: Trouble;
  readonly sound: Sound | null;
}

/** What came of listening to an attempt. */
export type Told =
  | { readonly kind: 'report'; readonly report: Report; readonly exercise: Exercise }
  | {
      readonly kind: 'no-playing' | 'not-recognised';
      readonly reason: Notice;
      /** what it comes nearest to, likeliest first */
      readonly nearest: readonly ExerciseChoice[];
    };

/** An attempt that was listened to. */
export interface Attempt {
  /** as its address and, where it lies there, the journal have it */
  readonly id: string;
  readonly sound: Sound;
  readonly told: Told;
  readonly player: Player;
}

/** An attempt of this page with its report. */
export interface Reported {
  readonly id: string;
  /** of its sound */
  readonly name: string;
  readonly report: Report;
}

/** What was just worked out → what is told of it. */
export function toldOf(assessment: Assessment): Told {
  if (assessment.kind === 'report')
    return { kind: 'report', report: assessment.report, exercise: assessment.alignment.exercise };
  const { kind, reason } = assessment;
  return { kind, reason, nearest: assessment.kind === 'not-recognised' ? assessment.nearest : [] };
}

/** A report that was kept → what is told of it. */
export function toldAgain(report: Report): Told {
  return { kind: 'report', report, exercise: exerciseIn(report) };
}
