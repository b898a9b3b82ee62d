import {
  ALL_HANDS,
  ALL_KEYS,
  allChoices,
  buildExercise,
  handsFor,
  isRecognised,
} from '../../exercise/index.ts';
import type { ExerciseChoice, Hands } from '../../exercise/index.ts';
import { handLikelihood } from './priors.ts';
import type { HandLikelihood, HandPlayed } from '../types.ts';

/**
 * An exercise as it sounds, in C major or C minor; forms look alike in all keys but for the tonic, so all others are these slid
 * along the keyboard. One hand alone stands once: which one it was, the notes do not tell.
 */
export interface Template {
  readonly choice: ExerciseChoice;
  /** MIDI numbers of each step, lowest first */
  readonly steps: readonly (readonly number[])[];
  /** its keys, each once, and how often each comes */
  readonly keys: readonly number[];
  readonly times: readonly number[];
  /** notes in all */
  readonly size: number;
  readonly lowest: number;
  readonly highest: number;
}

/** An exercise of the set, in the key and the octave where the notes would have it. */
export interface Slid {
  readonly template: Template;
  /** above C as written */
  readonly semitones: number;
}

/** each written out on first use, since all of them take some ms */
const written = new Map<ExerciseChoice, Template>();
let inC: readonly ExerciseChoice[] = [];
let recognised: readonly Template[] = [];

/** Every form of C major and C minor, also by each hand alone what is only practised so. */
function choicesInC(): readonly ExerciseChoice[] {
  if (inC.length === 0)
    inC = allChoices()
      .filter(({ key }) => key === 'C major' || key === 'C minor')
      .flatMap((choice) =>
        handsFor(choice.form).length > 1 ? [choice] : ALL_HANDS.map((hands) => ({ ...choice, hands })),
      );
  return inC;
}

/** The forms that are recognised, in C major and C minor. */
export function templates(): readonly Template[] {
  if (recognised.length === 0)
    recognised = choicesInC().filter(isRecognised).filter(standsAlone).map(templateAs);
  return recognised;
}

function templateAs(choice: ExerciseChoice): Template {
  const known = written.get(choice);
  if (known !== undefined) return known;
  const template = templateFrom(choice, midisOf(choice));
  written.set(choice, template);
  return template;
}

/** Most forms are one and the same in either hand, an octave or two apart: then the right hand's stands for both. */
function standsAlone(choice: ExerciseChoice): boolean {
  if (choice.hands !== 'left') return true;
  const same = choicesInC().filter(isAlike(choice));
  const right = same.find(({ hands }) => hands === 'right')!;
  return !isSlid(templateAs(choice).steps, templateAs(right).steps);
}

/** Whether it is the same but for the hands. */
const isAlike =
  ({ key, form, octaves, minorScale }: ExerciseChoice) =>
  (one: ExerciseChoice): boolean =>
    one.key === key && one.form === form && one.octaves === octaves && one.minorScale === minorScale;

function templateFrom(choice: ExerciseChoice, steps: Template['steps']): Template {
  const midis = steps.flat();
  const counts = new Map<number, number>();
  for (const midi of midis) counts.set(midi, (counts.get(midi) ?? 0) + 1);
  const [lowest, highest] = [Math.min(...midis), Math.max(...midis)];
  const [keys, times] = [[...counts.keys()], [...counts.values()]];
  return { choice, steps, keys, times, size: midis.length, lowest, highest };
}

/** A passage of one's own, where it is written: it is in no key but its own. */
export function writtenOut(choice: ExerciseChoice): Template {
  return templateFrom(choice, midisOf(choice));
}

function midisOf(choice: ExerciseChoice): readonly (readonly number[])[] {
  return buildExercise(choice).steps.map(({ notes }) => notes.map(({ midi }) => midi));
}

/** Whether the one is the other, further up or down the keyboard. */
function isSlid(one: readonly (readonly number[])[], other: readonly (readonly number[])[]): boolean {
  const up = other[0]![0]! - one[0]![0]!;
  return one.every((keys, step) => keys.every((midi, at) => midi + up === other[step]![at]));
}

/** An exercise of the set and the octave, beside the written one, where it lies. */
export interface Placed {
  readonly choice: ExerciseChoice;
  readonly octaves: number;
  /** of one hand alone */
  readonly handLikelihood?: HandLikelihood;
}

/**
 * A slid template, moved on by the semitones that the piano was read off → the exercise that it stands for.
 *
 * One hand alone is taken for the likelier one; which it was cannot be heard.
 */
export function placed(
  { template, semitones }: Slid,
  semitonesOff: number,
  handsPlayed: readonly HandPlayed[] = [],
): Placed {
  const { choice } = template;
  // It stands where it is written, or octaves away.
  if (choice.passage !== undefined) return { choice, octaves: Math.round((semitones + semitonesOff) / 12) };
  const moved = semitones + semitonesOff;
  const key = keyAt(choice.key.endsWith('major') ? 'major' : 'minor', ((moved % 12) + 12) % 12);
  const first = Math.min(...template.steps[0]!) + moved;
  const placedAs = (hands: Hands): Placed => {
    const exercise = buildExercise({ ...choice, key, hands });
    const asWritten = Math.min(...exercise.steps[0]!.notes.map(({ midi }) => midi));
    return { choice: exercise.choice, octaves: (first - asWritten) / 12 };
  };
  if (choice.hands === 'together') return placedAs('together');
  const likelihood = handLikelihood(choice, first, handsPlayed);
  return { ...placedAs(likelihood.left > likelihood.right ? 'left' : 'right'), handLikelihood: likelihood };
}

/** The key of the set whose tonic lies so many semitones above C. */
function keyAt(mode: 'major' | 'minor', tonicClass: number): string {
  return ALL_KEYS.filter((key) => key.endsWith(mode)).find((key) => tonicClassOf(key) === tonicClass)!;
}

/** A choice, settled → its template, and how many semitones its tonic lies above C. */
export function templateOf(choice: ExerciseChoice): {
  readonly template: Template;
  readonly tonicClass: number;
} {
  const { key, hands, passage } = choice;
  if (passage !== undefined) return { template: writtenOut(choice), tonicClass: 0 };
  const same = choicesInC().filter(
    isAlike({ ...choice, key: key.endsWith('major') ? 'C major' : 'C minor' }),
  );
  const as = (wanted: Hands): ExerciseChoice => same.find((one) => one.hands === wanted)!;
  const own = as(hands);
  return { template: templateAs(standsAlone(own) ? own : as('right')), tonicClass: tonicClassOf(key) };
}

function tonicClassOf(key: string): number {
  const [letter, accidental] = [key[0]!, key[1]];
  const natural = { C: 0, D: 2, E: 4, F: 5, G: 7, A: 9, B: 11 }[letter]!;
  const moved = natural + (accidental === '#' ? 1 : accidental === 'b' ? -1 : 0);
  return (moved + 12) % 12;
}
