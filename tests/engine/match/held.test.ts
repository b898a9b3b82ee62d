import { describe, expect, it } from 'vitest';
import { buildExercise } from '../../../src/engine/exercise/index.ts';
import type { Hand } from '../../../src/engine/exercise/index.ts';
import { heldOver, matchNotes } from '../../../src/engine/match/index.ts';
import { heardOf, played } from './simulated.ts';

// I–IV–I–V7–I in C: the thumb's C stays from I to IV and back, the fifth finger's G from I to V7 and back.
const choice = { key: 'C major', form: 'progression', hands: 'right', octaves: 1 } as const;
const EXERCISE = buildExercise(choice);
const STEP_SEC = 1;

/** What becomes of the notes `absent` ("step name") when the tones before them end `endSec` after their onset; null: unheard. */
function verdicts(absent: readonly string[], endSec: number | null, form = EXERCISE): string[] {
  const notes = form.steps.flatMap(({ step, notes: expected }) =>
    expected
      .filter(({ name }) => !absent.includes(`${step} ${name}`))
      .map(({ midi }) => {
        const timeSec = 1 + step * STEP_SEC;
        return played(timeSec, midi, { releaseSec: endSec === null ? null : timeSec + endSec });
      }),
  );
  const heard = heardOf(notes);
  return heldOver(heard, matchNotes(heard, form)).matched.flatMap((note) =>
    note.verdict === 'correct' ? [] : [`${note.step} ${note.expected.name} ${note.verdict}`],
  );
}

describe('common tones of two chords', () => {
  it('not struck again while the tone still sounds are unsure, not missed', () => {
    expect(verdicts(['1 C4'], 1.7)).toEqual(['1 C4 unsure']);
    expect(verdicts(['3 G4'], 1.7)).toEqual(['3 G4 unsure']);
  });

  it('say that they may be held over', () => {
    const heard = heardOf([
      played(1, 60, { releaseSec: 3 }),
      ...[64, 67].map((midi) => played(1, midi)),
      ...[65, 69].map((midi) => played(2, midi)),
    ]);
    const note = heldOver(heard, matchNotes(heard, EXERCISE)).matched[3]!;
    expect(note).toMatchObject({
      verdict: 'unsure',
      heldOver: true,
      reason: { notice: 'may-be-held-over', name: 'C4' },
    });
  });

  it.each([0.5, 1.1])('whose tone ended %f steps after it began are missed', (endSec) => {
    expect(verdicts(['1 C4'], endSec)).toEqual(['1 C4 missed']);
  });

  it('are unsure where the end of the tone was not heard and no other was struck again', () => {
    const all = ['1 C4', '2 C4', '3 G4', '4 G4'];
    expect(verdicts(all, null)).toEqual(all.map((note) => `${note} unsure`));
  });

  it('are unsure where none was struck again, though an end was heard', () => {
    const all = ['1 C4', '2 C4', '3 G4', '4 G4'];
    expect(verdicts(all, 0.8)).toEqual(all.map((note) => `${note} unsure`));
  });

  it('are missed where the end was not heard but the others were struck again', () => {
    expect(verdicts(['3 G4'], null)).toEqual(['3 G4 missed']);
  });

  it('of a chord of which nothing was struck are missed with it', () => {
    const chord = ['1 C4', '1 F4', '1 A4'];
    expect(verdicts([...chord, '2 C4', '3 G4', '4 G4'], null)).toEqual([
      ...chord.map((note) => `${note} missed`),
      '2 C4 missed',
      '3 G4 unsure',
      '4 G4 unsure',
    ]);
  });

  it('are followed over two chords', () => {
    const long = EXERCISE.steps.flatMap(({ step, notes }) =>
      notes
        .filter(({ midi }) => !(midi === 60 && (step === 1 || step === 2)))
        .map(({ midi }) => played(1 + step, midi, { releaseSec: midi === 60 ? 3.6 + step : 1.9 + step })),
    );
    const heard = heardOf(long);
    const said = heldOver(heard, matchNotes(heard, EXERCISE)).matched.filter(
      ({ verdict }) => verdict !== 'correct',
    );
    expect(said.map(({ step, verdict }) => `${step} ${verdict}`)).toEqual(['1 unsure', '2 unsure']);
  });

  it('of the last chord are judged by the step before it, as long as that was', () => {
    expect(verdicts(['4 G4'], 1.7)).toEqual(['4 G4 unsure']);
    expect(verdicts(['4 G4'], 1.1)).toEqual(['4 G4 missed']);
  });

  it('of another finger cannot be held: in the inversions they are missed', () => {
    const triads = buildExercise({ ...choice, form: 'triads' });
    expect(verdicts(['1 E4'], 1.7, triads)).toEqual(['1 E4 missed']);
  });

  it.each<Hand>(['left', 'right'])('all struck again are right: %s hand', (hands) => {
    expect(verdicts([], 1.7, buildExercise({ ...choice, hands }))).toEqual([]);
  });
});
