import type { Strings } from '../english/index.ts';

export const NAMES: Strings['names'] = {
  fingers: ['Daumen', 'zweiter Finger', 'dritter Finger', 'vierter Finger', 'kleiner Finger'],
  finger: (finger) => `Finger ${finger}`,
  signs: { '': '', '#': ' Kreuz', '##': ' Doppelkreuz', b: ' Be', bb: ' Doppel-Be' },
  natural: ' ohne Vorzeichen',
  counts: ['kein', 'ein', 'zwei', 'drei', 'vier', 'fünf', 'sechs', 'sieben'],
  sharps: (count) => (count === 1 ? 'Kreuz' : 'Kreuze'),
  flats: () => 'Be',
  noSigns: 'keine Vorzeichen',
};
