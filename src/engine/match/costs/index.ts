/**
 * Every weight and bound of the matching, in one place.
 *
 * Costs are in units of one missed note. They were set by reasoning on the mistakes that students make (each line says
 * which) and tried on the simulated students of tests/engine/match; none comes from a recording.
 */
export const WEIGHTS = {
  /** one expected note not played */
  missed: 1,
  /** … whose octave below the other hand struck in the same step: the ear misses one such note in ten, the player few */
  missedCovered: 0.4,
  /** one played note that answers nothing, at full confidence; a note heard with confidence 0 costs `extraAtNoConfidence` */
  extra: 1,
  extraAtNoConfidence: 0.4,
  /** going back any number of steps: more than one stray note, less than two, so that two notes played again are a going back */
  goingBack: 1.5,
  /** … and this much more where it comes in time, without the pause in which one thinks better of it */
  goingBackInTime: 0.3,
  /** a pause is this many steps at least */
  pauseSteps: 1.3,
  /** a step not played before the beginning or after the end costs less than one left out in the middle … */
  missedAtEnds: 0.5,
  /** … and all of them together at most this: a broken-off attempt is one event, not ten */
  missedAtEndsAtMost: 2,
  /** an interval x times the expected one costs `late · ln²x` or `early · ln²x`, and at most `lateAtMost` or `earlyAtMost`:
   *  a pause is human and cheap, two steps in one instant are a slip of the hand or of the ear */
  late: 0.35,
  lateAtMost: 0.7,
  early: 0.5,
  earlyAtMost: 2.5,
  /** a chord's note may come this share of a step after the chord's first before it begins to cost */
  chordShare: 0.2,
  chordLate: 2.5,
  chordLateAtMost: 2,
  /** ways that cost so much more than the cheapest are given up; going back and going on costs less than half of it */
  givenUp: 10,
} as const;

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
  /** a first guess at the beat that leaves more than this unanswered is tried again with another */
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
  /** another exercise is named only if it explains at least this much */
  otherExerciseAtLeast: 0.75,
  /** pianos stand between 90 cents under A4 = 440 Hz and 40 over it when a semitone's reading is put down to the tuning; and
   *  3.5 more on either side, since 95 of 100 readings lie so near the truth (our bench) */
  tuningAtLeastCents: -93.5,
  tuningAtMostCents: 43.5,
} as const;

/** Semitones of partials 2 to 8 above their fundamental, rounded to keys, and the octave below, whose second partial it is. */
export const GHOST_SEMITONES: readonly number[] = [-12, 12, 19, 24, 28, 31, 34, 36];

/**
 * What following costs when it is not known which exercise is played (follow.ts), in units of one missed note. Set by
 * reasoning and tried on the development piano (npm run bench:desk).
 */
export const FOLLOWING = {
  /** notes within this of the one before, and within that of the first, were struck together, s: faster than any run of the bench, slower than its chords are spread */
  strokeGapSec: 0.06,
  strokeSec: 0.18,
  /** notes heard with less confidence than the one are none, with more than the other count fully */
  noNote: 0.3,
  fullNote: 0.75,
  /** a note that is of no exercise */
  idle: 0.6,
  /** to begin an exercise */
  begin: 1.5,
  /** … and to begin or end it where no such pause parts it from other notes, s: figures of other music are cut out of a whole */
  partingSec: 0.6,
  abrupt: 0.7,
  /** … and this where it follows on another exercise */
  again: 0.3,
  missed: 1,
  /** … whose octave below was struck with it */
  covered: 0.35,
  wrong: 1.3,
  wrongSemitones: 3,
  extra: 1.3,
  /** a chord of which less than half is right, and which holds other keys, is another chord: so much more a key */
  anotherChord: 1,
  slip: 0.9,
  /** an extra note on the second to fourth partial of a right one */
  ghost: 0.7,
  /** keys struck again before going on, the first and each further one */
  repeated: 0.8,
  repeatedToo: 0.4,
  /** the first or the last keys of an exercise struck twice within this belong to it, s */
  againSec: 0.5,
  /** … and any others within this */
  caughtSec: 0.12,
  /** one note of a step that was left out as a whole */
  skipped: 1,
  mostSkipped: 2,
  /** going back, for one key a step and for each further one; from the first steps each costs as much, since that is a wrong start */
  goingBack: 1.5,
  goingBackToo: 0.4,
  beginning: 4,
  /** … and for each step of the way back */
  goingBackFar: 0.1,
  mostBack: 4,
  /** notes not played at the end, each, and all together at most with one key a step; so much of that more for each further key */
  leftAtEnd: 0.35,
  leftAtEndAtMost: 4,
  leftAtEndToo: 0.5,
  /** a pause of so many times the middle one of so many on either side costs so much: a stop, or the end of a wrong start … */
  pauseTimes: 2,
  pauseAmong: 4,
  pause: 0.4,
  /** … and a longer one than this ends whatever is going on, s */
  longestPauseSec: 7,
  /** keys of one chord may come so far apart, s, and at most this share of the times about them, at so much */
  brokenChordSec: 0.25,
  brokenChordShare: 0.4,
  brokenChord: 0.25,
  /** ways that cost so much more than idling are given up */
  hopeless: 5,
  /** an exercise may begin so many semitones below the lowest key heard */
  belowHeard: 24,
  /** exercises less of whose keys are found are not followed */
  leastShare: 0.5,
} as const;
