import type { Form } from '../../../exercise/index.ts';
import type { Difference, Said } from '../types.ts';
import { count } from './places.ts';

const FORMS: Readonly<Record<Form, string>> = {
  arpeggio: 'arpeggio',
  triads: 'solid triads',
  'broken-triads': 'broken triads',
  progression: 'chord progression',
  scale: 'scale',
};

export const USABLE = {
  tooLittle: (given: {
    readonly right: number;
    readonly of: number;
    /** much was heard, but little of it fits */
    readonly heardMuch: boolean;
    /** what was found about the sound */
    readonly finding: string | null;
  }): Said => {
    const notes = `${given.right} of ${given.of} notes`;
    return given.heardMuch
      ? {
          sentence: `This does not sound like the exercise chosen: only ${notes} fit`,
          emphasis: notes,
          nextStep: 'check the key and the exercise, then play it again.',
        }
      : {
          sentence: `Too little was heard to judge: ${notes}`,
          emphasis: notes,
          nextStep: given.finding ?? 'play it again with the device one to two metres from the piano.',
        };
  },
  /** surely another exercise than chosen, which is measured */
  otherMeasured: (difference: Difference): Said => {
    const { like, not } = differ(difference);
    return {
      sentence: `You played ${like}, not ${not}; that is what is measured here`,
      emphasis: like,
      nextStep: 'go on with it, or say below that you meant the other.',
    };
  },
  /** `note`: where only the mode differs, the note that made it, and how often */
  otherExercise: (
    difference: Difference,
    note: {
      readonly struck: string;
      readonly wanted: string;
      readonly often: 'once' | 'both' | 'each';
    } | null,
  ): Said => {
    const { like, not } = differ(difference);
    const times = { once: '', both: ' both times', each: ' each time' };
    const because = note === null ? '' : `: ${note.struck} for ${note.wanted}${times[note.often]}`;
    return {
      sentence: `This sounded like ${like}, not ${not}${because}`,
      emphasis: like,
      nextStep: 'switch to it if that is what you meant, or play the exercise chosen once more.',
    };
  },
};

function differ(one: Difference): { readonly like: string; readonly not: string } {
  switch (one.kind) {
    case 'form':
      return {
        like: `the ${FORMS[one.like]}${one.ofKey === null ? '' : ` of ${one.ofKey}`}`,
        not: `the ${FORMS[one.not]}`,
      };
    case 'key':
      return { like: one.like, not: one.not };
    case 'both-hands':
      return { like: 'both hands', not: `the ${one.notHand} hand alone` };
    case 'one-hand':
      return { like: 'one hand alone', not: 'both together' };
    case 'octaves':
      return { like: `${count(one.like)} octave${one.like === 1 ? '' : 's'}`, not: count(one.not) };
    case 'minor-scale':
      return { like: `the ${one.like} scale`, not: `the ${one.not} one` };
  }
}
