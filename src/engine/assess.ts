import { buildExercise } from './exercise/index.ts';
import type { ExerciseChoice } from './exercise/index.ts';
import { listen } from './listen/index.ts';
import type { AudioInput, Heard } from './listen/index.ts';
import { matchNotes, recogniseExercise } from './match/index.ts';
import type { Alignment } from './match/index.ts';
import { writeReport } from './report/index.ts';
import type { Report, ReportOptions } from './report/index.ts';

/** What one recording came to. Each stage's own finding is kept beside the report. */
export type Assessment =
  | { readonly kind: 'report'; readonly heard: Heard; readonly alignment: Alignment; readonly report: Report }
  | { readonly kind: 'no-playing'; readonly heard: Heard; readonly reason: string }
  | { readonly kind: 'not-recognised'; readonly heard: Heard; readonly reason: string };

/** Sound in, report out: the whole path, one line a stage. `choice` null: the exercise is recognised from the sound. */
export function assess(
  audio: AudioInput,
  choice: ExerciseChoice | null,
  options: Partial<ReportOptions> = {},
): Assessment {
  return assessHeard(listen(audio), choice, options);
}

/** The same path for sound that has been listened to already, as a stream or before. */
export function assessHeard(
  heard: Heard,
  choice: ExerciseChoice | null,
  options: Partial<ReportOptions> = {},
): Assessment {
  if (heard.notes.length < 2) {
    const why = heard.findings[0]?.detail ?? 'No piano notes were heard in it.';
    return { kind: 'no-playing', heard, reason: why };
  }
  const chosen = choice ?? recogniseExercise(heard);
  if (chosen === null) {
    return {
      kind: 'not-recognised',
      heard,
      reason: 'The notes fit no exercise of the set well enough to say which. Choose the exercise.',
    };
  }
  const exercise = buildExercise(chosen);
  const alignment = matchNotes(heard, exercise);
  const report = writeReport(heard, alignment, options);
  return { kind: 'report', heard, alignment, report };
}
