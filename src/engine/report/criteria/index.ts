import type { Touch } from '../../exercise/index.ts';

/**
 * Every bound at which the report calls something a trouble, in one place. All are defaults that a teacher can change; where
 * no source is named they are common practice, no source.
 */
export interface Criteria {
  /** evenness at most this is even enough to be ready */
  readonly evennessPercent: number;
  /** … and over this the whole is uneven */
  readonly unevenPercent: number;
  /** both for steps of so many ms; at others they follow what is noticed there (`evenAt`); null: the same at all */
  readonly evennessStepMs: number | null;
  /** a crossing later than this share of its interval is late */
  readonly crossingShareOfInterval: number;
  /** … or clearly audible: over this many just-noticeable differences and this many SDs of the other intervals */
  readonly clearlyAudibleJnds: number;
  readonly clearlyAudibleSds: number;
  /** the interval out of the turn is late by over this share */
  readonly turnShareOfInterval: number;
  /** change of the interval from first to last */
  readonly driftPercent: number;
  /** a chord change over this many times the median change hesitates */
  readonly changeRatio: number;
  readonly chordSpreadMs: number;
  /** the same finger is last in at least this share of spread chords */
  readonly sameFingerShare: number;
  /** the inner notes of chords are too soft when so much softer than the outer ones, dB */
  readonly innerSofterDb: number;
  /** hands within this are together enough to be ready */
  readonly handsApartMs: number;
  /** … and one that leads by over this is told */
  readonly handsLeadMs: number;
  /** … as are hands that scatter by over this */
  readonly handsScatterMs: number;
  /** of the lead of a hand that is louder by over `louderHandDb`, so much is its loudness's doing and no fault */
  readonly leadOfLouderMs: number;
  readonly louderHandDb: number;
  /** pairs limp when every other interval is longer by over this share */
  readonly limpingShare: number;
  /** hands together are much worse when over this many times the worse single hand, at a tempo within `sameTempoShare` of it */
  readonly togetherWorseTimes: number;
  readonly sameTempoShare: number;
  /** so probable must it be, by a figure's own error, that its bound is passed, before a word is said about it */
  readonly sure: number;
  /** how many ± of both a figure must have moved by to be called better */
  readonly sureBy: number;
  /** in pairs is what has every other interval longer in at least this share of them */
  readonly pairsShare: number;
  /** a figure that fell by this share of itself, and by more than its ±, is clearly better */
  readonly betterByShare: number;
  /** this share of the notes may be left unsure and the attempt still be at the criterion */
  readonly unsureShare: number;
  /** attempts in a row at the criterion that make an exercise ready */
  readonly readyInARow: number;
  /** … where they lie on so many days of the calendar at least */
  readonly readyDays: number;
  /** the least tempo at which the exercise is ready, beats a minute; null: any will do */
  readonly leastBpm: number | null;
  /** … the touch that it is to have there, where it was heard; null: any */
  readonly touch: Touch | null;
  /** … and how uneven its loudness may be at most, dB, where this piano's keys are known; null: any */
  readonly loudnessDb: number | null;
  /** tempo under the target by no more than this share counts as at the target; a metronome's own steps are 3–4 % */
  readonly tempoShare: number;
}

/** The bounds that hold where nobody has set others. */
export const DEFAULT_CRITERIA: Criteria = {
  evennessPercent: 8,
  unevenPercent: 12,
  evennessStepMs: 140, // seven notes a second
  crossingShareOfInterval: 0.25,
  clearlyAudibleJnds: 4,
  clearlyAudibleSds: 4.5, // at 3.5 two innocent attempts in a hundred had a crossing late by chance (10 ms of scatter), at 4.5 none in 180
  turnShareOfInterval: 0.25,
  driftPercent: 6,
  changeRatio: 1.5,
  chordSpreadMs: 40,
  sameFingerShare: 0.7,
  innerSofterDb: 8,
  handsApartMs: 40,
  handsLeadMs: 35,
  handsScatterMs: 30, // from here on every other step lies over 20 ms apart, so that its order is heard (Hirsh 1959): 20 : 0.674
  leadOfLouderMs: 25, // a louder key arrives 20–30 ms earlier (Goebl 2001)
  louderHandDb: 3,
  limpingShare: 0.15,
  togetherWorseTimes: 1.5,
  sameTempoShare: 0.15,
  sure: 0.99,
  sureBy: 2.33, // the same: a one-sided 99 % of a Gaussian
  pairsShare: 0.8,
  betterByShare: 0.25,
  unsureShare: 0.1,
  readyInARow: 3,
  readyDays: 2, // what is recalled after a night is learnt, what only goes well at once may not be (Simmons 2012, from memory)
  leastBpm: null,
  touch: null,
  loudnessDb: null,
  tempoShare: 0.03,
};

