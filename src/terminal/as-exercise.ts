import { LAY_OUT_DEFAULTS } from '../engine/index.ts';
import type { LayOutOptions } from '../engine/index.ts';
import { usageProblem } from './problems.ts';
import { readNumber, readWord } from './values.ts';

/** How what was played once is laid out as a passage. */
export const AS_EXERCISE_OPTIONS = {
  'as-exercise': { type: 'string' },
  bpm: { type: 'string' },
  time: { type: 'string' },
  hands: { type: 'string' },
  title: { type: 'string' },
} as const;
type Values = { readonly [Option in keyof typeof AS_EXERCISE_OPTIONS]?: string | undefined };

/** Where it is written to ('-': standard output), and how it is laid out. */
export interface AsExercise {
  readonly file: string;
  readonly layOut: LayOutOptions;
}

const ALL_HANDS = ['left', 'right', 'together'] as const;
const UNITS = [2, 4, 8, 16] as const;
/** Somebody who plays a passage once plays it slowly. */
const BPM = { least: 20, most: 120 };

/** Null: it is not asked for. Throws Problem (wrong usage). */
export function readAsExercise(values: Values): AsExercise | null {
  const { 'as-exercise': file, bpm, time, hands, title } = values;
  if (file === undefined) {
    const alone = (['bpm', 'time', 'hands', 'title'] as const).find((option) => values[option] !== undefined);
    if (alone !== undefined) throw usageProblem((t) => t.needsAsExercise(`--${alone}`));
    return null;
  }
  return {
    file,
    layOut: {
      title: title ?? '',
      bpm:
        bpm === 'free'
          ? null
          : bpm === undefined
            ? LAY_OUT_DEFAULTS.bpm
            : readNumber('bpm', bpm, BPM.least, BPM.most),
      time: time === undefined ? LAY_OUT_DEFAULTS.time : readTime(time),
      hands: hands === undefined ? LAY_OUT_DEFAULTS.hands : readWord('hands', hands, ALL_HANDS),
    },
  };
}

/** "3/4" */
function readTime(text: string): LayOutOptions['time'] {
  const [, count, below] = /^(\d{1,2})\/(\d{1,2})$/.exec(text) ?? [];
  const unit = UNITS.find((one) => one === Number(below));
  if (unit === undefined || Number(count) < 1 || Number(count) > 16)
    throw usageProblem((t) => t.noTime(text));
  return { count: Number(count), unit };
}
