import type { Strings } from '../english/index.ts';

export const LISTEN: Strings['listen'] = {
  stretchButton: 'Abschnitt abspielen',
  speed: 'Tempo',
  perCent: (percent) => `${percent} Prozent`,
  loop: 'immer wieder',
  retimed: 'das ist der zurechtgerückte Klang',
  hear: 'So hören',
  ways: {
    played: { label: 'Wie gespielt', meaning: 'So, wie es aufgenommen wurde.' },
    even: {
      label: 'Gleichmäßig',
      meaning:
        'Dein eigener Klang, jeder Ton an seinem gleichmäßigen Platz, in deinem Tempo. Sonst ist nichts verändert.',
    },
    beside: {
      label: 'Wie gespielt, dann gleichmäßig',
      meaning:
        'Erst, wie du gespielt hast, dann jeder Ton an seinem gleichmäßigen Platz: Das Ohr hört, was die Zahlen sagen.',
    },
    crossings: {
      label: 'Unter- und Übersatz zur rechten Zeit',
      meaning: 'Wie gespielt, nur ohne die Verspätung an den Unter- und Übersätzen.',
    },
  },
  stretch: 'Abschnitt zum Abspielen',
  from: 'von',
  to: 'bis',
  whole: 'Das Ganze',
  hearIt: ': anhören',
};
