export { BOUNDS, GHOST_SEMITONES } from './bounds.ts';
export { FOLLOWING } from './following.ts';

/**
 * What the events of playing cost, in units of one missed note: the one table by which both searches account for what was heard.
 *
 * Set by reasoning on the mistakes that students make (each line says which), and tried on simulated students and a simulated
 * listener that loses one note in a hundred and invents four: 900 attempts aligned, 720 attempts and 240 pieces of other playing
 * recognised. None comes from a recording.
 */
export const COSTS = {
  /** one expected note not played */
  missed: 1,
  /** … whose octave below was struck with it: the ear misses one such note in ten, the player few; at 0.35 all is the same */
  covered: 0.4,
  /** one note that answers nothing, at full weight; dearer than a missed one, since who plays another figure plays all its notes: at
   *  1.0 six of 27 arpeggios of a seventh chord were taken for a triad's, at 1.3 none */
  extra: 1.3,
  /** another key in a note's place: one event, so less than a missed note and an extra one (an alignment pairs them by their time) */
  wrong: 1.3,
  /** a neighbouring key caught with a right one, and a finding on the second to fourth partial of one: commoner than other extras */
  slip: 0.9,
  ghost: 0.7,
  /** going back any number of steps: more than one stray note, less than two, so that two notes played again are a going back */
  goingBack: 1.5,
  /** … in exercises of several keys a step, so much more for each further key: there more is played again by chance */
  goingBackToo: 0.4,
  /** a note not played before the beginning or after the end costs less than one left out in the middle: at 0.5 a further 18 of 240
   *  broken-off attempts are no longer recognised … */
  missedAtEnds: 0.35,
  /** … and all of them together at most so much, with one key a step: a broken-off attempt is one event, not ten */
  missedAtEndsAtMost: 4,
  /** … and this share of that more for each further key a step */
  missedAtEndsToo: 0.5,
} as const;

/** Notes heard with less confidence than the one hardly count, with more than the other fully. */
const NO_NOTE = 0.3;
const FULL_NOTE = 0.75;
/** A finding is never quite without weight, or ghosts would be free to answer anything. */
const LEAST_WEIGHT = 0.1;

/** The listener's confidence in a note → how much the note counts, 0.1..1. */
export function weightOf(confidence: number): number {
  return Math.min(1, Math.max(LEAST_WEIGHT, (confidence - NO_NOTE) / (FULL_NOTE - NO_NOTE)));
}

/** What it costs not to have played so many notes before the beginning or after the end. */
export function costAtEnd(leftOut: number, keysAStep: number): number {
  const most = COSTS.missedAtEndsAtMost * (1 + COSTS.missedAtEndsToo * (keysAStep - 1));
  return Math.min(COSTS.missedAtEnds * leftOut, most);
}
