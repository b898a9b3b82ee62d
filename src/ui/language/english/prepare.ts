import type { Form, Hands, Loudness, MinorScale, Rhythm, Touch } from '../../../engine/index.ts';

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
  intend: {
    legend: 'How to practise it',
    part: 'Part',
    PARTS: { whole: 'The whole', up: 'The way up', down: 'The way down', stretch: 'A stretch' },
    from: 'From',
    to: 'To',
    how: 'Rhythm',
    RHYTHMS: {
      even: 'Even',
      'long-short': 'Long–short',
      'short-long': 'Short–long',
      'groups-of-2': 'In twos, first held',
      'groups-of-3': 'In threes, first held',
      'groups-of-4': 'In fours, first held',
      'groups-of-6': 'In sixes, first held',
      'stop-before-crossings': 'Stop before crossings',
      'stop-on-each-beat': 'Stop on each beat',
      'stop-on-each-step': 'Stop on each',
      'prepared-silently': 'Pressed silently first',
      'one-note-more': 'One note more each time',
    } satisfies Record<Rhythm, string>,
    blocked: 'Positions as chords',
    touch: 'Touch',
    any: 'As you like',
    TOUCHES: { legato: 'Legato', detached: 'Detached', staccato: 'Staccato' } satisfies Record<Touch, string>,
    loudness: 'Loudness',
    LOUDNESSES: {
      p: 'p',
      mf: 'mf',
      f: 'f',
      growing: 'Growing',
      fading: 'Fading',
      'accents-of-2': 'Accents in twos',
      'accents-of-3': 'Accents in threes',
      'accents-of-4': 'Accents in fours',
      'accents-of-6': 'Accents in sixes',
      'left-over-right': 'Left hand louder',
      'right-over-left': 'Right hand louder',
    } satisfies Record<Loudness, string>,
    times: 'In a row',
    often: (times: number) => (times === 1 ? 'Once' : times === 2 ? 'Twice' : `${times} times`),
    tempo: 'Tempo',
    steady: 'As aimed at',
    ladder: (fromBpm: number, byBpm: number) => `Ladder: from ${fromBpm} by ${byBpm}`,
    hear: 'Hear how it goes',
    stop: 'Stop',
  },
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
