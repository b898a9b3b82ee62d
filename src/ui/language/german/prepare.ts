import type { Strings } from '../english/index.ts';

export const PREPARE: Strings['prepare'] = {
  any: 'Irgendeine Übung der Sammlung',
  recognise: 'Die Übung für mich erkennen',
  recogniseNote:
    'Tonart, Form, Hand und Oktaven werden aus dem Spiel erkannt. Wähl die Übung selbst, wenn du sie kennst: Das ist ' +
    'sicherer.',
  key: 'Tonart',
  hands: 'Hände',
  form: 'Form',
  octaves: 'Oktaven',
  minorScale: 'Molltonleiter',
  tempo: 'Zieltempo',
  groups: { major: 'Dur, im Quintenzirkel', minor: 'Moll, im Quintenzirkel' },
  FORMS: {
    arpeggio: 'Arpeggio',
    scale: 'Tonleiter',
    triads: 'Dreiklänge',
    'broken-triads': 'Gebrochen',
    progression: 'Kadenz',
    'dominant-seventh': 'Dominantsept',
    'diminished-seventh': 'Verminderter Sept',
    chromatic: 'Chromatisch',
    'five-finger': 'Fünftonreihe',
  },
  HANDS: { left: 'Links', right: 'Rechts', together: 'Zusammen' },
  MINOR_SCALES: { harmonic: 'Harmonisch', melodic: 'Melodisch', natural: 'Natürlich' },
  wholeHead: 'Die ganze Übung',
  whole: (tempo) => ` bei ${tempo}.`,
  stretchHead: 'Üb nur',
  stretch: (names, tempo) =>
    `${names} bei ${tempo}. Wenn es gut geht, spiel die ganze Übung und nimm sie auf.`,
  wholeSo: (tempo, how) => ` bei ${tempo}, ${how}. Dein nächster Versuch wird daran gemessen.`,
  stretchSo: (names, tempo, how) =>
    `${names} bei ${tempo}, ${how}. Dein nächster Versuch wird daran gemessen.`,
  wholeAgain: 'Wieder die ganze Übung',
  notesInOrder: (notes) => `Die Noten und Finger der Reihe nach: ${notes}.`,
  noteWithFinger: (note, finger) => `${note} mit ${finger}`,
  rightHand: 'rechte Hand',
  leftHand: 'linke Hand',
  keyboard: (label, keys) => `Klaviatur, ${label}: ${keys}`,
  left: 'links',
  right: 'rechts',
  positions: {
    'root position': 'Grundstellung',
    'first inversion': 'erste Umkehrung',
    'second inversion': 'zweite Umkehrung',
  },
};
