import * as v from 'valibot';
import { BPM, listOf, MIDI, NOTE_NAME, NUMBER, SECONDS, STEP, TEXT, told } from '../base/shapes.ts';
import type { Shape } from '../base/shapes.ts';
import { BUILDABLE, exerciseOf, PRACTISED, stepsIn } from '../exercise/index.ts';
import { CHOICE, HAND } from '../exercise/types.ts';
import { FINDING } from '../listen/types.ts';
import { NOTICE } from '../notices/index.ts';
import { EXTRA_KIND, HAND_LIKELIHOOD, OCTAVES_OFF, REMARK } from '../match/types.ts';
import { PRACTICE } from './practice.ts';
import { SAID } from './words/said/index.ts';

/** Not below zero. */
const SIZE = v.pipe(NUMBER, v.minValue(0));
const FINGER = told('1 is the thumb', v.pipe(v.number(), v.integer(), v.minValue(1), v.maxValue(5)));
const TEMPO = told('the tempo aimed at, beats a minute; null: none', v.nullable(BPM));

const ESTIMATE = v.object({ value: NUMBER, plusMinus: v.exactOptional(SIZE) });
const NOT_MEASURED = v.object({ notMeasured: v.pipe(TEXT, v.minLength(1)), notice: v.exactOptional(NOTICE) });
/** A figure with its uncertainty (one standard deviation), both in the unit that the measure’s name carries. */
export interface Estimate extends Shape<typeof ESTIMATE> {}
/** A figure that could not be measured says why. */
export interface NotMeasured extends Shape<typeof NOT_MEASURED> {}
/** A figure, or why there is none. */
export type Figure = Estimate | NotMeasured;

/** By the names of both alone: written out two dozen times, the type of a report would be a megabyte. */
export const FIGURE: v.GenericSchema<Figure> = v.pipe(
  v.union([ESTIMATE, NOT_MEASURED]),
  v.check((figure) => !('value' in figure && 'notMeasured' in figure), 'It is both measured and not.'),
  v.metadata({
    description:
      'a value with its ± (one standard deviation), in the unit that the name carries, or why there is none',
    not: { type: 'object', required: ['value', 'notMeasured'] },
  }),
);
const INTERVAL = v.object({
  step: told('the step that the interval leads into', STEP),
  ioiMs: v.pipe(NUMBER, v.gtValue(0)),
  deviationMs: told('how far the note at its end is from its even place; + late', NUMBER),
  audible: told('above the just-noticeable difference (Friberg & Sundberg 1995)', v.boolean()),
});
/** The time from one step to the next (inter-onset interval). */
export type IntervalDeviation = Shape<typeof INTERVAL>;

const CROSSING = v.object({
  step: STEP,
  hand: HAND,
  kind: v.picklist(['thumb-under', 'over-thumb']),
  direction: v.picklist(['up', 'down']),
  delayMs: NUMBER,
  plusMinusMs: told('± of delayMs from the listener’s timing noise, one standard deviation', SIZE),
  ratio: told('IOI into the crossing / median IOI of its non-crossing neighbours', NUMBER),
  late: told('surely later than the criterion allows, or clearly audible', v.boolean()),
  sure: v.exactOptional(
    told(
      'probability, by its ±, that it is later than the criterion allows',
      v.pipe(NUMBER, v.minValue(0), v.maxValue(1)),
    ),
  ),
});
/** How late the note of a crossing came. */
export type CrossingDelay = Shape<typeof CROSSING>;

const CHORD = v.object({
  step: STEP,
  hand: HAND,
  spreadMs: told('from its first key to its last, the listener’s noise taken out', SIZE),
  lastFinger: told('null: left open, as in a passage of one’s own', v.nullable(FINGER)),
});
/** One chord of one hand. */
export type ChordStrike = Shape<typeof CHORD>;

const CHANGE = v.object({
  step: told('the step that it leads into', STEP),
  ratio: told('its IOI / median IOI of the other changes; over 1 it hesitates', NUMBER),
  gapMs: told(
    'from the release of the last key to the first onset of the next chord (negative: they overlap)',
    FIGURE,
  ),
});
/** The way from one chord to the next. */
export type ChordChange = Shape<typeof CHANGE>;

const TOGETHERNESS = v.object({
  leadMs: told('mean over the steps of the left hand’s onset − the right hand’s: who leads', FIGURE),
  apartSdMs: told('SD of the same over the steps', FIGURE),
  steps: listOf(v.object({ step: STEP, leftMinusRightMs: NUMBER })),
  leftLouderDb: told('mean level of the left hand − the right hand’s, as they arrive', FIGURE),
});
/** How both hands fall together. */
export type Togetherness = Shape<typeof TOGETHERNESS>;

