import { buildExercise, exerciseOf } from './build.ts';
import { choiceIn } from './choices.ts';
import type { Intention, Loudness, Practising, Rhythm } from './intention.ts';
import { positionsOf } from './stretches.ts';
import type { Exercise, ExerciseChoice, ExpectedStep } from './types.ts';

/** A dotted note and what completes its beat: how long–short is written as a rule. Common practice, no source. */
export const LONG_TO_SHORT = 3;
/** Where a stop or a breath is meant, so many steps more are thought of; how long it is, is the player's own. */
const PAUSE_STEPS = 1;
/** With one note more each time, so many notes are the first. */
const FIRST_LENGTH = 2;

/** How many notes make a group of a rhythm; null: it has none. */
export function groupOf(rhythm: Rhythm): number | null {
  const size = /^groups-of-(\d)$/.exec(rhythm)?.[1];
  return size === undefined ? null : Number(size);
}

/** How many notes to an accent; null: none is meant. */
export function accentsOf(loudness: Loudness | undefined): number | null {
  const size = /^accents-of-(\d)$/.exec(loudness ?? '')?.[1];
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
  const stretch = stretchIn(whole, intention);
  const stepBeats = intention.blocked === true ? 1 : whole.steps[1]!.beat - whole.steps[0]!.beat;
  const steps: ExpectedStep[] = [];
  let beat = 0;
  for (let copy = 0; copy < repeats; copy++)
    stretch.slice(0, stepsOfCopy(intention, stretch.length, copy)).forEach((source, place) => {
      const first = place === 0;
      const pauseBefore = first ? copy > 0 : pausesBefore(practised, source, place);
      // A passage keeps its own rhythm.
      const before = whole.choice.passage === undefined ? undefined : stretch[place - 1];
      const wayBeats = before === undefined ? stepBeats : source.beat - before.beat;
      if (steps.length > 0)
        beat += pauseBefore
          ? (1 + PAUSE_STEPS) * stepBeats
          : wayBeats * shareOfPair(intention.rhythm, place, practised.longToShort ?? LONG_TO_SHORT);
      steps.push({
        ...source,
        step: steps.length,
        beat,
        // Nobody crosses into the first note of a stretch.
        crossings: first ? [] : source.crossings,
        ...(pauseBefore && { pauseBefore: true as const }),
        copy: { number: copy, place },
      });
    });
  return { ...whole, steps, practised };
}

/** What of an exercise is to be practised, once. */
export function stretchIn(
  { steps }: Pick<Exercise, 'steps'>,
  { stretch, blocked }: Intention,
): readonly ExpectedStep[] {
  const own = stretch === undefined ? steps : steps.slice(stretch.fromStep, stretch.toStep + 1);
  return blocked === true ? positionsOf(own) : own;
}

/** How many copies of something are to be played, of so many steps: with one note more each time, each length so often. */
export function copiesMeant({ rhythm, times }: Intention, length: number): number {
  return rhythm === 'one-note-more' ? times * Math.max(1, length - FIRST_LENGTH + 1) : times;
}

/** How many steps a copy has. */
export function stepsOfCopy({ rhythm, times }: Intention, length: number, copy: number): number {
  return rhythm === 'one-note-more' ? Math.min(length, FIRST_LENGTH + Math.floor(copy / times)) : length;
}

/** The time into a note of a pair, as a share of a step: into the second of each pair the first one lasts. */
function shareOfPair(rhythm: Rhythm, place: number, longToShort: number): number {
  const long = (2 * longToShort) / (1 + longToShort);
  const intoSecond = place % 2 === 1;
  if (rhythm === 'long-short') return intoSecond ? long : 2 - long;
  if (rhythm === 'short-long') return intoSecond ? 2 - long : long;
  return 1;
}

function pausesBefore(
  { intention: { rhythm, blocked }, heldPlace = 0 }: Practising,
  step: ExpectedStep,
  place: number,
): boolean {
  // Between two positions the hand is moved, and nobody counts.
  if (blocked === true) return true;
  switch (rhythm) {
    case 'stop-before-crossings':
      return step.crossings.length > 0;
    case 'stop-on-each-beat':
      return Number.isInteger(step.beat);
    case 'stop-on-each-step':
    case 'prepared-silently':
      return true;
    default: {
      const size = groupOf(rhythm);
      return size !== null && (place - 1) % size === heldPlace;
    }
  }
}

/** The exercise that the steps of a report count in. @throws UsageError where there is none. */
export function exerciseIn(report: {
  readonly exercise: ExerciseChoice;
  readonly practised?: Practising;
}): Exercise {
  const choice = choiceIn(report.exercise);
  return report.practised === undefined ? buildExercise(choice) : practisedExercise(choice, report.practised);
}

/** How many steps the notes of a report can count in; 0 where there is no such exercise. */
export function stepsIn(report: {
  readonly exercise: ExerciseChoice;
  readonly practised?: Practising;
}): number {
  return exerciseOf(report.exercise) === null ? 0 : exerciseIn(report).steps.length;
}
