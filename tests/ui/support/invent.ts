import { buildExercise } from '../../../src/engine/index.ts';
import type {
  CrossingDelay,
  Exercise,
  ExerciseChoice,
  ExtraKind,
  Hand,
  Report,
  ReportedNote,
  Words,
} from '../../../src/engine/index.ts';

/** An attempt to be invented: an even one, with what went otherwise. Steps count from 0. */
export interface Invention {
  readonly choice: ExerciseChoice;
  readonly tempoBpm?: number;
  /** ms by which the interval into a step is longer; everything after it moves too */
  readonly late?: Readonly<Record<number, number>>;
  /** ms by which the left hand comes before (−) or after (+) the right at a step */
  readonly leftOffsetMs?: Readonly<Record<number, number>>;
  /** ms between the notes of a chord at a step, from the lowest up */
  readonly spreadMs?: Readonly<Record<number, number>>;
  readonly wrong?: readonly { step: number; hand: Hand; note?: number; midi: number; name: string }[];
  readonly missed?: readonly { step: number; hand: Hand; note?: number }[];
  readonly unsure?: readonly { step: number; hand: Hand }[];
  readonly extra?: readonly {
    step: number;
    hand: Hand;
    afterMs: number;
    midi: number;
    name: string;
    kind: ExtraKind;
  }[];
  readonly levelDb?: Readonly<Record<number, number>>;
  readonly words?: Partial<Words>;
}

const notMeasured = { notMeasured: 'This invented attempt has no figure for it.' };

/** Somebody chose the hand. */
const CHOSEN = { left: { left: 1, right: 0 }, right: { left: 0, right: 1 } } as const;

