import { keyFacts, keyName, noteName } from '../../exercise/index.ts';
import type { Exercise, ExpectedNote, ExpectedStep, Hand, KeyFacts, Locale } from '../../exercise/index.ts';
import type { Heard } from '../../listen/index.ts';
import type { Alignment } from '../../match/index.ts';
import type { Criteria } from '../criteria/index.ts';
import { isMeasured } from '../measures/index.ts';
import type { Measured } from '../measures/index.ts';
import type { Figure, Report, Words } from '../types.ts';
import type { Wording } from './english/index.ts';
import type { ChordPlace, FingerOf, StepPlace, Said, NamedStep, NamedStretch, Task } from './types.ts';

/** Everything that a situation may look at. */
export interface Scene {
  readonly heard: Heard;
  readonly alignment: Alignment;
  readonly exercise: Exercise;
  readonly facts: KeyFacts;
  readonly measured: Measured;
  readonly criteria: Criteria;
  readonly locale: Locale;
  /** the language in which it is told */
  readonly wording: Wording;
  /** this attempt's report, without its words */
  readonly report: Omit<Report, 'words'>;
  /** earlier reports of the same exercise, oldest first */
  readonly earlier: readonly Report[];
  /** earlier reports of the same exercise by one hand alone, oldest first; this hand's own are in `earlier` */
  readonly alone: Readonly<Record<Hand, readonly Report[]>>;
}

/** What a situation has to say. Sentences come without their full stop. */
export interface Statement extends Said {
  readonly steps: readonly number[];
  readonly practice?: NonNullable<Words['practice']>;
}

/** One row of the table. */
export interface Situation {
  readonly name: string;
  /** whether another trouble may follow it in the same verdict */
  readonly takesSecond: boolean;
  readonly tell: (scene: Scene) => Statement | null;
}

/** A figure that clears a bound by its ±, `sureBy` times; nothing is said about the others. */
export function surelyOver(figure: Figure, bound: number, criteria: Criteria): boolean {
  return isMeasured(figure) && figure.value - criteria.sureBy * (figure.plusMinus ?? 0) > bound;
}

export function valueOf(figure: Figure): number | undefined {
  return isMeasured(figure) ? figure.value : undefined;
}

export function isChordForm(exercise: Exercise): boolean {
  const { form } = exercise.choice;
  return form === 'triads' || form === 'progression';
}

/** A note as it is said, without its octave; its plain name or the note that is expected. */
export function say({ locale }: Scene, note: ExpectedNote | string): string {
  return noteName(typeof note === 'string' ? note : note.name, locale.naming);
}

/** A finger as it is said: with both hands also whose it is. */
export function fingerOf(scene: Scene, { hand, finger }: Pick<ExpectedNote, 'hand' | 'finger'>): FingerOf {
  return { finger, hand: scene.exercise.choice.hands === 'together' ? hand : null };
}

export function sayKey({ locale }: Scene, key: string): string {
  return keyName(key, locale);
}

/** Where a step lies: on the way up, at the top, in which chord. */
export function placeOf(scene: Scene, step: number): StepPlace {
  const steps = scene.exercise.steps;
  if (isChordForm(scene.exercise)) return { kind: 'chord', chord: chordAt(scene, step) };
  const turn = steps.find((one) => one.turn)?.step;
  if (step === 0) return { kind: 'start' };
  if (step === steps.length - 1) return { kind: 'end' };
  if (turn === undefined) return { kind: 'anywhere' };
  if (step === turn) return { kind: 'top' };
  return { kind: step < turn ? 'up' : 'down' };
}

/** A step by its (upper) note and its place. */
export function spotOf(scene: Scene, step: number): NamedStep {
  return { note: say(scene, scene.exercise.steps[step]!.notes.at(-1)!), place: placeOf(scene, step) };
}

/** A chord among those of its name. */
export function chordAt(scene: Scene, step: number): ChordPlace {
  const steps = scene.exercise.steps;
  const label = steps[step]!.label ?? null;
  const same = steps.filter((one) => label !== null && one.label === label);
  return { label, number: step + 1, which: same.length < 2 ? 'only' : whichOf(scene, step, same) };
}

function whichOf(scene: Scene, step: number, same: readonly ExpectedStep[]): ChordPlace['which'] {
  const steps = scene.exercise.steps;
  if (scene.exercise.choice.form === 'progression') {
    if (same.length > 2 && step !== 0 && step !== steps.length - 1) return 'middle';
    return step === same[0]!.step ? 'first' : 'last';
  }
  const turn = steps.find((one) => one.turn)?.step ?? steps.length;
  if (step === turn) return 'top';
  return step < turn ? 'up' : 'down';
}

/** Longer stretches are said by their ends. */
const MOST_SAID = 7;

export function stretchOf(scene: Scene, fromStep: number, toStep: number): NamedStretch {
  const steps = scene.exercise.steps.slice(fromStep, toStep + 1);
  if (scene.exercise.choice.form === 'progression')
    return { kind: 'all', names: steps.map((step) => step.label ?? '') };
  if (isChordForm(scene.exercise))
    return { kind: 'chords', from: chordAt(scene, fromStep), to: chordAt(scene, toStep) };
  const names = steps.map((step) => say(scene, step.notes.at(-1)!));
  if (names.length <= MOST_SAID) return { kind: 'all', names };
  const turn = scene.exercise.steps.find((one) => one.turn)?.step ?? toStep;
  const way = toStep <= turn ? 'up' : fromStep >= turn ? 'down' : 'up-and-down';
  return { kind: 'ends', from: names[0]!, to: names.at(-1)!, way };
}

/** A practice as a task that can be said. */
export function taskOf(scene: Scene, practice: NonNullable<Words['practice']>): Task {
  const { fromStep, toStep, tempoBpm } = practice;
  return { hands: scene.exercise.choice.hands, stretch: stretchOf(scene, fromStep, toStep), tempoBpm };
}

/** A stretch round some steps at a share of the tempo just played (or aimed at, or 60 where neither is known). */
export function practiceAround(
  scene: Scene,
  fromStep: number,
  toStep: number,
  share: number,
): NonNullable<Words['practice']> {
  const last = scene.exercise.steps.length - 1;
  return {
    fromStep: Math.max(0, fromStep),
    toStep: Math.min(last, toStep),
    tempoBpm: atTempo(scene, share),
  };
}

/** A share of the tempo just played, whole beats a minute, never under 20. */
export function atTempo(scene: Scene, share: number): number {
  const played = valueOf(scene.measured.measures.tempoBpm) ?? scene.report.targetBpm ?? 60;
  return Math.max(20, Math.round(played * share));
}

export function sceneFacts(exercise: Exercise): KeyFacts {
  return keyFacts(exercise.choice.key);
}
