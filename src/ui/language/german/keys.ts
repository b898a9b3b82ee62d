import type { Strings } from '../english/index.ts';

export const KEYS: Strings['keys'] = {
  signature: 'Vorzeichen',
  scale: 'Tonleiter',
  minorScales: { natural: 'Natürliches Moll', harmonic: 'Harmonisches Moll', melodic: 'Melodisches Moll' },
  triad: 'Tonika-Dreiklang',
  primaryChords: 'Hauptakkorde',
};
