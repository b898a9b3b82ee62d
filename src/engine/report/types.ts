import type { ExerciseChoice, Form, Hand, Hands, MinorScale, Tongue } from '../exercise/index.ts';
import type { AudioFinding } from '../listen/index.ts';
import type { CourseRemark, ExtraKind } from '../match/index.ts';
import type { Criteria } from './criteria/index.ts';

/** What a report may be told besides what was heard. */
export interface ReportOptions {
  /** the tempo aimed at, beats a minute; null: none */
  readonly targetBpm: number | null;
  /** earlier reports of the same player, oldest first; those of other exercises are passed over */
  readonly earlier: readonly Report[];
  /** where a trouble begins; a teacher can change it */
  readonly criteria: Criteria;
  /** the language and the note names of the words; everything else of the report is the same in all */
  readonly tongue: Tongue;
}

/** A figure that could not be measured says why. */
export interface NotMeasured {
  readonly notMeasured: string;
}

/** A figure with its uncertainty (one standard deviation), both in the unit that the measure's name carries. */
export interface Estimate {
  readonly value: number;
  readonly plusMinus?: number;
}

/** The time from one step to the next (inter-onset interval). */
export interface IntervalDeviation {
  /** the step that the interval leads into */
  readonly step: number;
  readonly ioiMs: number;
  /** how far the note at its end is from its even place, ms (+ late) */
  readonly deviationMs: number;
  /** above the just-noticeable difference (Friberg & Sundberg 1995) */
  readonly audible: boolean;
}

/** How late the note of a crossing came. */
export interface CrossingDelay {
  readonly step: number;
  readonly hand: Hand;
  readonly kind: 'thumb-under' | 'over-thumb';
  readonly direction: 'up' | 'down';
  readonly delayMs: number;
  /** ± of delayMs from the listener's timing noise, one standard deviation */
  readonly plusMinusMs: number;
  /** IOI into the crossing / median IOI of its non-crossing neighbours */
  readonly ratio: number;
  /** later than the criterion allows, or clearly audible */
  readonly late: boolean;
}

/** One chord of one hand. */
export interface ChordStrike {
  readonly step: number;
  readonly hand: Hand;
  /** from its first key to its last, the listener's noise taken out, ms */
  readonly spreadMs: number;
  readonly lastFinger: number;
}

/** The way from one chord to the next. */
export interface ChordChange {
  /** the step that it leads into */
  readonly step: number;
  /** its IOI / median IOI of the other changes; over 1 it hesitates */
  readonly ratio: number;
  /** from the release of the last key to the first onset of the next chord, ms (negative: they overlap) */
  readonly gapMs: Estimate | NotMeasured;
}

/** How both hands fall together; both figures negative where the left comes first. */
export interface Togetherness {
  /** mean over the steps of the left hand's onset − the right hand's, ms: who leads */
  readonly leadMs: Estimate | NotMeasured;
  /** SD of the same over the steps, ms */
  readonly apartSdMs: Estimate | NotMeasured;
  readonly steps: readonly { readonly step: number; readonly leftMinusRightMs: number }[];
  /** mean level of the left hand − the right hand's, dB, as they arrive */
  readonly leftLouderDb: Estimate | NotMeasured;
}

