/** Every bound of the alignment. Set by reasoning (each line says which) and tried on simulated students; none is fitted to a recording. */
export const BOUNDS = {
  /** onsets closer than this are one stroke when the tempo is first guessed, s; chords may be spread wider than scales are fast */
  strokeSec: 0.06,
  chordStrokeSec: 0.15,
  /** a neighbouring key within this time of a right one, and no further off than this, was caught with it (common practice, no source) */
  slipSec: 0.08,
  slipSemitones: 2,
  /** a key struck in place of another lies within this many semitones of it, or is its octave */
  wrongSemitones: 9,
  /** … and within this share of a step of the time where the missing note belongs */
  wrongShareOfStep: 0.65,
  /** a wrong key heard with less confidence than this is not called wrong but unsure */
  wrongConfidence: 0.4,
  /**
   * an extra note heard with less confidence than this is left out of the report; the blind finding stays in Heard. Extra
   * keys are rare (a few in a hundred), so a finding that is as likely as not to be a ghost mostly is one
   */
  extraConfidence: 0.5,
  /** a finding at a partial of a right note, or an octave below it, this close in time to that note's chord is how a listener's
   *  ghosts look */
  ghostSec: 0.06,
  /** … and under this confidence it does not even speak against the exercise; over it, beside a right note, it is a slip */
  ghostConfidence: 0.8,
  /** a key that sounds again so soon and so much softer than when it was struck was not struck again: that is its own tone, or
   *  its damper (in our bench most such findings lie at the moment when the key was let go); students repeat a note as loud */
  ringingSec: 2,
  ringingSofterDb: 10,
  /** an extra note so much softer than the middle one of the right notes is no key struck: slips are 4 to 10 dB softer */
  faintDb: 20,
  /** a tone that lasts past this share of the next step was held over; one that ends sooner was only joined to it */
  heldShareOfStep: 0.5,
  /** an extra key further than this from every key of the steps about it is out of the hand's reach: not the player's */
  reachSemitones: 12,
  /** notes further than this before the first or after the last matched note are not part of the attempt, beats and s */
  aroundRunBeats: 4,
  aroundRunSec: 1.5,
  /** a gap of more beats than this is a stop (teaching: "a gap over three beats") */
  stopBeats: 3,
  /** octaves above or below the written place at which each hand is looked for */
  octaves: 3,
  /** a chord's note later than this share of a step after the first was not struck with it; it speaks against the form */
  scatteredShareOfStep: 0.25,
  /** a first guess at the beat that leaves more than this unanswered is tried again with another, and of chords one that leaves any
   *  (README.md) */
  answeredShare: 0.8,
  /** both hands together that explain less than this are also followed each by itself, which must explain so much more */
  handsApartUnderFit: 0.9,
  handsApartFit: 0.03,
  /** another octave is tried where it has so much more of the exercise's notes in common with what was struck, of all of them */
  octaveShare: 0.04,
  /** how much better another reading must explain the notes: another octave; a semitone; another exercise of the set */
  octaveFit: 0.05,
  semitoneFit: 0.25,
  otherExerciseFit: 0.2,
  /** a semitone's reading that fits so well needs only to fit better: it speaks for itself but in a chromatic scale … */
  fitsWell: 0.75,
  /** … and none is looked for beside what leaves nothing unexplained */
  nothingUnexplained: 0.98,
  /** another exercise is named only if it explains at least this much */
  otherExerciseAtLeast: 0.75,
  /** pianos stand between 90 cents under A4 = 440 Hz and 40 over it when a semitone's reading is put down to the tuning; and
   *  3.5 more on either side, since 95 of 100 readings lie so near the truth (our bench) */
  tuningAtLeastCents: -93.5,
  tuningAtMostCents: 43.5,
} as const;

/** Semitones of partials 2 to 8 above their fundamental, rounded to keys, and the octave below, whose second partial it is. */
export const GHOST_SEMITONES: readonly number[] = [-12, 12, 19, 24, 28, 31, 34, 36];
