import { describe, expect, it } from 'vitest';
import { passageId, recogniseFrom } from '../../../src/engine/index.ts';
import type { ExerciseChoice, OwnPassage } from '../../../src/engine/index.ts';
import { inventedPassage, inventedPassages } from '../../support/passages.ts';
import { attempt, GOOD_LISTENER } from './simulated.ts';

const OWN = inventedPassages(8);
const idOf = (passage: OwnPassage | undefined): string | null =>
  passage === undefined ? null : passageId(passage);
const found = (choice: ExerciseChoice, own: readonly ExerciseChoice[], octaveShift = 0, tuningCents = 0) => {
  const { heard } = attempt(
    choice,
    { bpm: 66, jitterMs: 15, octaveShift },
    { ...GOOD_LISTENER, tuningCents },
    3,
  );
  return recogniseFrom(heard, { own });
};

describe('passages of one’s own among what is recognised', () => {
  it('are told by their notes, here or an octave away, and each hand of them', () => {
    for (const choice of OWN) {
      const told = found(choice, OWN);
      expect(idOf(told.choice?.passage)).toBe(passageId(choice.passage!));
      expect(told.choice?.hands).toBe(choice.hands);
    }
    expect(found(OWN[0]!, OWN, 1)).toMatchObject({ choice: { form: 'passage' }, octaveShift: 1 });
    expect(found({ ...OWN[1]!, hands: 'left' }, OWN).choice).toMatchObject({
      hands: 'left',
      form: 'passage',
    });
  });

  it('say themselves at which pitch the piano stands: 70 cents flat the ear reads it 30 sharp and a semitone low', () => {
    const [choice] = OWN;
    const { heard } = attempt(choice!, { bpm: 66 }, { ...GOOD_LISTENER, tuningCents: 30, readsOff: -1 }, 3);
    const told = recogniseFrom(heard, { own: OWN });
    expect(idOf(told.choice?.passage)).toBe(passageId(choice!.passage!));
    expect(told.octaveShift).toBe(0);
  });

  it('leave other playing and the set as they were', () => {
    const other = inventedPassage(1234);
    expect(found(other, OWN).choice).toBeNull();
    const scale = { key: 'Eb major', form: 'scale', hands: 'right', octaves: 2 } as const;
    expect(found(scale, OWN)).toEqual(found(scale, []));
  });

  it('too short to be told from chance are left alone', () => {
    const { passage } = OWN[0]!;
    const short = { ...OWN[0]!, passage: { ...passage!, notes: passage!.notes.slice(0, 6) } };
    expect(found(short, [short]).choice?.form).not.toBe('passage');
  });
});
