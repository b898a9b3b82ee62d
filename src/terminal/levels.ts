import { promises as fs } from 'node:fs';
import { assessHeard, criteriaAt, DEFAULT_CRITERIA, leastTempi } from '../engine/index.ts';
import type {
  Assessment,
  AssessOptions,
  ExerciseChoice,
  Heard,
  KeptSound,
  Syllabus,
} from '../engine/index.ts';
import { parseJson, readSyllabus } from '../io/check/index.ts';
import { systemTrouble, troubleProblem } from './sound.ts';

/** A file that the page wrote → the levels in it; null: none is named. One that holds none, or cannot be read, is a Problem. */
export async function openLevels(file: string | null): Promise<Syllabus | null> {
  if (file === null) return null;
  const bytes = await fs.readFile(file).catch((cause: unknown) => {
    throw troubleProblem({ trouble: 'within', name: file, of: systemTrouble(cause) });
  });
  const levels = readSyllabus(parseJson(bytes));
  if ('trouble' in levels) throw troubleProblem({ trouble: 'within', name: file, of: levels });
  return levels;
}

/** Levels → what is heard is assessed by what they ask of the exercise, also where that is recognised only then. */
export function assessBy(
  levels: Syllabus | null,
  heard: Heard,
  choice: ExerciseChoice | null,
  options: Partial<AssessOptions>,
  sound: KeptSound,
): Assessment {
  if (levels === null) return assessHeard(heard, choice, options, sound);
  const at = (exercise: ExerciseChoice): Assessment => {
    const goals = { syllabus: levels, ownBpm: {} };
    const usual = criteriaAt(goals, exercise, options.criteria ?? DEFAULT_CRITERIA);
    const criteria = { ...usual, leastBpm: leastTempi(goals, exercise)[0] ?? null };
    return assessHeard(heard, choice, { ...options, criteria }, sound);
  };
  if (choice !== null) return at(choice);
  const recognised = assessHeard(heard, choice, options, sound);
  return recognised.kind === 'report' ? at(recognised.alignment.exercise.choice) : recognised;
}
