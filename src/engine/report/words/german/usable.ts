import type { Form, MinorScale } from '../../../exercise/index.ts';
import type { Wording } from '../english/index.ts';
import type { Difference } from '../types.ts';
import { count } from './places.ts';

const FORMS: Readonly<Record<Form, string>> = {
  arpeggio: 'das Arpeggio',
  triads: 'die Dreiklänge',
  'broken-triads': 'die gebrochenen Dreiklänge',
  progression: 'die Kadenz',
  scale: 'die Tonleiter',
};
const MINOR_SCALES: Readonly<Record<MinorScale | '', string>> = {
  natural: 'die natürliche',
  harmonic: 'die harmonische',
  melodic: 'die melodische',
  '': 'die andere',
};

export const USABLE: Pick<Wording, 'tooLittle' | 'otherExercise' | 'otherMeasured'> = {
  tooLittle: ({ right, of, heardMuch, finding }) => {
    const notes = `${right} von ${of} Tönen`;
    return heardMuch
      ? {
          sentence: `Das klingt nicht wie die gewählte Übung: Nur ${notes} passen`,
          emphasis: notes,
          nextStep: 'Prüf Tonart und Übung, dann spiel noch einmal.',
        }
      : {
          sentence: `Zu wenig war zu hören, um es zu beurteilen: ${notes}`,
          emphasis: notes,
          nextStep: finding ?? 'Spiel noch einmal, mit dem Gerät ein bis zwei Meter vom Klavier entfernt.',
        };
  },
  otherMeasured: (difference) => {
    const { like, not } = differ(difference);
    return {
      sentence: `Du hast ${like} gespielt, nicht ${not}; das ist hier gemessen`,
      emphasis: like,
      nextStep: 'Mach damit weiter, oder sag unten, dass du das andere wolltest.',
    };
  },
  otherExercise: (difference, note) => {
    const { like, not } = differ(difference);
    const times = { once: '', both: ' beide Male', each: ' jedes Mal' };
    const because = note === null ? '' : `: ${note.struck} statt ${note.wanted}${times[note.often]}`;
    return {
      sentence: `Das klang wie ${like}, nicht wie ${not}${because}`,
      emphasis: like,
      nextStep: 'Wechsle dazu, wenn du das wolltest, oder spiel die gewählte Übung noch einmal.',
    };
  },
};

function differ(one: Difference): { readonly like: string; readonly not: string } {
  switch (one.kind) {
    case 'form':
      return {
        like: `${FORMS[one.like]}${one.ofKey === null ? '' : ` von ${one.ofKey}`}`,
        not: FORMS[one.not],
      };
    case 'key':
      return { like: one.like, not: one.not };
    case 'both-hands':
      return {
        like: 'beide Hände',
        not: `die ${one.notHand === 'left' ? 'linke' : 'rechte'} Hand allein`,
      };
    case 'one-hand':
      return { like: 'eine Hand allein', not: 'beide zusammen' };
    case 'octaves':
      return {
        like: one.like === 1 ? 'eine Oktave' : `${count(one.like)} Oktaven`,
        not: one.not === 1 ? 'eine' : count(one.not),
      };
    case 'minor-scale':
      return { like: `${MINOR_SCALES[one.like]} Tonleiter`, not: MINOR_SCALES[one.not] };
  }
}
