import type { Form, Hands, MinorScale } from '../../../engine/index.ts';

const FORMS: Readonly<Record<Form, string>> = {
  arpeggio: 'Arpeggio',
  scale: 'Scale',
  triads: 'Triads',
  'broken-triads': 'Broken triads',
  progression: 'Progression',
  'dominant-seventh': 'Dominant seventh',
  'diminished-seventh': 'Diminished seventh',
  chromatic: 'Chromatic',
  'five-finger': 'Five fingers',
};
const HANDS: Readonly<Record<Hands, string>> = { left: 'Left', right: 'Right', together: 'Together' };
const MINOR_SCALES: Readonly<Record<MinorScale, string>> = {
  harmonic: 'Harmonic',
  melodic: 'Melodic',
  natural: 'Natural',
};

/** Choosing the exercise. */
export const PREPARE = {
  any: 'Any exercise of the set',
  recognise: 'Recognise the exercise for me',
  recogniseNote:
    'Key, form, hand and octaves are told from what is played. Choose the exercise yourself where you know it: that is ' +
    'surer.',
  key: 'Key',
  hands: 'Hands',
  form: 'Form',
  octaves: 'Octaves',
  minorScale: 'Minor scale',
  tempo: 'Tempo aim',
  groups: { major: 'Major, round the circle of fifths', minor: 'Minor, round the circle of fifths' },
  FORMS,
  HANDS,
  MINOR_SCALES,
  /** `tempo`: e.g. "♩ = 53" */
  wholeHead: 'The whole exercise',
  whole: (tempo: string) => `, at ${tempo}.`,
  stretchHead: 'Practise only',
  stretch: (names: string, tempo: string) =>
    `${names}, at ${tempo}. When it goes well, play the whole exercise and record it.`,
  wholeSo: (tempo: string, how: string) => `, at ${tempo}, ${how}. Your next attempt is judged by that.`,
  stretchSo: (names: string, tempo: string, how: string) =>
    `${names}, at ${tempo}, ${how}. Your next attempt is judged by that.`,
  wholeAgain: 'The whole exercise again',
  notesInOrder: (notes: string) => `The notes and fingers in order: ${notes}.`,
  noteWithFinger: (note: string, finger: number) => `${note} with ${finger}`,
  rightHand: 'right hand',
  leftHand: 'left hand',
  keyboard: (label: string, keys: string) => `Keyboard, ${label}: ${keys}`,
  left: 'left',
  right: 'right',
  /** the trade's names of chords; numerals are the same everywhere */
  positions: {
    'root position': 'root position',
    'first inversion': 'first inversion',
    'second inversion': 'second inversion',
  },
};
