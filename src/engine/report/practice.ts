import * as v from 'valibot';
import { BPM, STEP, told } from '../base/shapes.ts';
import { INTENTION } from '../exercise/index.ts';
import { HANDS } from '../exercise/types.ts';

export const PRACTICE = told(
  'a practice set-up that the next step proposes: a stretch of steps of the whole exercise, a tempo, and where it can be judged what is meant',
  v.object({
    fromStep: STEP,
    toStep: STEP,
    tempoBpm: BPM,
    hands: v.exactOptional(told('who plays, where it is not who played', HANDS)),
    intention: v.exactOptional(INTENTION),
  }),
);
