import * as v from 'valibot';
import { ALL_FORMS, ALL_HANDS, ALL_MINOR_SCALES, buildExercise } from '../../engine/index.ts';
import type { Exercise, ExerciseChoice, Report } from '../../engine/index.ts';
import { textOf } from './text.ts';

/** The most that a report of one attempt can hold; far beyond any that was ever played. */
const MOST_NOTES = 20_000;
const MOST_LETTERS = 2000;

const text = textOf(MOST_LETTERS);
/** A note as the engine spells it, e.g. "F##4". */
const noteName = v.pipe(v.string(), v.regex(/^[A-G](#{1,3}|b{1,3})?-?\d{1,2}$/));
/** Far beyond any ms, dB, % or cent, so that whatever is reckoned with it stays a number. */
const figure = v.pipe(v.number(), v.minValue(-1e9), v.maxValue(1e9));
/** Within a day: what is drawn along it must end. */
const seconds = v.pipe(v.number(), v.minValue(-60), v.maxValue(86_400));
const count = v.pipe(v.number(), v.integer(), v.minValue(0), v.maxValue(MOST_NOTES));
const midi = v.pipe(v.number(), v.integer(), v.minValue(0), v.maxValue(127));
const hand = v.picklist(['left', 'right'] as const);
const list = <Item extends v.GenericSchema>(item: Item) => v.pipe(v.array(item), v.maxLength(MOST_NOTES));
const bpm = v.pipe(v.number(), v.minValue(1), v.maxValue(1000));

const estimate = v.union([
  v.object({ value: figure, plusMinus: v.exactOptional(figure) }),
  v.object({ notMeasured: text }),
]);

/** A choice that an exercise can be built of. */
export const CHOICE = v.pipe(
  v.object({
    key: v.pipe(v.string(), v.maxLength(20)),
    form: v.picklist(ALL_FORMS),
    hands: v.picklist(ALL_HANDS),
    octaves: v.pipe(v.number(), v.integer(), v.minValue(1), v.maxValue(4)),
    minorScale: v.exactOptional(v.picklist(ALL_MINOR_SCALES)),
  }),
  v.check((choice) => exerciseOf(choice) !== null, 'There is no such exercise.'),
);

const finding = v.object({
  kind: v.picklist([
    'silence',
    'too-short',
    'too-quiet',
    'clipping',
    'noise',
    'hum',
    'speech',
    'not-a-piano',
    'channels',
    'processing',
  ] as const),
  detail: text,
});

const note = v.looseObject({
  timeSec: seconds,
  releaseSec: v.nullable(seconds),
  midi,
  name: noteName,
  levelDb: figure,
  confidence: figure,
  hand: v.nullable(hand),
  step: v.nullable(count),
  finger: v.nullable(count),
  verdict: v.picklist(['correct', 'wrong', 'extra'] as const),
  wantedMidi: v.exactOptional(midi),
  wantedName: v.exactOptional(noteName),
  extraKind: v.exactOptional(v.picklist(['slip', 'repeat', 'restart', 'other'] as const)),
});

const remark = v.variant('kind', [
  v.object({ kind: v.literal('started-late'), firstStep: count }),
  v.object({ kind: v.literal('broken-off'), lastStep: count }),
  v.object({ kind: v.literal('restarted'), atStep: count, backToStep: count }),
  v.object({ kind: v.literal('stopped'), atStep: count, gapSec: figure }),
  v.object({ kind: v.literal('other-octave'), octaveShift: figure }),
  v.object({ kind: v.literal('read-a-semitone-off'), cents: figure }),
  v.object({
    kind: v.literal('played-again'),
    passages: list(v.object({ startSec: seconds, endSec: seconds })),
  }),
]);

const measures = v.looseObject({
  noteAccuracyPercent: estimate,
  evennessPercent: estimate,
  evennessMs: estimate,
  evennessDriftRemovedPercent: estimate,
  evennessWithoutCrossingsPercent: estimate,
  driftPercent: estimate,
  npvi: estimate,
  intervals: list(v.object({ step: count, ioiMs: figure, deviationMs: figure, audible: v.boolean() })),
  turnDeviationMs: estimate,
  firstIntervalDeviationMs: estimate,
  lastIntervalDeviationMs: estimate,
  crossings: list(
    v.object({
      step: count,
      hand,
      kind: v.picklist(['thumb-under', 'over-thumb'] as const),
      direction: v.picklist(['up', 'down'] as const),
      delayMs: figure,
      plusMinusMs: figure,
      ratio: figure,
      late: v.boolean(),
    }),
  ),
  crossingDelayMs: estimate,
  loudnessEvennessDb: estimate,
  thumbAccentDb: estimate,
  endsFadeDb: estimate,
  tempoBpm: estimate,
  touchMs: estimate,
  chordSpreadMs: estimate,
  chords: list(v.object({ step: count, hand, spreadMs: figure, lastFinger: count })),
  innerBalanceDb: estimate,
  togetherness: v.exactOptional(
    v.object({
      leadMs: estimate,
      apartSdMs: estimate,
      steps: list(v.object({ step: count, leftMinusRightMs: figure })),
      leftLouderDb: estimate,
    }),
  ),
  changeHesitationRatio: estimate,
  changes: list(v.object({ step: count, ratio: figure, gapMs: estimate })),
  changeGapMs: estimate,
});

/**
 * A report from outside, checked so far that everything on the page can draw it: known words, sane sizes, steps that
 * there are. Fields that a later version adds pass as they are.
 */
export const REPORT: v.GenericSchema<unknown, Report> = v.pipe(
  v.looseObject({
    format: v.literal('evenfall-report'),
    version: v.literal(1),
    exercise: v.object({
      key: v.pipe(v.string(), v.maxLength(20)),
      form: v.picklist(ALL_FORMS),
      hands: v.picklist(ALL_HANDS),
      octaves: v.pipe(v.number(), v.integer()),
      minorScale: v.exactOptional(v.picklist(ALL_MINOR_SCALES)),
      octaveShift: v.pipe(v.number(), v.integer(), v.minValue(-8), v.maxValue(8)),
      title: text,
    }),
    audio: v.object({ durationSec: seconds, sampleRateHz: figure, findings: list(finding) }),
    tuning: v.object({ a4Hz: figure, cents: figure, sdCents: figure }),
    notes: list(note),
    missed: list(v.object({ step: count, midi, name: noteName, hand })),
    unsure: list(
      v.object({ step: count, midi, hand, reason: text, heldOver: v.exactOptional(v.literal(true)) }),
    ),
    remarks: list(remark),
    betterFit: v.exactOptional(CHOICE),
    targetBpm: v.nullable(bpm),
    measures,
    words: v.looseObject({
      situation: text,
      verdict: text,
      emphasis: text,
      nextStep: text,
      steps: list(count),
      practice: v.exactOptional(v.object({ fromStep: count, toStep: count, tempoBpm: bpm })),
    }),
  }),
  v.check((report) => exerciseOf(report.exercise) !== null, 'There is no such exercise.'),
  v.check((report) => speaksOfItsSteps(report), 'It speaks of steps that its exercise does not have.'),
);

/** A choice from outside → its exercise; null where there is no such exercise. */
export function exerciseOf(choice: ExerciseChoice): Exercise | null {
  const { key, form, hands, octaves, minorScale } = choice;
  try {
    return buildExercise({ key, form, hands, octaves, ...(minorScale !== undefined && { minorScale }) });
  } catch {
    return null;
  }
}

function speaksOfItsSteps(report: Report): boolean {
  const steps = exerciseOf(report.exercise)?.steps.length ?? 0;
  const { measures: told, words } = report;
  const spoken = [
    ...[...report.notes, ...report.missed, ...report.unsure].map((one) => one.step ?? 0),
    ...told.intervals.map((one) => one.step),
    ...[...told.crossings, ...told.chords, ...told.changes].map((one) => one.step),
    ...(told.togetherness?.steps ?? []).map((one) => one.step),
    ...words.steps,
    words.practice?.fromStep ?? 0,
    words.practice?.toStep ?? 0,
  ];
  return spoken.every((step) => step < steps);
}
