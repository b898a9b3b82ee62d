import { Note } from 'tonal';
import * as v from 'valibot';
import { UsageError } from '../base/errors.ts';
import { isKey } from '../base/units.ts';
import { choiceIn, exerciseTitle, notesABeat, settleChoice } from './choices.ts';
import { crossingsInto } from './crossings.ts';
import { underWritten } from './fingers.ts';
import { FORMS, octavesUp } from './forms/index.ts';
import type { Place } from './forms/index.ts';
import { parseKey } from './keys.ts';
import { meanStepBeats, passageSteps } from './passage.ts';
import { CHOICE } from './types.ts';
import type { Exercise, ExerciseChoice, ExpectedNote, ExpectedStep, Hand } from './types.ts';

/**
 * Registers as books of scales and arpeggios print them: the right hand's lowest tonic lies between the G below middle C and the F sharp
 * above it (MIDI 55 to 66), and an octave lower for three and four octaves, where the top would else need an 8va; the left hand's an
 * octave below the right's. Common practice, no source; an attempt in another octave is found by its shift.
 */
const RIGHT_START_MIDI = 55;
const LONG_EXERCISE_OCTAVES = 3;
const SEMITONES_AN_OCTAVE = 12;

/**
 * Choice → the exercise written out: one step a place, in order, its notes with pitch (MIDI), name, hand and finger.
 *
 * @throws UsageError on a choice that does not exist.
 * @example
 * const { title, steps } = buildExercise({ key: 'A minor', form: 'scale', hands: 'left', octaves: 1 });
 * console.log(title, steps.map(({ notes }) => notes.map(({ name, finger }) => `${name} (${finger})`)));
 */
export function buildExercise(choice: ExerciseChoice): Exercise {
  const settled = settleChoice(choice);
  const title = exerciseTitle(settled);
  if (settled.passage !== undefined)
    return { choice: settled, title, steps: passageSteps(settled.passage, settled.hands) };
  const steps =
    settled.hands === 'together'
      ? together(partOf(settled, 'left'), partOf(settled, 'right'))
      : partOf(settled, settled.hands);
  return { choice: settled, title, steps };
}

/** The same; null where there is no such exercise. */
export function exerciseOf(choice: ExerciseChoice): Exercise | null {
  try {
    return buildExercise(choiceIn(choice));
  } catch (error) {
    if (error instanceof UsageError) return null;
    throw error;
  }
}

/** A choice of which there is an exercise. */
export const BUILDABLE = v.pipe(
  CHOICE,
  v.check((choice) => exerciseOf(choice) !== null, 'There is no such exercise.'),
);

/** From one step of an exercise to the next at a tempo, ms; of a passage on average. */
export function stepMs(choice: StepsOf, tempoBpm: number): number {
  const { hands, passage } = choice;
  return (
    (60_000 / tempoBpm) * (passage === undefined ? 1 / notesABeat(choice) : meanStepBeats(passage, hands))
  );
}

type StepsOf = Pick<ExerciseChoice, 'form' | 'hands' | 'passage' | 'notesABeat'>;

/** The part of one hand, with its crossings. */
function partOf(choice: ExerciseChoice, hand: Hand): readonly ExpectedStep[] {
  const key = parseKey(choice.key);
  const { hasCrossings, lowest, leftOctavesBelow, places: written } = FORMS[choice.form];
  const { octaves, minorScale, fingering, register = 0 } = choice;
  const printed = startNote(lowest(key), hand === 'left' ? leftOctavesBelow : 0, octaves);
  const start = octavesUp(printed, register);
  const plain = written({
    key,
    hand,
    start,
    octaves,
    minorScale: minorScale ?? null,
    principle: fingering?.[hand] ?? null,
  });
  requireKeys(plain, register);
  const places = underWritten(plain, fingering?.written ?? [], hand);
  const perBeat = notesABeat(choice);
  const notes = places.map((place) =>
    place.keys.map(({ name, finger }): ExpectedNote => ({ midi: Note.midi(name)!, name, hand, finger })),
  );
  return places.map(({ turn, label }, step) => ({
    step,
    beat: step / perBeat,
    notes: notes[step]!,
    crossings: hasCrossings ? crossingsInto(notes[step]!, notes[step - 1] ?? [], hand) : [],
    turn,
    ...(label !== undefined && { label }),
  }));
}

/** @throws UsageError where the register lies beyond the keyboard. */
function requireKeys(places: readonly Place[], register: number): void {
  const midis = places.flatMap(({ keys }) => keys.map(({ name }) => Note.midi(name)!));
  if (midis.every(isKey)) return;
  throw new UsageError(`register=${register} lies beyond the keyboard; choose another or leave it out.`);
}

/** The lowest note with its octave; C♭ sounds as B, so its octave number is one higher. */
function startNote(name: string, octavesBelow: number, octaves: number): string {
  const octavesDown = octavesBelow + (octaves >= LONG_EXERCISE_OCTAVES ? 1 : 0);
  const lowest = RIGHT_START_MIDI - SEMITONES_AN_OCTAVE * octavesDown;
  const octaveNumber = [1, 2, 3, 4, 5].find((octave) => Note.midi(`${name}${octave}`)! >= lowest)!;
  return `${name}${octaveNumber}`;
}

/** Two hands that play at once; a key on which both lie is struck once, and is the right hand's. */
function together(left: readonly ExpectedStep[], right: readonly ExpectedStep[]): readonly ExpectedStep[] {
  return left.map((step, index) => {
    const other = right[index]!;
    const shared = (midi: number): ExpectedNote | undefined => step.notes.find((note) => note.midi === midi);
    return {
      ...step,
      notes: [
        ...step.notes.filter(({ midi }) => other.notes.every((note) => note.midi !== midi)),
        ...other.notes.map((note) => {
          const left = shared(note.midi);
          return left === undefined ? note : { ...note, leftFinger: left.finger };
        }),
      ].sort((a, b) => a.midi - b.midi),
      crossings: [...step.crossings, ...other.crossings],
    };
  });
}
