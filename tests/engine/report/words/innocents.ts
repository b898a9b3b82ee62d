import type { ExerciseChoice } from '../../../../src/engine/index.ts';
import type { SituationName } from '../../../../src/engine/report/words/index.ts';
import type { HomeKnobs, StudentKnobs } from '../../../support/render.ts';
import { NO_MISTAKES } from '../../../support/render.ts';

/** Somebody who plays well, in a way of their own. */
export interface Player {
  readonly name: string;
  readonly exercise: ExerciseChoice;
  readonly student: Partial<StudentKnobs>;
  readonly home?: Partial<HomeKnobs>;
  /** the attempts of the sitting before this one, oldest first */
  readonly before?: readonly Partial<StudentKnobs>[];
  /** the pedal may be told */
  readonly pedal?: true;
  /** of note lists only: nothing of it is in the sound, or another player sounds alike */
  readonly asList?: true;
}

const A: ExerciseChoice = { key: 'A major', form: 'scale', hands: 'right', octaves: 2 };
const BOTH: ExerciseChoice = { ...A, hands: 'together', octaves: 1 };

export const PLAYERS: readonly Player[] = [
  { name: 'legato, every key held 20 ms into the next', exercise: A, student: { overlapMs: 20 } },
  {
    name: 'legato in the left hand',
    exercise: { ...A, hands: 'left', key: 'E major' },
    student: { overlapMs: 60 },
  },
  { name: 'detached throughout', exercise: { ...A, form: 'arpeggio' }, student: { overlapMs: -84 } },
  {
    name: 'the pedal held in a ringing room',
    exercise: { ...A, octaves: 1 },
    student: { pedal: 'held' },
    home: { room: { decaySec: 0.6, directDb: 3 } },
    pedal: true,
  },
  {
    name: 'legato in a ringing room',
    exercise: { ...A, hands: 'left', octaves: 1 },
    student: { overlapMs: 60 },
    home: { room: { decaySec: 1.2, directDb: 0 } },
  },
  { name: 'loudness of chance', exercise: { ...A, key: 'Ab major' }, student: { loudnessJitterDb: 3 } },
  {
    name: 'a swell: the ends softer',
    exercise: { ...A, form: 'arpeggio', key: 'D major' },
    student: { endsDb: -6 },
  },
  {
    name: 'chords with soft inner notes',
    exercise: { ...A, form: 'triads', octaves: 1 },
    student: { innerDb: -4 },
  },
  {
    name: 'chords of a progression',
    exercise: { ...A, form: 'progression', key: 'F major', octaves: 1 },
    student: { chordSpreadMs: 25 },
  },
  { name: 'both hands', exercise: BOTH, student: { handsApartMs: { mean: 12, sd: 12 } } },
  {
    name: 'both hands, the left one softer',
    exercise: { ...BOTH, form: 'arpeggio' },
    student: { leftHandDb: -3 },
  },
  {
    name: 'harmonic minor, the raised note every time',
    exercise: { ...A, key: 'D minor', octaves: 1 },
    student: {},
  },
  {
    name: 'broken triads: keys come again at once',
    exercise: { ...A, form: 'broken-triads', octaves: 1 },
    student: {},
  },
  { name: 'slowly', exercise: { ...A, octaves: 1 }, student: { bpm: 40 }, asList: true },
  { name: 'a little slower to the end', exercise: A, student: { driftPercent: 2 }, asList: true },
  { name: 'crossings a little late', exercise: A, student: { lateCrossing: { ms: 12 } }, asList: true },
  {
    name: 'crossings of both hands a little late',
    exercise: { ...BOTH, octaves: 2 },
    student: { lateCrossing: { ms: 10 } },
    asList: true,
  },
  {
    name: 'even each time, each time a little less so',
    exercise: A,
    before: [{ jitterMs: 4 }, { jitterMs: 5 }, { jitterMs: 6 }],
    student: { jitterMs: 8 },
    asList: true,
  },
  {
    name: 'right, after an attempt with a wrong note',
    exercise: A,
    before: [{ mistakes: { ...NO_MISTAKES, wrong: 1 } }],
    student: {},
    asList: true,
  },
];

const LINES = [
  'legato, every key held 20 ms into the next',
  'legato in the left hand',
  'detached throughout',
];

/** Each thing that can be said against somebody, or named as meant → who comes near it and is innocent. */
export const NEAR: Partial<Readonly<Record<SituationName, readonly string[]>>> = {
  'too-little': ['slowly', 'detached throughout'],
  'sound-lost': LINES,
  'other-exercise': ['harmonic minor, the raised note every time', 'both hands, the left one softer'],
  'same-place-again': ['right, after an attempt with a wrong note'],
  'leading-note': ['harmonic minor, the raised note every time'],
  signature: ['harmonic minor, the raised note every time'],
  'landed-off': ['detached throughout'],
  'inner-note': ['chords with soft inner notes'],
  'wrong-notes': LINES,
  'missed-notes': ['both hands, the left one softer', 'loudness of chance'],
  slips: ['legato in the left hand', 'legato in a ringing room'],
  repeats: ['broken triads: keys come again at once', 'the pedal held in a ringing room'],
  stopped: ['slowly'],
  restarted: ['broken triads: keys come again at once'],
  'broken-off': ['a swell: the ends softer'],
  'started-late': ['a swell: the ends softer'],
  'hands-apart-for-now': ['crossings of both hands a little late'],
  'crossing-late-both-ways': ['crossings a little late'],
  'crossing-late-one-direction': ['crossings a little late'],
  'crossing-late': ['crossings a little late', 'crossings of both hands a little late'],
  'change-hesitates': ['chords of a progression'],
  'late-note': LINES,
  'late-at-the-turn': LINES,
  tired: ['even each time, each time a little less so'],
  'uneven-in-pairs': LINES,
  uneven: LINES,
  drift: ['a little slower to the end'],
  'one-hand-leads': ['both hands'],
  'hands-apart': ['both hands'],
  'chords-spread': ['chords of a progression'],
  'inner-notes-soft': ['chords with soft inner notes'],
  'slows-to-the-end': ['a little slower to the end'],
  'broad-last-note': LINES,
  'in-a-rhythm': LINES,
  'tempo-sways': LINES,
  'loudness-shaped': ['loudness of chance', 'a swell: the ends softer'],
  'accented-in-groups': ['loudness of chance', 'both hands'],
  'pedal-held': ['legato in a ringing room'],
};
