import type { Hand, Report } from '../../../engine/index.ts';
import { shown, withUnit } from '../../kit/figures.ts';
import { strings } from '../../language/index.ts';
import type { GraphFigure, GraphPoint } from '../../plots/graph/types.ts';
import type { PictureLimits } from '../../plots/pearls/types.ts';
import type { Places } from './places.ts';

/** Which of two sounds came first can be told from about 20 ms on (Hirsh 1959). */
const ORDER_MS = 20;

/** How far apart both hands fell, step by step; null where one hand plays. */
export function handsFigure(report: Report, places: Places, limits: PictureLimits): GraphFigure | null {
  const t = strings().detail.hands;
  const steps = report.measures.togetherness?.steps ?? [];
  if (steps.length === 0) return null;
  return {
    id: 'hands',
    title: t.title,
    meaning: t.meaning,
    definition: t.definition(withUnit(shown(limits.handsApartMs), 'ms')),
    unit: 'ms',
    decimals: 0,
    base: 0,
    signed: true,
    band: { from: -ORDER_MS, to: ORDER_MS, words: t.band },
    above: t.above,
    below: t.below,
    joined: false,
    points: steps.map(({ step, leftMinusRightMs }): GraphPoint => {
      const first = leftMinusRightMs < 0 ? 'left' : 'right';
      const say = first === 'left' ? t.leftFirst : t.rightFirst;
      return {
        step,
        spot: places.spotOf(step, first),
        value: leftMinusRightMs,
        name: places.nameOf(step),
        hand: null,
        look: Math.abs(leftMinusRightMs) > limits.handsApartMs,
        words: say(places.spokenOf(step), withUnit(shown(Math.abs(leftMinusRightMs)), 'ms')),
      };
    }),
  };
}

/** How far apart the notes of each chord fell; null where there are none. */
export function spreadFigure(report: Report, places: Places, limits: PictureLimits): GraphFigure | null {
  const t = strings().detail.spread;
  const chords = new Map<string, { step: number; hand: Hand; times: number[] }>();
  for (const { step, hand, verdict, timeSec } of report.notes) {
    if (step === null || hand === null || verdict === 'extra') continue;
    const key = `${step} ${hand}`;
    const chord = chords.get(key) ?? { step, hand, times: [] };
    chord.times.push(timeSec);
    chords.set(key, chord);
  }
  const all = [...chords.values()].filter(({ times }) => times.length > 1);
  if (all.length < 2) return null;
  const both = new Set(all.map(({ hand }) => hand)).size > 1;
  const points = all.map(({ step, hand, times }): GraphPoint => {
    const spreadMs = 1000 * (Math.max(...times) - Math.min(...times));
    return {
      step,
      spot: places.spotOf(step, hand),
      value: spreadMs,
      name: places.nameOf(step),
      hand: both ? hand : null,
      look: spreadMs > limits.chordSpreadMs,
      words: t.point(places.spokenOf(step, both ? hand : undefined), withUnit(shown(spreadMs), 'ms')),
    };
  });
  return {
    id: 'spread',
    title: t.title,
    meaning: t.meaning,
    definition: t.definition(withUnit(shown(limits.chordSpreadMs), 'ms')),
    unit: 'ms',
    decimals: 0,
    base: 0,
    signed: false,
    band: { from: 0, to: limits.chordSpreadMs, words: t.band },
    above: '',
    below: '',
    joined: false,
    points: points.sort((a, b) => a.step - b.step || (a.hand === 'left' ? -1 : 1)),
  };
}