/** Invention → exercise and report, all from closed rules: nothing here was heard. */
export function invent(made: Invention): { exercise: Exercise; report: Report } {
  const exercise = buildExercise(made.choice);
  const tempoBpm = made.tempoBpm ?? 77;
  let lateSec = 0;
  const notes: ReportedNote[] = [];
  const missed: Report['missed'][number][] = [];
  const unsure: Report['unsure'][number][] = [];
  for (const { step, beat, notes: expected } of exercise.steps) {
    lateSec += (made.late?.[step] ?? 0) / 1000;
    const places = new Map<Hand, number>();
    for (const want of expected) {
      const place = places.get(want.hand) ?? 0;
      places.set(want.hand, place + 1);
      const here = <T extends { step: number; hand: Hand; note?: number }>(one: T): boolean =>
        one.step === step && one.hand === want.hand && (one.note ?? 0) === place;
      const timeSec =
        0.8 +
        (beat * 60) / tempoBpm +
        lateSec +
        Math.sin(step * 2.3 + place) * 0.006 +
        (want.hand === 'left' ? (made.leftOffsetMs?.[step] ?? 0) / 1000 : 0) +
        ((made.spreadMs?.[step] ?? 8) / 1000) * (place / 2);
      if (made.missed?.some(here)) {
        missed.push({ step, midi: want.midi, name: want.name, hand: want.hand });
        continue;
      }
      if (made.unsure?.some(here)) {
        unsure.push({ step, midi: want.midi, hand: want.hand, reason: 'The other hand covers it.' });
        continue;
      }
      const wrong = made.wrong?.find(here);
      notes.push({
        timeSec,
        releaseSec: timeSec + 0.4,
        midi: wrong?.midi ?? want.midi,
        name: wrong?.name ?? want.name,
        levelDb: -20 + (made.levelDb?.[step] ?? Math.sin(step * 1.7) * 1.6),
        confidence: 0.97,
        hand: want.hand,
        step,
        finger: want.finger,
        ...(wrong
          ? { verdict: 'wrong' as const, wantedMidi: want.midi, wantedName: want.name }
          : { verdict: 'correct' as const }),
      });
    }
    for (const extra of made.extra?.filter((one) => one.step === step) ?? [])
      notes.push({
        timeSec: 0.8 + (beat * 60) / tempoBpm + lateSec + extra.afterMs / 1000,
        releaseSec: null,
        midi: extra.midi,
        name: extra.name,
        levelDb: -26,
        confidence: 0.9,
        hand: extra.hand,
        step,
        finger: null,
        verdict: 'extra',
        extraKind: extra.kind,
      });
  }
  const crossings = exercise.steps.flatMap(({ step, crossings: here }) =>
    here.map((crossing): CrossingDelay => ({
      ...crossing,
      step,
      plusMinusMs: 4,
      delayMs: made.late?.[step] ?? Math.round(Math.sin(step) * 9),
      ratio: 1 + (made.late?.[step] ?? 5) / 390,
      late: (made.late?.[step] ?? 0) > 40,
    })),
  );
  notes.sort((a, b) => a.timeSec - b.timeSec);
  const report: Report = {
    format: 'evenfall-report',
    version: 1,
    exercise: {
      ...made.choice,
      octaveShift: 0,
      ...(made.choice.hands !== 'together' && { handLikelihood: CHOSEN[made.choice.hands] }),
      title: exercise.title,
    },
    audio: { durationSec: (notes.at(-1)?.timeSec ?? 0) + 2, sampleRateHz: 48_000, findings: [] },
    tuning: { a4Hz: 437.2, cents: -11, sdCents: 1.5 },
    notes,
    missed,
    unsure,
    remarks: [],
    targetBpm: 80,
    measures: {
      noteAccuracyPercent: { value: 100 },
      evennessPercent: { value: 9.42, plusMinus: 0.41 },
      evennessMs: { value: 36.2, plusMinus: 1.6 },
      evennessDriftRemovedPercent: { value: 9.1, plusMinus: 0.4 },
      evennessWithoutCrossingsPercent: { value: 4.12, plusMinus: 0.4 },
      driftPercent: { value: 1.3, plusMinus: 1.8 },
      npvi: { value: 11.2 },
      intervals: exercise.steps.slice(1).map(({ step, beat }) => ({
        step,
        ioiMs: ((beat - exercise.steps[step - 1]!.beat) * 60_000) / tempoBpm + (made.late?.[step] ?? 0),
        deviationMs: made.late?.[step] ?? 0,
        audible: (made.late?.[step] ?? 0) > 10,
      })),
      turnDeviationMs: { value: 4, plusMinus: 3 },
      firstIntervalDeviationMs: { value: 12, plusMinus: 3 },
      lastIntervalDeviationMs: { value: 18, plusMinus: 3 },
      crossings,
      crossingDelayMs: crossings.length > 0 ? { value: 48, plusMinus: 4 } : notMeasured,
      loudnessEvennessDb: { value: 1.83, plusMinus: 0.2 },
      thumbAccentDb: { value: 1.1, plusMinus: 0.4 },
      endsFadeDb: { value: -2.1, plusMinus: 0.5 },
      ...(made.choice.hands === 'together' && { togetherness: together(exercise, made) }),
      tempoBpm: { value: tempoBpm, plusMinus: 0.4 },
      touchMs: { value: 22, plusMinus: 8 },
      chordSpreadMs: notMeasured,
      chords: [],
      innerBalanceDb: notMeasured,
      changes: [],
      changeGapMs: notMeasured,
      changeHesitationRatio: notMeasured,
    },
    words: {
      situation: 'invented',
      verdict: 'Every note right, and even.',
      emphasis: '',
      nextStep: 'The same again.',
      steps: [],
      ...made.words,
    },
  };
  return { exercise, report };
}

function together(exercise: Exercise, made: Invention): NonNullable<Report['measures']['togetherness']> {
  const steps = exercise.steps.map(({ step }) => ({
    step,
    leftMinusRightMs: made.leftOffsetMs?.[step] ?? Math.round(Math.sin(step * 1.3) * 6),
  }));
  return {
    leadMs: { value: -4, plusMinus: 2 },
    apartSdMs: { value: 18, plusMinus: 2 },
    leftLouderDb: { value: -1.2, plusMinus: 0.4 },
    steps,
  };
}

