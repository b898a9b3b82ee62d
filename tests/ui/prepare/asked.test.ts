import { afterEach, expect, it } from 'vitest';
import { Plan } from '../../../src/ui/attempt/plan.svelte.ts';
import { speaking } from '../../../src/ui/language/index.ts';
import { askedOf } from '../../../src/ui/prepare/asked.ts';

afterEach(() => speaking.speak('en'));

/** E major, tonic arpeggio of two octaves, right hand. */
function planned(act: (plan: Plan) => void): string {
  const plan = new Plan();
  plan.choose({ key: 'E major', form: 'arpeggio' });
  act(plan);
  return askedOf(plan);
}
const stretch = { fromStep: 0, toStep: 3 };
const pairs = { times: 2, rhythm: 'long-short' } as const;

it.each<readonly [string, (plan: Plan) => void, string]>([
  ['nothing but the exercise', () => undefined, 'As written'],
  ['a rhythm, at the tempo aimed at', (plan) => plan.intend(pairs), 'Long–short, twice in a row, ♩ = 80'],
  [
    'a touch, at no tempo that nobody chose',
    (plan) => {
      plan.targetBpm = null;
      plan.intend({ times: 1, rhythm: 'even', touch: 'staccato' });
    },
    'Staccato',
  ],
  [
    'a stretch in a rhythm',
    (plan) => plan.setUp({ ...stretch, tempoBpm: 60, intention: { ...pairs, stretch } }),
    'Only E–G♯–B–E, long–short, twice in a row, ♩ = 60',
  ],
  [
    'a stretch of which nothing more is said',
    (plan) => plan.setUp({ ...stretch, tempoBpm: 52.4 }),
    'Only E–G♯–B–E, ♩ = 52',
  ],
  [
    'one way of it',
    (plan) => plan.intend({ times: 3, rhythm: 'even', stretch: { fromStep: 6, toStep: 12 } }),
    'Only E–B–G♯–E–B–G♯–E, three times in a row, ♩ = 80',
  ],
])('%s is said in words', (_, act, words) => {
  expect(planned(act)).toBe(words);
});

it('is said in German too', async () => {
  speaking.speak('de');
  const asked = (): string =>
    planned((plan) => plan.setUp({ ...stretch, tempoBpm: 60, intention: { ...pairs, stretch } }));
  await expect.poll(asked).toBe('Nur E–Gis–H–E, lang–kurz, zweimal hintereinander, ♩ = 60');
  expect(planned(() => undefined)).toBe('Wie notiert');
});
