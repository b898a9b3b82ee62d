import { buildExercise } from '../../src/engine/index.ts';
import type { ExerciseChoice, Hand, Measures, Report, ReportedNote } from '../../src/engine/index.ts';

/** Knobs of an invented attempt: everything that is not said is perfect. */
export interface Invention {
  readonly choice: ExerciseChoice;
  readonly beatSec: number;
  /** lateness of a step for one hand, ms */
  readonly lateMs: (step: number, hand: Hand) => number;
  readonly missed: readonly { readonly step: number; readonly hand: Hand }[];
  readonly wrong: readonly {
    readonly step: number;
    readonly hand: Hand;
    readonly midi: number;
    readonly name: string;
  }[];
  readonly extraSec: readonly number[];
  readonly levelDb: (step: number) => number;
  readonly measures: Partial<Measures>;
}
const PERFECT: Omit<Invention, 'choice'> = {
  beatSec: 1,
  lateMs: () => 0,
  missed: [],
  wrong: [],
  extraSec: [],
  levelDb: () => -20,
  measures: {},
};

const NOT = { notMeasured: 'nothing was invented for it' };
const NO_MEASURES: Measures = {
  noteAccuracyPercent: NOT,
  evennessPercent: NOT,
  evennessMs: NOT,
  evennessDriftRemovedPercent: NOT,
  evennessWithoutCrossingsPercent: NOT,
  driftPercent: NOT,
  npvi: NOT,
  intervals: [],
  turnDeviationMs: NOT,
  firstIntervalDeviationMs: NOT,
  lastIntervalDeviationMs: NOT,
  crossings: [],
  crossingDelayMs: NOT,
  loudnessEvennessDb: NOT,
  thumbAccentDb: NOT,
  endsFadeDb: NOT,
  tempoBpm: NOT,
  touchMs: NOT,
  chordSpreadMs: NOT,
  chords: [],
  innerBalanceDb: NOT,
  changes: [],
  changeGapMs: NOT,
  changeHesitationRatio: NOT,
};

/** A report on an attempt that nobody played, with exactly the faults that are asked for. */
export function invent(spec: Partial<Invention> & Pick<Invention, 'choice'>): Report {
  const { choice, beatSec, lateMs, missed, wrong, extraSec, levelDb, measures } = { ...PERFECT, ...spec };
  const exercise = buildExercise(choice);
  const isMissed = (step: number, hand: Hand): boolean =>
    missed.some((other) => other.step === step && other.hand === hand);
  const expected = exercise.steps.flatMap(({ step, beat, notes }) =>
    notes.map((note) => ({ step, beat, ...note })),
  );
  const played = expected
    .filter(({ step, hand }) => !isMissed(step, hand))
    .map(({ step, beat, midi, name, hand, finger }): ReportedNote => {
      const instead = wrong.find((other) => other.step === step && other.hand === hand);
      const timeSec = 0.5 + beat * beatSec + lateMs(step, hand) / 1000;
      const shared = { timeSec, releaseSec: null, levelDb: levelDb(step), confidence: 1, hand, step, finger };
      return instead === undefined
        ? { ...shared, midi, name, verdict: 'correct' }
        : {
            ...shared,
            midi: instead.midi,
            name: instead.name,
            verdict: 'wrong',
            wantedMidi: midi,
            wantedName: name,
          };
    });
  const extras = extraSec.map((timeSec): ReportedNote => ({
    timeSec,
    releaseSec: null,
    midi: 60,
    name: 'C4',
    levelDb: -30,
    confidence: 0.8,
    hand: null,
    step: null,
    finger: null,
    verdict: 'extra',
    extraKind: 'other',
  }));
  return {
    format: 'evenfall-report',
    version: 1,
    exercise: {
      ...choice,
      octaveShift: 0,
      title: exercise.title,
      // Somebody chose the hand.
      ...(choice.hands !== 'together' && {
        handLikelihood: { left: choice.hands === 'left' ? 1 : 0, right: choice.hands === 'right' ? 1 : 0 },
      }),
    },
    audio: { durationSec: 10, sampleRateHz: 44_100, findings: [] },
    tuning: { a4Hz: 436.2, cents: -15, sdCents: 1.2 },
    notes: [...played, ...extras].sort((a, b) => a.timeSec - b.timeSec),
    missed: expected.filter(({ step, hand }) => isMissed(step, hand)),
    unsure: [],
    remarks: [],
    measures: { ...NO_MEASURES, ...measures },
    targetBpm: 80,
    words: {
      situation: 'invented',
      verdict: 'Every note right. The thumb comes late going up to C, both times; the rest is even.',
      emphasis: 'late going up to C, both times',
      nextStep: 'right hand, only A♭–C–E♭–A♭–C, at 60. Bring the thumb under while 2 still holds E♭.',
      steps: [],
    },
  };
}
