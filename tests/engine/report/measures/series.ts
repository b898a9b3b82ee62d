import type { ExerciseChoice } from '../../../../src/engine/exercise/index.ts';
import { buildExercise } from '../../../../src/engine/exercise/index.ts';
import type { Heard, PlayedNote } from '../../../../src/engine/listen/index.ts';
import { matchNotes } from '../../../../src/engine/match/index.ts';
import { writeReport } from '../../../../src/engine/report/index.ts';
import type { Measures, Report, ReportOptions } from '../../../../src/engine/report/index.ts';
import { heardOf, played } from '../../match/simulated.ts';

/** Twelve intervals, thirteen notes: the tonic arpeggio of C major over two octaves, right hand (fingers 1231235 up). */
export const ARPEGGIO: ExerciseChoice = { key: 'C major', form: 'arpeggio', hands: 'right', octaves: 2 };

/** An exercise of single notes with these intervals, ms, between its steps. */
export function withIntervals(
  ioisMs: readonly number[],
  over: (step: number) => Partial<PlayedNote> = () => ({}),
  choice: ExerciseChoice = ARPEGGIO,
): PlayedNote[] {
  let timeSec = 1;
  return buildExercise(choice).steps.map(({ notes }, step) => {
    if (step > 0) timeSec += (ioisMs[step - 1] ?? ioisMs.at(-1)!) / 1000;
    return played(timeSec, notes[0]!.midi, over(step));
  });
}

export function reportOf(
  notes: readonly PlayedNote[],
  over: Partial<Heard> = {},
  choice: ExerciseChoice = ARPEGGIO,
  options: Partial<ReportOptions> = {},
): Report {
  const heard = heardOf(notes, over);
  return writeReport(heard, matchNotes(heard, buildExercise(choice)), options);
}

export function measuresOf(ioisMs: readonly number[], over: Partial<Heard> = {}): Measures {
  return reportOf(withIntervals(ioisMs), over).measures;
}

export function value(figure: { value: number } | { notMeasured: string }): number {
  if (!('value' in figure)) throw new Error(figure.notMeasured);
  return figure.value;
}

export function plusMinus(figure: { value: number; plusMinus?: number } | { notMeasured: string }): number {
  if (!('value' in figure) || figure.plusMinus === undefined) throw new Error('no ±');
  return figure.plusMinus;
}
