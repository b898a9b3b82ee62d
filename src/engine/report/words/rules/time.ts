import { PRACTICE } from './types.ts';
import type { Rule } from './types.ts';

const LATE =
  'audible from 6 ms or 2.5 % of the interval (Friberg & Sundberg 1995); said from a quarter of it: common practice';

/** Time, hands and chords; and what was meant. */
export const ABOUT_TIME = {
  'hands-apart-for-now': {
    kind: 'fault',
    rank: 4,
    when: 'with both hands the crossings are late both ways, or evenness or crossings are half as bad again as in the worse hand alone at that tempo',
    why: 'what each hand can do alone and both cannot is practised apart',
    source: PRACTICE,
  },
  'crossing-late-both-ways': {
    kind: 'fault',
    rank: 4,
    when: 'every crossing up and down is late',
    why: 'a movement is named before what follows from it; one direction at a time',
    source: LATE,
  },
  'crossing-late-one-direction': {
    kind: 'fault',
    rank: 4,
    when: 'every crossing of one direction is late, two at least, and no other',
    why: 'the movement is not there yet in that direction',
    source: LATE,
  },
  'crossing-late': {
    kind: 'fault',
    rank: 4,
    when: 'some crossings are late: beyond the bound, the ± and 4.5 scatters of the other notes',
    why: 'named by the note after the crossing: fingers are assumed and not heard. At 3.5 scatters two innocent attempts in a hundred had one',
    source: LATE,
  },
  'change-hesitates': {
    kind: 'fault',
    rank: 4,
    when: 'one change of chord takes over one and a half times the others',
    why: 'which change, and to look ahead before it',
    source: PRACTICE,
  },
  'late-note': {
    kind: 'fault',
    rank: 4,
    when: 'one or two notes come late by over a quarter of the interval and 4.5 scatters, into no crossing',
    why: 'with both hands a late step is judged as a step; more than two are unevenness',
    source: LATE,
  },
  'late-at-the-turn': {
    kind: 'fault',
    rank: 4,
    when: 'the way down begins late by over a quarter of the interval',
    why: 'variation grows at the turn; it is thought of too late',
    source: 'van Vugt et al. 2012 (the turn); the bound: common practice',
  },
  tired: {
    kind: 'fault',
    rank: 4,
    when: 'four attempts of one sitting at one tempo, each less even than the one before beyond both errors, and the last no longer even',
    why: 'asked and not told, before the unevenness that it makes; never of attempts that are all even, never where the tempo was raised',
    source: PRACTICE,
  },
  'uneven-in-pairs': {
    kind: 'fault',
    rank: 4,
    when: 'every other interval is longer by over 15 %, in four of five, and the whole is not even',
    why: 'limping is mended by its opposite; far longer ones are a rhythm that was meant',
    source: PRACTICE,
  },
  uneven: {
    kind: 'fault',
    rank: 4,
    when: 'intervals, without ending, sway and what is named already, vary by more than the bound at this tempo',
    why: 'said only where nothing more exact is; it follows from what is named before it',
    source: 'see criteria',
  },
  drift: {
    kind: 'fault',
    rank: 4,
    when: 'the tempo changes by over 6 % along the whole, the ending left out',
    why: 'faster and slower is heard before hands that part',
    source: PRACTICE,
  },
  'one-hand-leads': {
    kind: 'fault',
    rank: 4,
    when: 'one hand comes first by over 35 ms on the average, less what a louder hand gains by itself',
    why: 'a louder key arrives 20 to 30 ms earlier and is no fault',
    source: 'Goebl 2001; Hirsh 1959',
  },
  'hands-apart': {
    kind: 'fault',
    rank: 4,
    when: 'the hands scatter by over 30 ms, in slow steps by over 2.5 % of them, now one first, now the other',
    why: 'order can be told from 20 ms, and every other step is further apart then; it is mended by stopping together',
    source: 'Hirsh 1959; slow steps: Friberg & Sundberg 1995',
  },
  'chords-spread': {
    kind: 'fault',
    rank: 5,
    when: 'the chords of a hand are over 40 ms from first note to last',
    why: 'which note of the chord is last, not which finger: fingers are not heard',
    source: 'Hirsh 1959; the bound: common practice',
  },
  'inner-notes-soft': {
    kind: 'fault',
    rank: 5,
    when: 'the inner notes of the chords are softer than the outer ones by over 8 dB, the differences of a piano’s keys allowed for',
    why: 'a louder upper voice is voicing; so much softer an inner note hardly sounds. All else of loudness is the piano’s until its keys are known',
    source: PRACTICE,
  },
  'slows-to-the-end': {
    kind: 'meant',
    rank: 6,
    when: 'the last three intervals or more grow one after another, after a steady tempo',
    why: 'a ritardando is shaping, not dragging',
    source: PRACTICE,
  },
  'broad-last-note': {
    kind: 'meant',
    rank: 6,
    when: 'only the last note comes later',
    why: 'a broad last note is shaping, not unevenness',
    source: PRACTICE,
  },
  'in-a-rhythm': {
    kind: 'meant',
    rank: 6,
    when: 'every other interval is longer by over 70 %, in four of five',
    why: 'exercises are practised in rhythms',
    source: PRACTICE,
  },
  'tempo-sways': {
    kind: 'meant',
    rank: 6,
    when: 'the tempo goes up and down over many notes: neighbours stay alike, and what a straight line leaves of them goes along',
    why: 'a lasting rubato is asked about, not called uneven',
    source: PRACTICE,
  },
} as const satisfies Record<string, Rule>;
