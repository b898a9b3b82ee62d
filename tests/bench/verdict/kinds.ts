/** What a statement is about. A kind is accused of, required or forbidden as a whole: the codes within it may be split or renamed. */
export type Kind =
  | 'notes'
  | 'course'
  | 'exercise'
  | 'crossing'
  | 'change'
  | 'evenness'
  | 'tempo'
  | 'hands'
  | 'spread'
  | 'inner'
  | 'loudness'
  | 'touch'
  | 'tired'
  | 'sound';

/** Situation of the words → what it accuses the player of; null: it accuses of nothing. */
const KIND_OF: Readonly<Record<string, Kind | null>> = {
  'too-little': 'sound',
  'sound-lost': 'sound',
  'other-exercise': 'exercise',
  stopped: 'course',
  restarted: 'course',
  'broken-off': 'course',
  'started-late': 'course',
  'same-place-again': 'notes',
  'leading-note': 'notes',
  signature: 'notes',
  'landed-off': 'notes',
  'inner-note': 'notes',
  'wrong-notes': 'notes',
  'missed-notes': 'notes',
  slips: 'notes',
  repeats: 'notes',
  'hands-apart-for-now': 'crossing',
  'crossing-late-both-ways': 'crossing',
  'crossing-late-one-direction': 'crossing',
  'crossing-late': 'crossing',
  'change-hesitates': 'change',
  'late-note': 'evenness',
  'late-at-the-turn': 'evenness',
  'uneven-in-pairs': 'evenness',
  uneven: 'evenness',
  tired: 'tired',
  'inner-notes-soft': 'inner',
  'nearly-even': 'evenness',
  drift: 'tempo',
  'under-tempo': 'tempo',
  'one-hand-leads': 'hands',
  'hands-apart': 'hands',
  'chords-spread': 'spread',
  'slows-to-the-end': null,
  'broad-last-note': null,
  'in-a-rhythm': null,
  practised: null,
  'tempo-sways': null,
  'loudness-shaped': null,
  'accented-in-groups': null,
  'pedal-held': null,
  'not-sure': null,
  'key-ready': null,
  'hand-ready': null,
  'often-enough': null,
  'twice-at-the-criterion': null,
  better: null,
  'at-the-criterion': null,
  'nothing-to-remark': null,
};

/** A situation's code → its kind. A code that the table lacks is a mistake of the bench, told aloud. */
export function kindOf(situation: string): Kind | null {
  const kind = KIND_OF[situation];
  if (kind === undefined) throw new Error(`situation "${situation}" is missing in the table of kinds`);
  return kind;
}
