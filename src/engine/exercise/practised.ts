import { buildExercise, exerciseOf } from './build.ts';
import type { Practising, Rhythm } from './intention.ts';
import type { Exercise, ExerciseChoice, ExpectedStep } from './types.ts';

/** A dotted note and what completes its beat: how long–short is written as a rule. Common practice, no source. */
export const LONG_TO_SHORT = 3;
/** Where a stop or a breath is meant, so many steps more are thought of; how long it is, is the player's own. */
const PAUSE_STEPS = 1;

/** How many notes make a group of a rhythm; null: it has none. */
export function groupOf(rhythm: Rhythm): number | null {
  const size = /^groups-of-(\d)$/.exec(rhythm)?.[1];
  return size === undefined ? null : Number(size);
}

/**
 * Exercise + intention laid over an attempt → what there was to play, written out: the stretch, so often, each note where its rhythm
 * has it. Steps count on from copy to copy; into a step with `pauseBefore` any time may pass.
 *
 * @throws UsageError on a choice that does not exist.
 */
export function practisedExercise(choice: ExerciseChoice, practised: Practising): Exercise {
  const whole = buildExercise(choice);
  const { intention, repeats } = practised;
  if (repeats === 0) return { ...whole, practised };
  const last = whole.steps.length - 1;
  const { fromStep, toStep } = intention.stretch ?? { fromStep: 0, toStep: last };
  const stretch = whole.steps.slice(fromStep, Math.min(toStep, last) + 1);
  const stepBeats = whole.steps[1]!.beat - whole.steps[0]!.beat;
  const steps: ExpectedStep[] = [];
  let beat = 0;
  for (let copy = 0; copy < repeats; copy++)
    stretch.forEach((source, index) => {
      const first = index === 0;
      const pauseBefore = first ? copy > 0 : pausesBefore(practised, source, index);
      if (steps.length > 0)
        beat += pauseBefore
          ? (1 + PAUSE_STEPS) * stepBeats
          : stepBeats * shareOfPair(intention.rhythm, index, practised.longToShort ?? LONG_TO_SHORT);
      steps.push({
        ...source,
        step: steps.length,
        beat,
        // Nobody crosses into the first note of a stretch.
        crossings: first ? [] : source.crossings,
        ...(pauseBefore && { pauseBefore: true as const }),
      });
    });
  return { ...whole, steps, practised };
}

/** The time into a note of a pair, as a share of a step: into the second of each pair the first one lasts. */
function shareOfPair(rhythm: Rhythm, index: number, longToShort: number): number {
  const long = (2 * longToShort) / (1 + longToShort);
  const intoSecond = index % 2 === 1;
  if (rhythm === 'long-short') return intoSecond ? long : 2 - long;
  if (rhythm === 'short-long') return intoSecond ? 2 - long : long;
  return 1;
}

function pausesBefore(
  { intention: { rhythm }, heldPlace = 0 }: Practising,
  step: ExpectedStep,
  index: number,
): boolean {
  switch (rhythm) {
    case 'stop-before-crossings':
      return step.crossings.length > 0;
    case 'stop-on-each-beat':
      return Number.isInteger(step.beat);
    case 'stop-on-each-step':
      return true;
    default: {
      const size = groupOf(rhythm);
      return size !== null && (index - 1) % size === heldPlace;
    }
  }
}

/** The exercise that the steps of a report count in. @throws UsageError where there is none. */
export function exerciseIn(report: {
  readonly exercise: ExerciseChoice;
  readonly practised?: Practising;
}): Exercise {
  const { key, form, hands, octaves, minorScale } = report.exercise;
  const choice = { key, form, hands, octaves, ...(minorScale !== undefined && { minorScale }) };
  return report.practised === undefined ? buildExercise(choice) : practisedExercise(choice, report.practised);
}

/** How many steps the notes of a report can count in; 0 where there is no such exercise. */
export function stepsIn(report: {
  readonly exercise: ExerciseChoice;
  readonly practised?: Practising;
}): number {
  return exerciseOf(report.exercise) === null ? 0 : exerciseIn(report).steps.length;
}