/** Attempts of one hand and of both. All invented. */
export const INVENTED = {
  lateThumb: {
    choice: { key: 'Ab major', form: 'arpeggio', hands: 'right', octaves: 2 },
    late: { 1: 92, 4: 84 },
    levelDb: { 1: 1.2, 4: 1.9, 6: 1.4, 9: -1.4, 10: -1.2, 12: -1.6 },
    words: {
      verdict: 'Every note right. The thumb comes late going up to C, both times; the rest is even.',
      emphasis: 'going up to C, both times',
      nextStep: 'Right hand, only A♭–C–E♭–A♭–C, at 60. Bring the thumb under while 2 still holds E♭.',
      steps: [1, 4],
      practice: { fromStep: 0, toStep: 4, tempoBpm: 60 },
    },
  },
  together: {
    choice: { key: 'D minor', form: 'arpeggio', hands: 'together', octaves: 1 },
    tempoBpm: 60,
    wrong: [{ step: 5, hand: 'left', midi: 52, name: 'E3' }],
    missed: [{ step: 4, hand: 'right' }],
    extra: [{ step: 5, hand: 'right', afterMs: 55, midi: 67, name: 'G4', kind: 'slip' }],
    leftOffsetMs: { 5: -45, 6: -50 },
    words: {
      verdict:
        'One slip in the left hand, one note missing in the right. The hands drift apart after the turn: the left comes 45 ms early.',
      emphasis: 'after the turn',
      steps: [5, 6],
    },
  },
  progression: {
    choice: { key: 'E major', form: 'progression', hands: 'right', octaves: 1 },
    tempoBpm: 60,
    spreadMs: { 1: 62 },
    late: { 3: 310 },
    wrong: [{ step: 3, hand: 'right', note: 0, midi: 62, name: 'D4' }],
    missed: [{ step: 1, hand: 'right', note: 1 }],
    words: {
      verdict: 'D natural for D♯ in the V7; the change to it takes half as long again as the others.',
      emphasis: 'D natural for D♯',
      steps: [3],
    },
  },
  togetherScale: {
    choice: { key: 'G minor', form: 'scale', hands: 'together', octaves: 2 },
    tempoBpm: 84,
    late: { 3: 70 },
    leftOffsetMs: { 8: 48, 9: -20, 16: -62 },
    missed: [{ step: 20, hand: 'left' }],
    wrong: [{ step: 12, hand: 'right', midi: 76, name: 'E5' }],
    unsure: [{ step: 24, hand: 'right' }],
    extra: [
      { step: 5, hand: 'left', afterMs: 40, midi: 51, name: 'Eb3', kind: 'slip' },
      { step: 22, hand: 'right', afterMs: 150, midi: 58, name: 'Bb3', kind: 'repeat' },
    ],
    words: { verdict: 'The hands come apart at the turn.', emphasis: 'at the turn', steps: [8, 16] },
  },
  togetherProgression: {
    choice: { key: 'E minor', form: 'progression', hands: 'together', octaves: 1 },
    tempoBpm: 56,
    spreadMs: { 2: 70 },
    leftOffsetMs: { 3: 60 },
    wrong: [{ step: 3, hand: 'left', note: 0, midi: 50, name: 'D3' }],
    missed: [{ step: 1, hand: 'right', note: 1 }],
    words: { verdict: 'D natural for D♯ in the left hand’s V7.', emphasis: 'D natural for D♯', steps: [3] },
  },
  longScale: {
    choice: { key: 'B major', form: 'scale', hands: 'right', octaves: 4 },
    tempoBpm: 92,
    late: { 3: 60, 24: 1900, 40: 45 },
    missed: [{ step: 10, hand: 'right' }],
    wrong: [{ step: 17, hand: 'right', midi: 76, name: 'E5' }],
    extra: [{ step: 30, hand: 'right', afterMs: 80, midi: 99, name: 'D#7', kind: 'repeat' }],
    unsure: [{ step: 28, hand: 'right' }],
    words: {
      verdict: 'One note missed, one wrong. You stopped before the top.',
      emphasis: 'stopped before the top',
      steps: [24],
    },
  },
} as const satisfies Readonly<Record<string, Invention>>;
