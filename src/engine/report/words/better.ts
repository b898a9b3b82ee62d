import { isMeasured } from '../measures/index.ts';
import type { Figure } from '../measures/index.ts';
import type { Measures } from '../types.ts';
import type { Scene } from './scene.ts';
import { inWords } from './spelling.ts';
import { faultCount } from './standing.ts';

/** The figure that a trouble of the last attempt was about, and how a better one is said. */
interface Trouble {
  readonly situations: readonly string[];
  readonly figure: (measures: Measures) => Figure;
  /** as a clause, with both figures */
  readonly say: (now: string, before: string) => string;
  readonly unit: string;
  readonly digits: number;
}

/** So little is not heard as late at any but very fast tempi (measures.md, audible). */
const IN_TIME_MS = 10;

const TROUBLES: readonly Trouble[] = [
  {
    situations: ['crossing-late-both-ways', 'crossing-late-one-direction', 'crossing-late-one'],
    figure: worstCrossing,
    say: (now, before) =>
      Number(now) <= IN_TIME_MS
        ? `the crossing is in time now, where it was ${before} ms late`
        : `the crossing is better, ${now} ms late where it was ${before}`,
    unit: ' ms',
    digits: 0,
  },
  {
    situations: ['uneven', 'uneven-in-pairs', 'nearly-even'],
    figure: (measures) => measures.evennessPercent,
    say: (now, before) => `it is more even than last time, ${now} % where it was ${before}`,
    unit: ' %',
    digits: 1,
  },
  {
    situations: ['late-at-the-turn'],
    figure: (measures) => notBelowZero(measures.turnDeviationMs),
    say: (now, before) =>
      Number(now) <= IN_TIME_MS
        ? `the turn is in time now, where it was ${before} ms late`
        : `the turn is better, ${now} ms late where it was ${before}`,
    unit: ' ms',
    digits: 0,
  },
  {
    situations: ['change-hesitates'],
    figure: (measures) => measures.changeHesitationRatio,
    say: (now, before) => `the change is better, ${now} times the others where it was ${before}`,
    unit: ' times the others',
    digits: 1,
  },
  {
    situations: ['chords-spread'],
    figure: (measures) => measures.chordSpreadMs,
    say: (now, before) => `the chords are closer, ${now} ms apart where they were ${before}`,
    unit: ' ms',
    digits: 0,
  },
  {
    situations: ['thumb-loud'],
    figure: (measures) => notBelowZero(measures.thumbAccentDb),
    say: (now, before) => `the thumb is lighter, ${now} dB above its neighbours where it was ${before}`,
    unit: ' dB',
    digits: 1,
  },
  {
    situations: ['ends-fade'],
    figure: (measures) => fallOf(measures.endsFadeDb),
    say: (now, before) => `it fades less, by ${now} dB where it was ${before}`,
    unit: ' dB',
    digits: 0,
  },
  {
    situations: ['detached'],
    figure: (measures) => fallOf(measures.touchMs),
    say: (now, before) => `the notes are closer, ${now} ms apart where they were ${before}`,
    unit: ' ms',
    digits: 0,
  },
  {
    situations: ['drift'],
    figure: (measures) =>
      isMeasured(measures.driftPercent)
        ? { ...measures.driftPercent, value: Math.abs(measures.driftPercent.value) }
        : measures.driftPercent,
    say: (now, before) => `it is steadier, ${now} % from first to last where it was ${before}`,
    unit: ' %',
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

function fallOf(figure: Figure): Figure {
  return isMeasured(figure) ? { ...figure, value: Math.max(0, -figure.value) } : figure;
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
    const said = `every note right now, where ${inWords(then)} ${then === 1 ? 'was' : 'were'} not last time`;
    return { alone: said, after: () => said };
  }
  const trouble = TROUBLES.find((one) => one.situations.includes(situation));
  if (trouble === undefined) return null;
  const [now, then] = [trouble.figure(scene.report.measures), trouble.figure(before.measures)];
  if (!isMeasured(now) || !isMeasured(then)) return null;
  const gain = then.value - now.value;
  const clear = gain > scene.criteria.sureBy * Math.hypot(now.plusMinus ?? 0, then.plusMinus ?? 0);
  if (!clear || gain <= scene.criteria.betterByShare * then.value) return null;
  const [nowText, thenText] = [now.value.toFixed(trouble.digits), then.value.toFixed(trouble.digits)];
  return {
    alone: trouble.say(nowText, thenText),
    after: (sentence) =>
      sentence.includes(nowText + trouble.unit)
        ? `better than last time, when it was ${thenText}${trouble.unit}`
        : `better than last time, ${nowText}${trouble.unit} where it was ${thenText}`,
  };
}

/** Whether two rows of the table speak of one trouble. */
export function sameTrouble(one: string, other: string): boolean {
  return TROUBLES.some(({ situations }) => situations.includes(one) && situations.includes(other));
}
