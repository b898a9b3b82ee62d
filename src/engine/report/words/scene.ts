import { displayName, displayPitchClass, keyFacts } from '../../exercise/index.ts';
import type { Exercise, ExpectedNote, Hand, KeyFacts } from '../../exercise/index.ts';
import type { Heard } from '../../listen/index.ts';
import type { Alignment } from '../../match/index.ts';
import type { Criteria } from '../criteria/index.ts';
import { isMeasured } from '../measures/index.ts';
import type { Figure, Measured } from '../measures/index.ts';
import type { Report, Words } from '../types.ts';

/** Everything that a situation may look at. */
export interface Scene {
  readonly heard: Heard;
  readonly alignment: Alignment;
  readonly exercise: Exercise;
  readonly facts: KeyFacts;
  readonly measured: Measured;
  readonly criteria: Criteria;
  /** this attempt's report, without its words */
  readonly report: Omit<Report, 'words'>;
  /** earlier reports of the same exercise, oldest first */
  readonly earlier: readonly Report[];
  /** earlier reports of the same exercise by one hand alone, oldest first; this hand's own are in `earlier` */
  readonly alone: Readonly<Record<Hand, readonly Report[]>>;
}

/** What a situation has to say. Sentences come without their full stop. */
export interface Told {
  readonly sentence: string;
  /** the same in half a sentence, to come second after a semicolon; left out where it does not go second */
  readonly half?: string;
  /** the part of `sentence` to underline */
  readonly emphasis: string;
  readonly nextStep: string;
  readonly steps: readonly number[];
  readonly practice?: NonNullable<Words['practice']>;
}

/** One row of the table. */
export interface Situation {
  readonly name: string;
  /** whether another trouble may follow it in the same verdict */
  readonly takesSecond: boolean;
  readonly tell: (scene: Scene) => Told | null;
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

export function handWords(exercise: Exercise): string {
  const { hands } = exercise.choice;
  return hands === 'together' ? 'both hands' : `${hands} hand`;
}

export function say(note: ExpectedNote): string {
  return displayPitchClass(note.name);
}

/** "the thumb", "finger 3" */
export function sayFinger(finger: number): string {
  return finger === 1 ? 'the thumb' : `finger ${finger}`;
}

/** "the thumb", "finger 3"; of both hands together also whose it is */
export function sayFingerOf(scene: Scene, { hand, finger }: Pick<ExpectedNote, 'hand' | 'finger'>): string {
  const of = scene.exercise.choice.hands === 'together' ? ` of the ${hand} hand` : '';
  return `${sayFinger(finger)}${of}`;
}

export function sayKey(key: string): string {
  return displayName(key);
}

/** Where a step lies: "going up", "at the top", "coming down", or the chord's name: "in the V7". */
export function whereIs(scene: Scene, step: number): string {
  const steps = scene.exercise.steps;
  if (isChordForm(scene.exercise)) return `in the ${chordName(scene, step)}`;
  const turn = steps.find((one) => one.turn)?.step;
  if (step === 0) return 'at the start';
  if (step === steps.length - 1) return 'at the end';
  if (turn === undefined) return '';
  if (step === turn) return 'at the top';
  return step < turn ? 'going up' : 'coming down';
}

/** "V7", "last I", "first inversion going up" */
export function chordName(scene: Scene, step: number): string {
  const steps = scene.exercise.steps;
  const label = steps[step]!.label ?? `${ordinal(step + 1)} chord`;
  const same = steps.filter((one) => one.label === label);
  if (same.length < 2) return label;
  if (scene.exercise.choice.form === 'progression')
    return same.length === 2 || step === 0 || step === steps.length - 1
      ? `${step === same[0]!.step ? 'first' : 'last'} ${label}`
      : `middle ${label}`;
  const turn = steps.find((one) => one.turn)?.step ?? steps.length;
  if (step === turn) return `top ${label}`;
  return `${label} ${step < turn ? 'going up' : 'coming down'}`;
}

function ordinal(count: number): string {
  return ['first', 'second', 'third', 'fourth', 'fifth', 'sixth', 'seventh'][count - 1] ?? `${count}th`;
}

/** "A♭–C–E♭", "i–V7–i", "from the root position going up to the top root position"; long stretches by their ends: "from A♭ up to A♭". */
export function sayStretch(scene: Scene, fromStep: number, toStep: number): string {
  const steps = scene.exercise.steps.slice(fromStep, toStep + 1);
  if (scene.exercise.choice.form === 'progression') return steps.map((step) => step.label ?? '').join('–');
  if (isChordForm(scene.exercise))
    return `from the ${chordName(scene, fromStep)} to the ${chordName(scene, toStep)}`;
  const names = steps.map((step) => say(step.notes.at(-1)!));
  if (names.length <= 7) return names.join('–');
  const turn = scene.exercise.steps.find((one) => one.turn)?.step ?? toStep;
  const way = toStep <= turn ? 'up to' : fromStep >= turn ? 'down to' : 'up and down to';
  return `from ${names[0]!} ${way} ${names.at(-1)!}`;
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