/**
 * Just-noticeable difference of one interval in an even sequence, ms: 6 ms for IOI under 240 ms, 2.5 % of the IOI above
 * (Friberg & Sundberg 1995).
 */
export function justNoticeableMs(ioiMs: number): number {
  return ioiMs < 240 ? 6 : 0.025 * ioiMs;
}

/**
 * What is just noticed of an interval's displacement is 6 ms in fast sequences and 2.5 % of slow ones (Friberg & Sundberg 1995);
 * between them this bends smoothly. As a share of the interval.
 */
function noticedShare(stepMs: number): number {
  return Math.hypot(justNoticeableMs(0), justNoticeableMs(1000) * (stepMs / 1000)) / stepMs;
}

/**
 * Criteria → the same with the bounds of evenness as they are for steps of so many ms: always as many times what is just noticed
 * there. `stepMs` null: not known, so the bounds stay.
 *
 * By default 1.6 times: 4.3 % (28 ms) at 1.5 notes a second, 5.6 % at four, 8 % (11 ms) at seven, 11 to 14 % at ten to fourteen.
 * Trained pianists' scales vary by 8 to 10 ms at seven notes a second or five (memory, medium confidence), and tapping by 2 to
 * 4 % of slow intervals beside some 10 ms of the hand's own (Wing & Kristofferson 1973; Repp 2005; both memory): one fixed share
 * lets 30 ms pass at slow tempi and refuses 6 ms at fast ones.
 */
export function evenAt(criteria: Criteria, stepMs: number | null): Criteria {
  const { evennessPercent, unevenPercent, evennessStepMs } = criteria;
  if (evennessStepMs === null || stepMs === null) return criteria;
  const times = noticedShare(stepMs) / noticedShare(evennessStepMs);
  return {
    ...criteria,
    evennessPercent: evennessPercent * times,
    unevenPercent: unevenPercent * times,
    evennessStepMs: stepMs,
  };
}

/**
 * Of the time to the next note a short note leaves so much silent: staccato some 60 %, notes simply detached some 25 % (Bresin & Battel
 * 2000, memory), so that between them lie these; a gap under a tenth is not heard as one.
 */
const SHORT_SHARE = 0.4;
const APART_SHARE = 0.1;

/** A figure with its ±, one standard deviation. */
interface Told {
  readonly value: number;
  readonly plusMinus?: number;
}

/** Something against a bound: it is so, surely not so, or that cannot be told. */
export type Outcome = 'so' | 'not-so' | 'untold';

/** What was to lie over a bound: it does, surely it does not, or that cannot be told. */
export function outcomeOf({ value, plusMinus = 0 }: Told, bound: number, sureBy: number): Outcome {
  if (value >= bound) return 'so';
  return value + sureBy * plusMinus < bound ? 'not-so' : 'untold';
}

/** The overlap (+) or gap (−) that was heard from key to key, ms, against the usual time from note to note → whether it is the touch meant. */
export function touchOutcome(meant: Touch, overlapMs: Told, ioiMs: number, sureBy: number): Outcome {
  if (meant === 'legato') return outcomeOf(overlapMs, -APART_SHARE * ioiMs, sureBy);
  const gapMs = { ...overlapMs, value: -overlapMs.value };
  return outcomeOf(gapMs, (meant === 'staccato' ? SHORT_SHARE : APART_SHARE) * ioiMs, sureBy);
}
