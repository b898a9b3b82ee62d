import type { ExerciseChoice } from '../../engine/index.ts';
import { strings } from '../language/index.ts';

/** What of an exercise is not as usual: "4 notes a beat, 1 octave up, right hand: 2 first"; '' where all is. */
export function otherwiseWords({ notesABeat, register, fingering }: ExerciseChoice): string {
  const t = strings().prepare.details;
  const hand = (who: 'left' | 'right'): readonly string[] => {
    const principle = fingering?.[who];
    return principle === undefined ? [] : [`${strings().journal.HANDS[who]}: ${t.PRINCIPLES[principle]}`];
  };
  const written = fingering?.written?.length ?? 0;
  return [
    ...(notesABeat === undefined ? [] : [t.aBeat(notesABeat)]),
    ...(register === undefined ? [] : [t.registers(register)]),
    ...hand('right'),
    ...hand('left'),
    ...(written === 0 ? [] : [t.writtenOver(written)]),
  ].join(', ');
}
