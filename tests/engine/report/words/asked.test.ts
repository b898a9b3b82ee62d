import { expect, it } from 'vitest';
import { ENGLISH, tellIntention } from '../../../../src/engine/index.ts';
import type { ExerciseChoice, Intention } from '../../../../src/engine/index.ts';

const scale: ExerciseChoice = { key: 'F major', form: 'scale', hands: 'left', octaves: 2 };
const chords: ExerciseChoice = { key: 'C major', form: 'progression', hands: 'right', octaves: 1 };
const GERMAN = { language: 'de', naming: 'german' } as const;
const twice = { times: 2, rhythm: 'even' } as const;

it.each<readonly [string, ExerciseChoice, Intention, string, string]>([
  [
    'some notes',
    scale,
    { ...twice, stretch: { fromStep: 2, toStep: 5 } },
    'only A–B♭–C–D, twice in a row',
    'nur A–B–C–D, zweimal hintereinander',
  ],
  [
    'more than are named one by one',
    scale,
    { times: 1, rhythm: 'short-long', stretch: { fromStep: 0, toStep: 14 } },
    'only from F up to F (15 notes), short–long',
    'nur von F aufwärts bis F (15 Töne), kurz–lang',
  ],
  [
    'chords',
    chords,
    { ...twice, stretch: { fromStep: 2, toStep: 3 } },
    'only I–V7, twice in a row',
    'nur I–V7, zweimal hintereinander',
  ],
  [
    'all of it',
    scale,
    { ...twice, touch: 'staccato' },
    'staccato, twice in a row',
    'staccato, zweimal hintereinander',
  ],
  [
    'a stretch that it does not have',
    scale,
    { ...twice, stretch: { fromStep: 2, toStep: 90 } },
    'even, twice in a row',
    'gleichmäßig, zweimal hintereinander',
  ],
])('how %s is to be practised names the part', (_, choice, intention, english, german) => {
  expect(tellIntention(choice, intention, ENGLISH)).toBe(english);
  expect(tellIntention(choice, intention, GERMAN)).toBe(german);
});
