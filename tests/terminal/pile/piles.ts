import type { ExerciseChoice, Measures } from '../../../src/engine/index.ts';
import type { Outcome, Recording } from '../../../src/terminal/pile/types.ts';
import { invent } from '../invented.ts';

export const SCALE: ExerciseChoice = { key: 'D major', form: 'scale', hands: 'right', octaves: 1 };

export function recordingOf(name: string, student: string, whenMs: number | null = null): Recording {
  return { source: { path: name, member: null }, name, student, whenMs, pianosCents: [], needsMb: 1 };
}

/** A recording with attempts at the D major scale of which so many notes are missing each, 20 s apart. */
export function sortedOf(
  recording: Recording,
  missed: readonly number[],
  choice = SCALE,
  measures: Partial<Measures> = {},
): Outcome {
  const attempts = missed.map((count, index) => ({
    startSec: 20 * index,
    endSec: 20 * index + 15,
    recognition: { choice, confidence: 0.99, octaveShift: 0, alternatives: [] },
    report: invent({
      choice,
      missed: Array.from({ length: count }, (_, step) => ({ step: step + 2, hand: 'right' as const })),
      measures: { tempoBpm: { value: 80 }, ...measures },
    }),
    reason: '',
  }));
  return { recording, sorted: { durationSec: 60, remarks: [], attempts, reason: '', print: recording.name } };
}
