import { isMeasured } from '../measures/index.ts';
import type { Figure, Measures } from '../types.ts';
import { blamesNotes } from './rules/index.ts';
import type { Improved } from './said/index.ts';
import type { Scene } from './scene.ts';
import { faultCount } from './standing.ts';

/** The figure that a trouble of the last attempt was about. */
interface Trouble {
  readonly situations: readonly string[];
  readonly figure: Exclude<Improved['figure'], 'notes'>;
  readonly of: (measures: Measures) => Figure;
}

const TROUBLES: readonly Trouble[] = [
  {
    // The last of these names is from version 0.1, whose reports are compared with too.
    situations: [
      'crossing-late-both-ways',
      'crossing-late-one-direction',
      'crossing-late',
      'crossing-late-one',
    ],
    figure: 'crossing',
    of: worstCrossing,
  },
  {
    situations: ['uneven', 'uneven-in-pairs', 'nearly-even'],
    figure: 'evenness',
    of: (measures) => measures.evennessPercent,
  },
  {
    situations: ['late-at-the-turn'],
    figure: 'turn',
    of: (measures) => notBelowZero(measures.turnDeviationMs),
  },
  { situations: ['change-hesitates'], figure: 'change', of: (measures) => measures.changeHesitationRatio },
  { situations: ['chords-spread'], figure: 'spread', of: (measures) => measures.chordSpreadMs },
  {
    situations: ['drift'],
    figure: 'drift',
    of: ({ driftPercent }) =>
      isMeasured(driftPercent) ? { ...driftPercent, value: Math.abs(driftPercent.value) } : driftPercent,
  },
];

/** The latest of the crossings, as a figure; one that came early counts as in time. */
function worstCrossing(measures: Measures): Figure {
  const [first, ...rest] = measures.crossings;
  if (first === undefined) return measures.crossingDelayMs;
  const worst = rest.reduce((a, b) => (b.delayMs > a.delayMs ? b : a), first);
  return { value: Math.max(0, worst.delayMs), plusMinus: worst.plusMinusMs };
}

function notBelowZero(figure: Figure): Figure {
  return isMeasured(figure) ? { ...figure, value: Math.max(0, figure.value) } : figure;
}

/**
 * Clearly better than the last attempt in the trouble that it named, with both figures; null where it is not, or not
 * clearly. Clearly: by more than both ± together make sure of, and by the criterion's share of the old figure.
 */
export function improvement(scene: Scene): Improved | null {
  const before = scene.earlier.at(-1);
  if (before === undefined) return null;
  const { situation } = before.words;
  if (blamesNotes(situation)) {
    const [now, then] = [faultCount(scene.report), faultCount(before)];
    return now > 0 || then === 0 ? null : { figure: 'notes', before: then };
  }
  const trouble = TROUBLES.find((one) => one.situations.includes(situation));
  if (trouble === undefined) return null;
  const [now, then] = [trouble.of(scene.report.measures), trouble.of(before.measures)];
  if (!isMeasured(now) || !isMeasured(then)) return null;
  const gain = then.value - now.value;
  const clear = gain > scene.criteria.sureBy * Math.hypot(now.plusMinus ?? 0, then.plusMinus ?? 0);
  if (!clear || gain <= scene.criteria.betterByShare * then.value) return null;
  return { figure: trouble.figure, now: now.value, before: then.value };
}

/** Whether two rows of the table speak of one trouble. */
export function sameTrouble(one: string, other: string): boolean {
  return TROUBLES.some(({ situations }) => situations.includes(one) && situations.includes(other));
}
