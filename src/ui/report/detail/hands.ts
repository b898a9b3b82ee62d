import type { Hand, Report } from '../../../engine/index.ts';
import { shown, withUnit } from '../../kit/figures.ts';
import type { GraphFigure, GraphPoint } from '../../plots/graph/types.ts';
import type { PictureLimits } from '../../plots/pearls/types.ts';
import type { Places } from './places.ts';

/** Which of two sounds came first can be told from about 20 ms on (Hirsh 1959). */
const ORDER_MS = 20;

/** How far apart both hands fell, step by step; null where one hand plays. */
export function handsFigure(report: Report, places: Places, limits: PictureLimits): GraphFigure | null {
  const steps = report.measures.togetherness?.steps ?? [];
  if (steps.length === 0) return null;
  return {
    id: 'hands',
    title: 'Hands apart, step by step',
    meaning: 'Which hand comes first and by how much. In the grey band nobody can tell.',
    definition:
      'Mean onset of the left hand’s notes less that of the right hand’s. Which of two sounds came first can be told from about ' +
      `${withUnit(String(ORDER_MS), 'ms')} on (Hirsh 1959); more than ${withUnit(shown(limits.handsApartMs), 'ms')} is marked. A louder key arrives some ` +
      `${withUnit('20 to 30', 'ms')} earlier by itself (Goebl 2001).`,
    unit: 'ms',
    decimals: 0,
    base: 0,
    signed: true,
    band: { from: -ORDER_MS, to: ORDER_MS, words: 'not to be told' },
    above: 'right first',
    below: 'left first',
    joined: false,
    points: steps.map(({ step, leftMinusRightMs }): GraphPoint => {
      const first = leftMinusRightMs < 0 ? 'left' : 'right';
      return {
        step,
        spot: places.spotOf(step, first),
        value: leftMinusRightMs,
        name: places.nameOf(step),
        hand: null,
        look: Math.abs(leftMinusRightMs) > limits.handsApartMs,
        words: `${places.spokenOf(step)}: the ${first} hand first by ${withUnit(shown(Math.abs(leftMinusRightMs)), 'ms')}`,
      };
    }),
  };
}

/** How far apart the notes of each chord fell; null where there are none. */
export function spreadFigure(report: Report, places: Places, limits: PictureLimits): GraphFigure | null {
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
      words: `${places.spokenOf(step, both ? hand : undefined)}: ${withUnit(shown(spreadMs), 'ms')} from first to last note`,
    };
  });
  return {
    id: 'spread',
    title: 'Chords struck as one',
    meaning: 'How long each chord takes from its first note to its last. Within the grey band it sounds as one.',
    definition:
      'Last onset less first onset within one hand, as heard; the listening’s own error adds a few milliseconds to each. The ' +
      `grey band ends at ${withUnit(shown(limits.chordSpreadMs), 'ms')}: common practice, no source.`,
    unit: 'ms',
    decimals: 0,
    base: 0,
    signed: false,
    band: { from: 0, to: limits.chordSpreadMs, words: 'as one' },
    above: 'spread',
    below: '',
    joined: false,
    points: points.sort((a, b) => a.step - b.step || (a.hand === 'left' ? -1 : 1)),
  };
}
