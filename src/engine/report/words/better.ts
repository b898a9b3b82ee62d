import { isMeasured } from '../measures/index.ts';
import type { Figure, Measures } from '../types.ts';
import type { Scene } from './scene.ts';
import { faultCount } from './standing.ts';
import type { Bettered } from './types.ts';

/** The figure that a trouble of the last attempt was about. */
interface Trouble {
  readonly situations: readonly string[];
  readonly name: Bettered;
  readonly figure: (measures: Measures) => Figure;
  readonly digits: number;
}

/** So little is not heard as late at any but very fast tempi (Friberg & Sundberg 1995). */
const IN_TIME_MS = 10;

const TROUBLES: readonly Trouble[] = [
  {
    situations: ['crossing-late-both-ways', 'crossing-late-one-direction', 'crossing-late-one'],
    name: 'crossing',
    figure: worstCrossing,
    digits: 0,
  },
  {
    situations: ['uneven', 'uneven-in-pairs', 'nearly-even'],
    name: 'evenness',
    figure: (measures) => measures.evennessPercent,
    digits: 1,
  },
  {
    situations: ['late-at-the-turn'],
    name: 'turn',
    figure: (measures) => notBelowZero(measures.turnDeviationMs),
    digits: 0,
  },
  {
    situations: ['change-hesitates'],
    name: 'change',
    figure: (measures) => measures.changeHesitationRatio,
    digits: 1,
  },
  {
    situations: ['chords-spread'],
    name: 'spread',
    figure: (measures) => measures.chordSpreadMs,
    digits: 0,
  },
  {
    situations: ['drift'],
    name: 'drift',
    figure: (measures) =>
      isMeasured(measures.driftPercent)
        ? { ...measures.driftPercent, value: Math.abs(measures.driftPercent.value) }
        : measures.driftPercent,
    digits: 0,
  },
];

/** The latest of the crossings, as a figure; one that came early counts as in time. */
function worstCrossing(measures: Measures): Figure {
  const [first, ...rest] = measures.crossings;
  if (first === undefined) return { notMeasured: 'no crossing' };
  const worst = rest.reduce((a, b) => (b.delayMs > a.delayMs ? b : a), first);
  return { value: Math.max(0, worst.delayMs), plusMinus: worst.plusMinusMs };
}

function notBelowZero(figure: Figure): Figure {
  return isMeasured(figure) ? { ...figure, value: Math.max(0, figure.value) } : figure;
}

const NOTE_TROUBLES = [
  'same-place-again',
  'leading-note',
  'signature',
  'landed-off',
  'inner-note',
  'wrong-notes',
  'missed-notes',
  'slips',
  'repeats',
];

/** A change for the better, said by itself and after a sentence on the same trouble. */
export interface Improvement {
  readonly alone: string;
  readonly after: (sentence: string) => string;
}

/**
 * Clearly better than the last attempt in the trouble that it named, with both figures; null where it is not, or not
 * clearly. Clearly: by more than both ± together and by the criterion's share of the old figure.
 */
export function improvement(scene: Scene): Improvement | null {
  const before = scene.earlier.at(-1);
  if (before === undefined) return null;
  const { situation } = before.words;
  if (NOTE_TROUBLES.includes(situation)) {
    const [now, then] = [faultCount(scene.report), faultCount(before)];
    if (now > 0 || then === 0) return null;
    const said = scene.wording.everyNoteNow(then);
    return { alone: said, after: () => said };
  }
  const trouble = TROUBLES.find((one) => one.situations.includes(situation));
  if (trouble === undefined) return null;
  const [now, then] = [trouble.figure(scene.report.measures), trouble.figure(before.measures)];
  if (!isMeasured(now) || !isMeasured(then)) return null;
  const gain = then.value - now.value;
  const clear = gain > scene.criteria.sureBy * Math.hypot(now.plusMinus ?? 0, then.plusMinus ?? 0);
  if (!clear || gain <= scene.criteria.betterByShare * then.value) return null;
  const { wording } = scene;
  const [nowText, thenText] = [now.value, then.value].map((value) => wording.figure(value, trouble.digits));
  const { unit, say } = wording.bettered[trouble.name];
  const inTime = Math.round(now.value) <= IN_TIME_MS;
  return {
    alone: say(nowText!, thenText!, inTime),
    after: (sentence) =>
      wording.betterThanLast(sentence.includes(nowText! + unit) ? null : nowText! + unit, thenText! + unit),
  };
}

/** Whether two rows of the table speak of one trouble. */
export function sameTrouble(one: string, other: string): boolean {
  return TROUBLES.some(({ situations }) => situations.includes(one) && situations.includes(other));
}
