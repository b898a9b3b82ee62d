/**
 * What only recognition needs (it does not know which exercise is played): its bounds, and prices of events that an alignment judges
 * by time. In units of one missed note. Set by reasoning and tried on the development piano (npm run bench:desk).
 */
export const FOLLOWING = {
  /** notes within this of the one before, and within that of the first, were struck together, s: faster than any run of the bench, slower than its chords are spread */
  strokeGapSec: 0.06,
  strokeSec: 0.18,
  /** a note that is of no exercise: less than an extra one, so that a figure of other music is not stretched into an exercise */
  idle: 0.6,
  /** to begin an exercise: a dozen chance notes must not make one */
  begin: 1.5,
  /** … and to begin or end it where no such pause parts it from other notes, s: figures of other music are cut out of a whole */
  partingSec: 0.6,
  abrupt: 0.7,
  /** … and this where it follows on another exercise */
  again: 0.3,
  /** a key struck in place of another lies so near; further off it is a missed and an extra one: what is not known is trusted less */
  wrongSemitones: 3,
  /** a chord of which less than half is right, and which holds other keys, is another chord: so much more a key */
  anotherChord: 1,
  /** keys struck again before going on, the first and each further one */
  repeated: 0.8,
  repeatedToo: 0.4,
  /** the first or the last keys of an exercise struck twice within this belong to it, s */
  againSec: 0.5,
  /** … and any others within this */
  caughtSec: 0.12,
  /** steps left out in a row, at most */
  mostSkipped: 2,
  /** going back from the first steps costs the price for each key, since that is a wrong start */
  beginning: 4,
  /** … and for each step of the way back, no further than so many */
  goingBackFar: 0.1,
  mostBack: 4,
  /** a pause of so many times the middle one of so many on either side costs so much: a stop, or the end of a wrong start … */
  pauseTimes: 2,
  pauseAmong: 4,
  pause: 0.4,
  /** … and a longer one than this ends whatever is going on, s */
  longestPauseSec: 8,
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