/** Every measure of one hand; units in the names, definitions where each is computed. */
export interface Measures {
  readonly noteAccuracyPercent: Estimate | NotMeasured;
  readonly evennessPercent: Estimate | NotMeasured;
  readonly evennessMs: Estimate | NotMeasured;
  readonly evennessDriftRemovedPercent: Estimate | NotMeasured;
  /** evenness of the intervals that lead into no crossing */
  readonly evennessWithoutCrossingsPercent: Estimate | NotMeasured;
  readonly driftPercent: Estimate | NotMeasured;
  readonly npvi: Estimate | NotMeasured;
  readonly intervals: readonly IntervalDeviation[];
  readonly turnDeviationMs: Estimate | NotMeasured;
  readonly firstIntervalDeviationMs: Estimate | NotMeasured;
  readonly lastIntervalDeviationMs: Estimate | NotMeasured;
  readonly crossings: readonly CrossingDelay[];
  readonly crossingDelayMs: Estimate | NotMeasured;
  readonly loudnessEvennessDb: Estimate | NotMeasured;
  readonly thumbAccentDb: Estimate | NotMeasured;
  /** level of the softer end against the middle, dB (negative: it fades) */
  readonly endsFadeDb: Estimate | NotMeasured;
  readonly tempoBpm: Estimate | NotMeasured;
  /** median overlap (+) or gap (−) between consecutive notes, ms */
  readonly touchMs: Estimate | NotMeasured;
  /** median spread of chords, ms */
  readonly chordSpreadMs: Estimate | NotMeasured;
  /** every chord of which two keys or more were heard */
  readonly chords: readonly ChordStrike[];
  /** mean level of the inner notes of chords − that of the outer notes of the same chords, dB */
  readonly innerBalanceDb: Estimate | NotMeasured;
  /** only of hands together */
  readonly togetherness?: Togetherness;
  /** worst change of chord against the median change, ratio of IOIs */
  readonly changeHesitationRatio: Estimate | NotMeasured;
  /** every change of chord that was heard whole */
  readonly changes: readonly ChordChange[];
  /** median silence (+) or overlap (−) from one chord to the next, ms */
  readonly changeGapMs: Estimate | NotMeasured;
}

/** A note as it was played: when, which key, how loud, and what it answers in the exercise. */
export interface ReportedNote {
  readonly timeSec: number;
  readonly releaseSec: number | null;
  readonly midi: number;
  /** spelt for the key where it belongs to it, e.g. "G#4" */
  readonly name: string;
  readonly levelDb: number;
  readonly confidence: number;
  readonly hand: Hand | null;
  readonly step: number | null;
  readonly finger: number | null;
  readonly verdict: 'correct' | 'wrong' | 'extra';
  readonly wantedMidi?: number;
  readonly wantedName?: string;
  readonly extraKind?: ExtraKind;
}

/** What is said to the player: never more than two things at once. */
export interface Words {
  /** which row of the table of situations spoke, for tests and for the journal */
  readonly situation: string;
  /** one sentence, e.g. "Every note right. The thumb comes late going up to C, both times; the rest is even." */
  readonly verdict: string;
  /** the part of `verdict` to underline, '' for none */
  readonly emphasis: string;
  /** one concrete thing to do next; reads on after "Next:", so it begins in lower case unless with a name */
  readonly nextStep: string;
  /** steps that the verdict speaks of, to be marked in the picture */
  readonly steps: readonly number[];
  /** a practice set-up that the next step proposes: a stretch of steps and a tempo */
  readonly practice?: { readonly fromStep: number; readonly toStep: number; readonly tempoBpm: number };
}

/** One attempt, told. The JSON contract of the command line. */
export interface Report {
  readonly format: 'evenfall-report';
  readonly version: 1;
  readonly exercise: {
    readonly key: string;
    readonly form: Form;
    readonly hands: Hands;
    readonly octaves: number;
    readonly minorScale?: MinorScale;
    readonly octaveShift: number;
    readonly title: string;
  };
  readonly audio: {
    readonly durationSec: number;
    readonly sampleRateHz: number;
    readonly findings: readonly AudioFinding[];
  };
  readonly tuning: { readonly a4Hz: number; readonly cents: number; readonly sdCents: number };
  /** every note of the run, in order of time */
  readonly notes: readonly ReportedNote[];
  readonly missed: readonly {
    readonly step: number;
    readonly midi: number;
    readonly name: string;
    readonly hand: Hand;
  }[];
  readonly unsure: readonly {
    readonly step: number;
    readonly midi: number;
    readonly hand: Hand;
    readonly reason: string;
    /** a common tone of two chords, perhaps held over: nothing is wrong with it */
    readonly heldOver?: true;
  }[];
  readonly remarks: readonly CourseRemark[];
  /** another exercise of the set that explains the notes clearly better */
  readonly betterFit?: ExerciseChoice;
  /** the tempo aimed at, beats a minute; null: none */
  readonly targetBpm: number | null;
  readonly measures: Measures;
  readonly words: Words;
}