const MEASURES = v.object({
  noteAccuracyPercent: FIGURE,
  evennessPercent: FIGURE,
  evenUpToPercent: v.exactOptional(told('up to this it counts as even at its tempo, as it was judged', SIZE)),
  evennessMs: FIGURE,
  evennessDriftRemovedPercent: FIGURE,
  evennessWithoutCrossingsPercent: told('of the intervals that lead into no crossing', FIGURE),
  driftPercent: FIGURE,
  npvi: FIGURE,
  intervals: listOf(INTERVAL),
  turnDeviationMs: FIGURE,
  firstIntervalDeviationMs: FIGURE,
  lastIntervalDeviationMs: FIGURE,
  crossings: listOf(CROSSING),
  crossingDelayMs: FIGURE,
  loudnessEvennessDb: FIGURE,
  thumbAccentDb: FIGURE,
  keysKnown: v.exactOptional(
    told(
      'loudness, the thumb’s apart, is told against the levels of this piano’s own keys, learnt from other attempts; absent: as it sounds here, the keys’ differences in it',
      v.literal(true),
    ),
  ),
  endsFadeDb: told('level of the softer end against the middle (negative: it fades)', FIGURE),
  tempoBpm: FIGURE,
  touchMs: told('median overlap (+) or gap (−) between consecutive notes', FIGURE),
  pedalHeld: v.exactOptional(told('surely, and throughout; absent: not, or not to be told', v.literal(true))),
  chordSpreadMs: told('median spread of chords', FIGURE),
  chords: told('every chord of which two keys or more were heard', listOf(CHORD)),
  innerBalanceDb: told(
    'mean level of the inner notes of chords − that of the outer notes of the same chords',
    FIGURE,
  ),
  togetherness: v.exactOptional(
    told('only of hands together; figures negative where the left comes first', TOGETHERNESS),
  ),
  changeHesitationRatio: told('worst change of chord against the median change, ratio of IOIs', FIGURE),
  changes: told('every change of chord that was heard whole', listOf(CHANGE)),
  changeGapMs: told('median silence (+) or overlap (−) from one chord to the next', FIGURE),
});
/** Every measure of one hand; units in the names, definitions where each is computed. */
export type Measures = Shape<typeof MEASURES>;

const NOTE = v.intersect([
  v.object({
    timeSec: told('onset, from the start of the recording', SECONDS),
    releaseSec: told('null: not to be heard', v.nullable(SECONDS)),
    midi: MIDI,
    name: told('spelt for the key where it belongs to it, e.g. "G#4"', NOTE_NAME),
    levelDb: told('power of its own partials over its first 100 ms; 0 dB is a full-scale sine', NUMBER),
    confidence: v.pipe(v.number(), v.minValue(0), v.maxValue(1)),
    hand: v.nullable(HAND),
    step: v.nullable(STEP),
    finger: v.nullable(FINGER),
    wantedMidi: v.exactOptional(MIDI),
    wantedName: v.exactOptional(NOTE_NAME),
    extraKind: v.exactOptional(EXTRA_KIND),
  }),
  v.variant('verdict', [
    v.object({ verdict: v.literal('correct') }),
    v.object({ verdict: v.literal('wrong'), wantedMidi: MIDI, wantedName: NOTE_NAME }),
    v.object({ verdict: v.literal('extra'), extraKind: EXTRA_KIND }),
  ]),
]);
/** A note as it was played: when, which key, how loud, and what it answers in the exercise. */
export type ReportedNote = Shape<typeof NOTE>;

const WORDS = v.object({
  situation: told('which row of the table of situations spoke, for tests and for the journal', TEXT),
  verdict: told(
    'one sentence, e.g. "Every note right. The thumb comes late going up to C, both times; the rest is even."',
    v.pipe(TEXT, v.minLength(1)),
  ),
  emphasis: told('the part of `verdict` to underline; empty: none', TEXT),
  nextStep: told(
    'one concrete thing to do next; reads on after "Next:", so it begins in lower case unless with a name',
    TEXT,
  ),
  steps: told('steps that the verdict speaks of, to be marked in the picture', listOf(STEP)),
  practice: v.exactOptional(PRACTICE),
  said: v.exactOptional(
    told('the same as values, from which it is told in any language; absent in reports of version 0.1', SAID),
  ),
});
/** What is said to the player: never more than two things at once. */
export type Words = Shape<typeof WORDS>;

