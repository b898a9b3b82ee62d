/** Log odds of the closer look (see `look/training/README.md`) at which it decides. */
export const RECHECK_BOUNDS = {
  /** a written note that the blind ear did not report: struck above, not struck below, unsure between */
  struck: 1,
  notStruck: -0.7,
  /** a written note that the blind ear did report: unsure below this, not struck below the other */
  doubtful: 2,
  overruled: -1,
  /** a key that is not written but was reported is withdrawn below this; one in place of a missed note is found above the other */
  withdrawn: -2,
  inItsPlace: 1,
  /** a key beside a written one that the ear believed in at least so much (0..1) is a slip above this */
  halfBelieved: 0.1,
  caught: 1.5,
  slipSemitones: 2,
  /** notes of a step lie within so much of its middle, s */
  nearSec: 0.09,
  /** an onset is not moved further than this by a second look, s */
  mostMovedSec: 0.06,
} as const;

/** Keys that are struck by mistake in place of one: semitones away. */
export const MISTAKEN_FOR = [-1, 1, -2, 2, -12, 12] as const;
