import { isCadence, notesABeat } from '../../exercise/index.ts';
import type { ExpectedNote, ExpectedStep, Hand } from '../../exercise/index.ts';
import { isMeasured } from '../measures/index.ts';
import type { ChordPlace, StepPlace, NamedStep, NamedStretch, Task } from './said/index.ts';
import type { Practice, Scene } from './scene.ts';
import { isChordForm, nameOf } from './scene.ts';

/** Where a step lies: on the way up, at the top, in which chord. */
export function placeOf(scene: Scene, step: number): StepPlace {
  const { steps } = scene.exercise;
  if (isChordForm(scene.exercise)) return { kind: 'chord', chord: chordAt(scene, step) };
  const { bar } = steps[step]!;
  if (bar !== undefined) return { kind: 'bar', bar };
  const turn = steps.find((one) => one.turn)?.step;
  // A stretch is short, and comes several times.
  if (scene.exercise.practised?.intention.stretch !== undefined) return { kind: 'anywhere' };
  if (step === 0) return { kind: 'start' };
  if (step === steps.length - 1) return { kind: 'end' };
  if (turn === undefined) return { kind: 'anywhere' };
  if (step === turn) return { kind: 'top' };
  return { kind: step < turn ? 'up' : 'down' };
}

/** A step by its (upper) note and its place. */
export function spotOf(scene: Scene, step: number): NamedStep {
  return { note: nameOf(scene.exercise.steps[step]!.notes.at(-1)!), place: placeOf(scene, step) };
}

/** A chord among those of its name. */
export function chordAt(scene: Pick<Scene, 'exercise'>, step: number): ChordPlace {
  const { steps } = scene.exercise;
  const label = steps[step]!.label ?? null;
  const same = steps.filter((one) => label !== null && one.label === label);
  return {
    label,
    number: (steps[step]!.copy?.place ?? step) + 1,
    which: same.length < 2 ? 'only' : whichOf(scene, step, same),
  };
}

function whichOf(
  scene: Pick<Scene, 'exercise'>,
  step: number,
  same: readonly ExpectedStep[],
): ChordPlace['which'] {
  const { steps } = scene.exercise;
  if (isCadence(scene.exercise.choice.form)) {
    if (same.length > 2 && step !== 0 && step !== steps.length - 1) return 'middle';
    return step === same[0]!.step ? 'first' : 'last';
  }
  const turn = steps.find((one) => one.turn)?.step ?? steps.length;
  if (step === turn) return 'top';
  return step < turn ? 'up' : 'down';
}

/** What is read at a glance: two bars of four beats, or three changes of chord. */
const GLANCE_BEATS = 8;
const GLANCE_CHANGES = 3;
/** Longer stretches are said by their ends. */
const MOST_SAID = 7;
/** Fewer notes, or chords, than this are no line that could be practised. */
const LEAST_NOTES = 4;
const LEAST_CHORDS = 2;
/** Slower than this a pulse is hard to keep (common practice, no source); who played slower stays at that tempo. */
const LEAST_BPM = 40;

/** A stretch round some steps at a share of the tempo just played (or aimed at, or 60 where neither is known), cut to a glance. */
export function practiceAround(scene: Scene, fromStep: number, toStep: number, share: number): Practice {
  const { steps } = scene.exercise;
  const more = (isChordForm(scene.exercise) ? LEAST_CHORDS : LEAST_NOTES) - 1;
  const to = Math.min(steps.length - 1, Math.max(toStep, Math.max(0, fromStep) + more));
  const from = Math.max(0, Math.min(fromStep, to - more));
  const beat = steps[from]!.beat;
  const within = steps.filter(
    (one) =>
      one.step >= from &&
      one.step <= to &&
      (isChordForm(scene.exercise) ? one.step - from <= GLANCE_CHANGES : one.beat - beat < GLANCE_BEATS),
  );
  return { fromStep: from, toStep: within.at(-1)!.step, tempoBpm: atTempo(scene, share) };
}

/** The way up, or as much of it as is read at a glance. */
export function wayUp(scene: Scene, share: number): Practice {
  const { steps } = scene.exercise;
  return practiceAround(scene, 0, steps.find((one) => one.turn)?.step ?? steps.length - 1, share);
}

/** A share of the tempo just played, whole beats a minute; not under 40, where that was played. */
export function atTempo(scene: Scene, share: number): number {
  const { tempoBpm } = scene.measured.measures;
  const played = isMeasured(tempoBpm) ? tempoBpm.value : (scene.report.targetBpm ?? 60);
  return Math.round(Math.max(20, played * share, Math.min(LEAST_BPM, played)));
}

/** Some steps of an exercise, as they are said; `hands`: of a passage, who is to play. */
export function stretchOf(
  scene: Pick<Scene, 'exercise'>,
  fromStep: number,
  toStep: number,
  hands: Task['hands'] = null,
): NamedStretch {
  const steps = scene.exercise.steps.slice(fromStep, toStep + 1);
  if (steps.length === scene.exercise.steps.length)
    return { kind: 'whole', chords: isChordForm(scene.exercise) };
  if (isCadence(scene.exercise.choice.form))
    return { kind: 'numerals', names: steps.map((step) => step.label ?? '') };
  if (isChordForm(scene.exercise))
    return { kind: 'chords', from: chordAt(scene, fromStep), to: chordAt(scene, toStep) };
  // Of a passage a hand plays what is written for it, and rests elsewhere.
  const own = ({ notes }: ExpectedStep): readonly ExpectedNote[] =>
    hands === null || hands === 'together' ? notes : notes.filter(({ hand }) => hand === hands);
  const played = steps.filter((step) => own(step).length > 0);
  const names = (played.length > 0 ? played : steps).map((step) =>
    nameOf((own(step).at(-1) ?? step.notes.at(-1))!),
  );
  if (names.length <= MOST_SAID) return { kind: 'notes', names };
  const [from, to] = [names[0]!, names.at(-1)!];
  const [fromBar, toBar] = [steps[0]!.bar, steps.at(-1)!.bar];
  if (fromBar !== undefined && toBar !== undefined) return { kind: 'bars', from, fromBar, to, toBar };
  const turn = scene.exercise.steps.find((one) => one.turn)?.step ?? toStep;
  const way = toStep <= turn ? 'up' : fromStep >= turn ? 'down' : 'up-and-down';
  return { kind: 'ends', from, to, way, notes: names.length };
}

/** A practice as a task that can be said; `hands`: where others play than in the exercise. */
export function taskOf(
  scene: Scene,
  { fromStep, toStep, tempoBpm }: Practice,
  hands: Task['hands'] = null,
): Task {
  const { choice } = scene.exercise;
  const { passage } = choice;
  return {
    hands,
    stretch: stretchOf(scene, fromStep, toStep, passage === undefined ? null : hands),
    tempoBpm,
    notesABeat: passage === undefined ? notesABeat(choice) : null,
  };
}

/** The whole exercise, where nothing in it is to be picked out. */
export function wholeOf(scene: Scene, share: number): Practice {
  return { fromStep: 0, toStep: scene.exercise.steps.length - 1, tempoBpm: atTempo(scene, share) };
}

export const crossesAt = ({ exercise }: Scene, step: number, hand: Hand): boolean =>
  exercise.steps[step]?.crossings.some((crossing) => crossing.hand === hand) ?? false;
