/**
 * Log odds of the closer look (src/training) at which it decides. Fitted on the grand that was kept out of its training
 * (University of Iowa's), rooms and noise of a home, hands about equally loud: of 34 000 notes that were struck 0.08 % are called
 * missed (0.04 % with hands apart known); of those left out seven in ten are told. `struck` by `bench:chords -- --bounds` on that grand and the
 * development piano (350 attempts of both hands, hands 12 dB apart, fast, in noise and beside a voice): of 5557 notes struck under their octave and not
 * reported 45 lie from −1 to −0.5 and 48 from there to 0, of 261 left out 13 and 9. Where one in fifty is left out (common practice, no source;
 * the network learnt from one in ten) 89 and 92 of 100 such notes were struck: from nine in ten on they are believed.
 * All of it by weights before: those of today are exported so that their log odds lie there (`STRUCK_LIFT` in src/training/look/export.py).
 */
export const RECHECK_BOUNDS = {
  /** a written note that the blind ear did not report: struck above, not struck below, unsure between */
  struck: -0.5,
  notStruck: -2,
  /** a written note that the blind ear did report: unsure below this, not struck below the other */
  doubtful: 1,
  overruled: -1.5,
  /** a note that its octave may cover is missing where its hand's other notes make that so likely, 0..1, and never above `notStruck` */
  leftOut: 0.5,
  /** a key that is not written but was reported is withdrawn below this; beside a written one, and an octave off one, below these … */
  withdrawn: -1.5,
  besideWithdrawn: -2.5,
  octaveOff: 0,
  /** … a key that was not reported is found in place of a missed note above this */
  inItsPlace: 1,
  /** a written note is taken for replaced by a key an octave below it under this (that one apart which the first listening had put there itself), by another key
   *  under the second, and by a neighbour under the third where that is so much surer (72 chords of both hands with a neighbour in place of a note, 72 with one caught
   *  4 to 10 dB under it, development piano and Iowa's: all apart); one that the blind ear reported where it is doubtful (of 6840 struck and
   *  reported four were, two development pianos) */
  besideOctaveBelow: 4.5,
  besideOther: 0,
  besideNeighbour: 2,
  neighbourSurer: 3.7,
  /** a key beside a written one that the ear believed in at least so much (0..1) is a slip above this: of 163 that nobody struck none
   *  lay over 2.0 */
  halfBelieved: 0.1,
  caught: 2.5,
  slipSemitones: 2,
  /** a key struck in place of another lies within so many semitones of it, or is its octave */
  wrongSemitones: 9,
  /** notes of a step lie within so much of its middle, s */
  nearSec: 0.09,
  /** an onset is not moved further than this by a second look, s */
  mostMovedSec: 0.06,
} as const;

/** Keys that are struck by mistake in place of one: semitones away. */
export const MISTAKEN_FOR = [-1, 1, -2, 2, -12, 12] as const;
