import * as v from 'valibot';
import { listOf, NUMBER, STEP, TEXT, told, type Shape } from '../../../base/shapes.ts';
import { HAND, HANDS, NOTES_A_BEAT } from '../../../exercise/types.ts';

/*
 * Where something happened and what is to be practised, as values; whatever language tells them. Notes are named plainly,
 * without octave, as computers write them: "G#".
 */

export const NAME = v.pipe(v.string(), v.maxLength(20));
export const COUNT = STEP;
export const WHOLE_MS = NUMBER;

export const CHORD_PLACE = v.object({
  label: told('what the chord is called: "V7", "first inversion"; null: it has no name', v.nullable(TEXT)),
  number: told('which chord of the exercise, from 1', COUNT),
  which: told(
    'which of several of that name; `up`, `down`: of the way',
    v.picklist(['only', 'first', 'middle', 'last', 'top', 'up', 'down']),
  ),
});
/** A chord among those of the exercise. */
export type ChordPlace = Shape<typeof CHORD_PLACE>;

const OCTAVE = told(
  'where things called alike lie in different octaves of the exercise, in which of these',
  v.picklist(['lower', 'middle', 'upper']),
);
export type Octave = Shape<typeof OCTAVE>;

const BAR_NUMBER = told('from 1; 0: the upbeat', COUNT);

export const PLACE = v.variant('kind', [
  v.object({
    kind: v.picklist(['start', 'end', 'top', 'up', 'down', 'anywhere']),
    octave: v.exactOptional(OCTAVE),
  }),
  v.object({ kind: v.literal('chord'), chord: CHORD_PLACE }),
  v.object({ kind: told('of a passage of one’s own', v.literal('bar')), bar: BAR_NUMBER }),
]);
/** Where a step lies. */
export type StepPlace = Shape<typeof PLACE>;

export const SPOT = v.object({ note: NAME, place: PLACE });
/** A step by its (upper) note and its place; in exercises of chords by its place alone. */
export type NamedStep = Shape<typeof SPOT>;

const STRETCH = v.variant('kind', [
  v.object({ kind: told('all of the exercise', v.literal('whole')), chords: v.boolean() }),
  v.object({ kind: v.literal('notes'), names: listOf(NAME) }),
  v.object({ kind: v.literal('numerals'), names: listOf(NAME) }),
  v.object({ kind: v.literal('chords'), from: CHORD_PLACE, to: CHORD_PLACE }),
  v.object({
    kind: v.literal('ends'),
    from: NAME,
    to: NAME,
    way: v.picklist(['up', 'down', 'up-and-down']),
    notes: v.exactOptional(told('how many notes it has', COUNT)),
  }),
  v.object({ kind: v.literal('bars'), from: NAME, fromBar: BAR_NUMBER, to: NAME, toBar: BAR_NUMBER }),
]);
/** A stretch of steps. */
export type NamedStretch = Shape<typeof STRETCH>;

export const TASK = v.object({
  hands: told('said where others play than in the exercise', v.nullable(HANDS)),
  stretch: STRETCH,
  tempoBpm: NUMBER,
  notesABeat: told('notes (or chords) to a beat; null: as it is written', v.nullable(NOTES_A_BEAT)),
});
/** What is to be practised, by whom and how fast. */
export type Task = Shape<typeof TASK>;

export const FAULT = v.object({
  step: STEP,
  wanted: NAME,
  struck: told(
    'the key struck in its place; `octave-high`, `octave-low`: the right note an octave off; null: none',
    v.nullable(v.union([v.picklist(['octave-high', 'octave-low']), NAME])),
  ),
  place: PLACE,
  hand: told('said where both hands play', v.nullable(HAND)),
});
/** An expected note that was not struck, or for which another was. */
export type FaultFacts = Shape<typeof FAULT>;

export const OFTEN = v.variant('kind', [
  v.object({ kind: v.picklist(['unsaid', 'both', 'each']) }),
  v.object({ kind: v.literal('once'), place: PLACE }),
  v.object({ kind: v.literal('some'), count: COUNT }),
]);
/** Of several alike, how often. */
export type HowOften = Shape<typeof OFTEN>;

export const SIGNATURE = v.object({
  kind: v.picklist(['sharps', 'flats', 'none']),
  names: listOf(NAME),
});

export const CROSSING_AT = v.object({
  kind: v.picklist(['thumb-under', 'over-thumb']),
  direction: v.picklist(['up', 'down']),
  to: told('the note after the crossing', NAME),
  octave: v.exactOptional(OCTAVE),
  hand: told('said where both hands play', v.nullable(HAND)),
});
/** A crossing by the note that it leads to. */
export type CrossingFacts = Shape<typeof CROSSING_AT>;
