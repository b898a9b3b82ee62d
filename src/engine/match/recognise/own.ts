import { ALL_HANDS, exerciseOf, handsIn } from '../../exercise/index.ts';
import type { ExerciseChoice } from '../../exercise/index.ts';
import type { Misreading } from './priors.ts';
import { writtenOut } from './templates.ts';
import type { Template } from './templates.ts';

/**
 * What has fewer steps or notes is found in any playing: recognition leaves it alone, as it does five fingers of the set. Set by
 * reasoning; with it none of 200 recordings of other playing is taken for one of fifty passages (`npm run bench:own-recognised`).
 */
const LEAST_STEPS = 8;
const LEAST_NOTES = 10;
const OCTAVES = [0, -1, 1] as const;

/** A passage of one's own, as it may be found: in no key but its own, here or an octave away. */
export type OwnTemplate = Template & { readonly shifts: readonly number[] };

const written = new WeakMap<ExerciseChoice, readonly Template[]>();

/** Another pitch of the piano is less likely than this: nothing is looked for there. */
const WORTH_LOOKING = 0.05;

/**
 * Passages, each for all hands that it is written for → how they may be found on this piano: it may be read a semitone off, and which of two
 * it is, a passage that fits tells itself.
 */
export function ownTemplates(
  own: readonly ExerciseChoice[],
  { semitones, otherwise, chance }: Misreading,
): readonly OwnTemplate[] {
  const offs = 1 - chance > WORTH_LOOKING ? [semitones, otherwise] : [semitones];
  const shifts = offs.flatMap((off) => OCTAVES.map((octave) => 12 * octave - off));
  return own.flatMap((choice) => {
    const known = written.get(choice) ?? templatesOf(choice);
    written.set(choice, known);
    return known.map((template) => ({ ...template, shifts }));
  });
}

function templatesOf(choice: ExerciseChoice): readonly Template[] {
  if (choice.passage === undefined) return [];
  const all = handsIn(choice.passage);
  return ALL_HANDS.flatMap((hands): readonly Template[] => {
    if (all !== 'together' && hands !== all) return [];
    const exercise = exerciseOf({ ...choice, hands });
    if (exercise === null) return [];
    const template = writtenOut(exercise.choice);
    return template.steps.length >= LEAST_STEPS && template.size >= LEAST_NOTES ? [template] : [];
  });
}
