import type { ExerciseChoice, Hands } from '../../src/engine/exercise/index.ts';
import { render } from './render.ts';
import type { HomeKnobs, Rendered } from './render.ts';
import { DB_PER_VELOCITY } from './student/perform.ts';

export const BOTH_TRIADS: ExerciseChoice = { key: 'G major', form: 'triads', hands: 'together', octaves: 1 };

const HOMES: Readonly<Record<'here' | 'elsewhere', Partial<HomeKnobs>>> = {
  here: { room: { decaySec: 0.7, directDb: 0 } },
  elsewhere: { room: { decaySec: 1.4, directDb: -6 }, phone: true },
};
/** the right hand against the left where both play */
const UPPER_DB = -10;

/** Triads at the development piano by one hand alone, or by both with the upper one so much softer that not all of its notes are sure. */
export function triadsBy(hands: Hands, home: keyof typeof HOMES = 'here'): Promise<Rendered> {
  const isBoth = hands === 'together';
  const velocity = isBoth ? 70 + UPPER_DB / 2 / DB_PER_VELOCITY : 60;
  return render({
    seed: 63,
    piano: 'dev',
    exercise: { ...BOTH_TRIADS, hands },
    student: { leftHandDb: isBoth ? -UPPER_DB : 0, velocity, chordSpreadMs: 4 },
    home: HOMES[home],
  });
}