const REPORT_FIELDS = v.object({
  format: v.literal('evenfall-report'),
  version: v.literal(1),
  exercise: v.object({
    ...CHOICE.entries,
    key: told('e.g. "F# minor", "Bb major"', v.pipe(v.string(), v.regex(/^[A-G](#|b)? (major|minor)$/))),
    octaveShift: told(
      'octaves by which the attempt lies above (+) or below (−) what is written; no mistake',
      OCTAVES_OFF,
    ),
    handLikelihood: v.exactOptional(
      told('of one hand alone; in reports of version 0.1 it is not told', HAND_LIKELIHOOD),
    ),
    title: TEXT,
  }),
  audio: v.object({
    durationSec: v.pipe(SECONDS, v.minValue(0)),
    sampleRateHz: v.pipe(NUMBER, v.gtValue(0)),
    findings: told('what about the sound limits what could be heard', listOf(FINDING)),
  }),
  tuning: told(
    'where the piano stands as a whole, against A4 = 440 Hz',
    v.object({ a4Hz: NUMBER, cents: NUMBER, sdCents: NUMBER }),
  ),
  notes: told('every note of the run, in order of time', listOf(NOTE)),
  missed: listOf(v.object({ step: STEP, midi: MIDI, name: NOTE_NAME, hand: HAND })),
  unsure: told(
    'expected notes of which it cannot be told whether they were struck',
    listOf(
      v.object({
        step: STEP,
        midi: MIDI,
        hand: HAND,
        reason: TEXT,
        notice: v.exactOptional(NOTICE),
        heldOver: v.exactOptional(
          told('a common tone of two chords, perhaps held over: nothing is wrong with it', v.literal(true)),
        ),
      }),
    ),
  ),
  perhapsAgainSec: v.exactOptional(
    told(
      'when a key was struck again or the player went back, though that is not sure enough to be told: no interval spans such a moment (absent: none)',
      listOf(SECONDS),
    ),
  ),
  remarks: told('on the course of the attempt as a whole', listOf(REMARK)),
  betterFit: v.exactOptional(
    told('another exercise of the set that explains the notes clearly better', BUILDABLE),
  ),
  chosen: v.exactOptional(
    told(
      'what had been chosen, where it was surely another exercise that was played and is measured here',
      BUILDABLE,
    ),
  ),
  practised: v.exactOptional(
    told(
      'what of the exercise was to be practised, and how: steps count in that, copy after copy (absent: in the whole exercise)',
      PRACTISED,
    ),
  ),
  targetBpm: TEMPO,
  measures: MEASURES,
  words: WORDS,
});
type Fields = v.InferInput<typeof REPORT_FIELDS>;
/** One attempt, told. The JSON contract of the command line. */
export type Report = Shape<typeof REPORT_FIELDS>;

/**
 * One attempt, told. The JSON contract of the command line, published as report.schema.json (`npm run schemas`), and the check
 * of a report from outside. Known words, sane sizes, steps that there are: whatever passes can be drawn. A checked report is
 * used as it came and not as valibot copies it, so that fields of a later version stay where they are, at any depth.
 */
export const REPORT: v.GenericSchema<Fields, v.InferOutput<typeof REPORT_FIELDS>> = v.pipe(
  REPORT_FIELDS,
  v.check(({ exercise }) => exerciseOf(exercise) !== null, 'There is no such exercise.'),
  v.check((report) => speaksOfItsSteps(report), 'It speaks of steps that its exercise does not have.'),
  v.metadata({
    title: 'Evenfall report, version 1',
    description:
      'One attempt at a technique exercise on an acoustic piano, as heard and measured. Units are in the names of the fields: Sec, Ms, Db, Hz, Bpm, Percent, cents. Steps count from 0. A report of version 1 may gain fields; none is taken away or changes its meaning.',
  }),
);

function speaksOfItsSteps(report: Report): boolean {
  const whole = exerciseOf(report.exercise)?.steps.length ?? 0;
  const steps = stepsIn(report);
  const { measures, words } = report;
  const spoken = [
    ...[...report.notes, ...report.missed, ...report.unsure].map((one) => one.step ?? 0),
    ...measures.intervals.map((one) => one.step),
    ...[...measures.crossings, ...measures.chords, ...measures.changes].map((one) => one.step),
    ...(measures.togetherness?.steps ?? []).map((one) => one.step),
    ...words.steps,
  ];
  const { fromStep = 0, toStep = 0 } = words.practice ?? {};
  return spoken.every((step) => step < steps) && Math.max(fromStep, toStep) < whole;
}
