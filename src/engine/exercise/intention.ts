import * as v from 'valibot';
import { told, type Shape } from '../base/shapes.ts';

/** Rhythms in which an exercise is practised. Common practice, no source. */
export const RHYTHM = v.picklist([
  'even',
  'long-short',
  'short-long',
  'groups-of-2',
  'groups-of-3',
  'groups-of-4',
  'groups-of-6',
  'stop-before-crossings',
  'stop-on-each-beat',
  'stop-on-each-step',
  'prepared-silently',
  'one-note-more',
]);
/**
 * How the notes are to follow each other; where one is held or a stop is made, for how long is the player's own. Prepared silently: the
 * keys of each step are pressed without a sound, then struck. One note more: two notes, then three, and so on, each length `times`.
 */
export type Rhythm = Shape<typeof RHYTHM>;

/** How the notes are joined. */
export const TOUCH = v.picklist(['legato', 'detached', 'staccato']);
export type Touch = Shape<typeof TOUCH>;

/** How loud: throughout; from the first note to the last; an accent on the first of each group; one hand over the other. */
export const LOUDNESS = v.picklist([
  'p',
  'mf',
  'f',
  'growing',
  'fading',
  'accents-of-2',
  'accents-of-3',
  'accents-of-4',
  'accents-of-6',
  'left-over-right',
  'right-over-left',
]);
export type Loudness = Shape<typeof LOUDNESS>;

const MOST_TIMES = 12;
/** Copies of a stretch that are told apart, at most. */
export const MOST_COPIES = 48;
const MOST_STEPS = 400;
const PLACE = v.pipe(v.number(), v.integer(), v.minValue(0), v.maxValue(MOST_STEPS));

export const INTENTION = v.object({
  stretch: v.exactOptional(
    told(
      'only these steps of the exercise, both counted from 0; absent: all of it',
      v.pipe(
        v.object({ fromStep: PLACE, toStep: PLACE }),
        v.check(({ fromStep, toStep }) => fromStep < toStep),
      ),
    ),
  ),
  times: told(
    'so often in a row, each time right, makes it done',
    v.pipe(v.number(), v.integer(), v.minValue(1), v.maxValue(MOST_TIMES)),
  ),
  rhythm: RHYTHM,
  blocked: v.exactOptional(
    told(
      'the notes of each hand position struck as one chord, one position after the other',
      v.literal(true),
    ),
  ),
  touch: v.exactOptional(TOUCH),
  loudness: v.exactOptional(LOUDNESS),
  ladderBpm: v.exactOptional(
    told(
      'a ladder of tempi: each time it is done, so many beats a minute faster; once it is uneven, two back',
      v.pipe(v.number(), v.integer(), v.minValue(1), v.maxValue(40)),
    ),
  ),
  apart: v.exactOptional(told('each hand by itself, first one, then the other; then both', v.literal(true))),
  then: v.exactOptional(
    told(
      'rhythms that follow, one after the other, once this one is done',
      v.pipe(v.array(RHYTHM), v.maxLength(4)),
    ),
  ),
});
/** What somebody meant to practise of an exercise, and what makes it done; the tempo is that aimed at. */
export type Intention = Shape<typeof INTENTION>;

export const ALL_RHYTHMS: readonly Rhythm[] = RHYTHM.options;
export const ALL_TOUCHES: readonly Touch[] = TOUCH.options;
export const ALL_LOUDNESSES: readonly Loudness[] = LOUDNESS.options;

/** What became of an intention: how it is laid over what was played. */
export const PRACTISED = v.object({
  intention: INTENTION,
  repeats: told(
    'so often the stretch was begun; its copies follow each other in the steps of the report; 0: the whole was played in its place',
    v.pipe(v.number(), v.integer(), v.minValue(0), v.maxValue(MOST_COPIES)),
  ),
  longToShort: v.exactOptional(
    told(
      'length of the long note over that of the short one as played: what evenness is measured about',
      v.pipe(v.number(), v.minValue(0.1), v.maxValue(10)),
    ),
  ),
  heldPlace: v.exactOptional(
    told(
      'which note of each group is held, from 0: the first, or the last where groups are run and waited after',
      v.pipe(v.number(), v.integer(), v.minValue(0), v.maxValue(5)),
    ),
  ),
});
/** An intention, laid over what was played. */
export type Practising = Shape<typeof PRACTISED>;

/** Whether two intentions are the same work, whatever is to follow. */
export function sameIntention(a: Intention, b: Intention): boolean {
  return (
    a.stretch?.fromStep === b.stretch?.fromStep &&
    a.stretch?.toStep === b.stretch?.toStep &&
    a.rhythm === b.rhythm &&
    a.blocked === b.blocked &&
    a.touch === b.touch &&
    a.loudness === b.loudness &&
    a.ladderBpm === b.ladderBpm &&
    a.times === b.times
  );
}

/** The whole, once, as it is written: such an attempt counts like one of which nothing was said. */
export const WHOLE: Intention = { times: 1, rhythm: 'even' };

export const isWhole = (intention: Intention): boolean => sameIntention(intention, WHOLE);
