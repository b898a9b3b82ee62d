import * as v from 'valibot';
import { listOf, NUMBER, STEP, told, type Shape } from '../../../base/shapes.ts';
import { LOUDNESS, RHYTHM, TOUCH } from '../../../exercise/index.ts';
import { FORM, HAND, MINOR_SCALE } from '../../../exercise/types.ts';
import { NOTICE } from '../../../notices/index.ts';
import {
  CHORD_PLACE,
  COUNT,
  CROSSING_AT,
  FAULT,
  NAME,
  OFTEN,
  PLACE,
  SIGNATURE,
  SPOT,
  WHOLE_MS,
} from './places.ts';

/*
 * What can be said of an attempt: a closed list of situations, each with its values. No language in it; english/ and german/
 * make sentences of it, and rules.ts says of each when it holds, why, and how grave it is.
 */

const KEY = NAME;
const GIVEN = {
  steps: told('the steps that it speaks of', listOf(STEP)),
  faults: told('how many things it says are not right; 0: it blames nothing', COUNT),
  sure: told(
    'probability that it holds, from the evidence for each note and the errors of its figures; absent where nothing is blamed',
    v.exactOptional(v.pipe(v.number(), v.minValue(0), v.maxValue(1))),
  ),
};
const says = <Name extends string, Values extends v.ObjectEntries>(situation: Name, values: Values) =>
  v.object({ situation: v.literal(situation), ...GIVEN, ...values });

const DIFFERENCE = v.variant('kind', [
  v.object({ kind: v.literal('form'), like: FORM, ofKey: v.nullable(KEY), not: FORM }),
  v.object({ kind: v.literal('key'), like: KEY, not: KEY }),
  v.object({ kind: v.literal('both-hands'), notHand: v.nullable(HAND) }),
  v.object({ kind: v.literal('one-hand') }),
  v.object({ kind: v.literal('octaves'), like: COUNT, not: COUNT }),
  v.object({ kind: v.literal('minor-scale'), like: MINOR_SCALE, not: MINOR_SCALE }),
]);
/** How a played exercise differs from the chosen one. */
export type Difference = Shape<typeof DIFFERENCE>;

const IMPROVED = v.variant('figure', [
  v.object({
    figure: v.picklist(['crossing', 'evenness', 'turn', 'change', 'spread', 'drift']),
    now: NUMBER,
    before: NUMBER,
  }),
  v.object({ figure: v.literal('notes'), before: COUNT }),
]);
/** A figure that is clearly better than in the last attempt; of notes, how many were not right. */
export type Improved = Shape<typeof IMPROVED>;

const IN_PAIRS = v.picklist(['long-short', 'short-long']);

const OUTCOME = told(
  'it was as meant, surely not so, or that cannot be told',
  v.picklist(['so', 'not-so', 'untold']),
);
/** What became of what was to be practised. */
const PRACTICE = {
  outcome: v.picklist(['done', 'nearly', 'not-yet']),
  rhythm: RHYTHM,
  wanted: told('so often in a row was meant', COUNT),
  right: told('so often in a row it was right, at most as often as wanted', COUNT),
  rightAtEnd: told('so many right ones stand at the end of the attempt: the next one counts on', COUNT),
  repeats: told('so often it was begun', COUNT),
  longToShort: v.exactOptional(
    told(
      'how many times as long the long (or held) steps are as the others, with its ±; `meant`: as pairs are written',
      v.object({ value: NUMBER, plusMinus: NUMBER, meant: NUMBER }),
    ),
  ),
  touch: v.exactOptional(
    v.object({
      meant: TOUCH,
      outcome: OUTCOME,
      gapMs: v.exactOptional(told('median gap from note to note; −: overlap', NUMBER)),
      plusMinusMs: v.exactOptional(NUMBER),
    }),
  ),
  loudness: v.exactOptional(
    v.object({
      meant: LOUDNESS,
      outcome: OUTCOME,
      db: v.exactOptional(
        told(
          'how much louder (of fading: softer) the end is than the beginning, the accents than the others, the hand that was to be',
          NUMBER,
        ),
      ),
      plusMinusDb: v.exactOptional(NUMBER),
      bent: v.exactOptional(told('most of it comes early, or late', v.picklist(['early', 'late']))),
    }),
  ),
  lacks: told(
    'what kept it from being done; faults of notes and of time stand beside it',
    listOf(
      v.variant('kind', [
        v.object({ kind: v.literal('times'), right: COUNT, wanted: COUNT }),
        v.object({
          kind: v.literal('rhythm'),
          rhythm: RHYTHM,
          played: told('long : short', NUMBER),
          turned: told('it is the other way round', v.boolean()),
        }),
        v.object({
          kind: told('with one note more each time: right up to so many notes', v.literal('length')),
          right: COUNT,
          wanted: COUNT,
        }),
        v.object({ kind: v.literal('holds'), rhythm: RHYTHM, group: v.nullable(COUNT) }),
        v.object({ kind: told('not as meant; how it was stands beside', v.picklist(['touch', 'loudness'])) }),
        v.object({ kind: v.literal('tempo'), playedBpm: NUMBER, aimBpm: NUMBER }),
        v.object({ kind: told('the whole was played in place of the stretch', v.literal('whole')) }),
      ]),
    ),
  ),
};

export const STATEMENT = v.variant('situation', [
  says('too-little', {
    right: COUNT,
    of: COUNT,
    heardMuch: told('much was heard, but little of it fits', v.boolean()),
    finding: v.nullable(NOTICE),
  }),
  says('sound-lost', { lostSec: NUMBER }),
  says('other-exercise', {
    difference: DIFFERENCE,
    measured: told('it is the other one that is measured', v.boolean()),
    note: told(
      'where only the mode differs, the note that made it',
      v.nullable(v.object({ struck: NAME, wanted: NAME, often: v.picklist(['once', 'both', 'each']) })),
    ),
  }),

  says('same-place-again', { fault: FAULT }),
  says('leading-note', { fault: FAULT, often: v.nullable(OFTEN), inCadence: v.boolean() }),
  says('signature', { fault: FAULT, often: OFTEN, signature: SIGNATURE }),
  says('landed-off', { notes: listOf(FAULT) }),
  says('inner-note', { fault: FAULT }),
  says('wrong-notes', { notes: listOf(FAULT) }),
  says('missed-notes', { notes: listOf(FAULT) }),
  says('slips', {
    keys: listOf(
      v.object({
        step: STEP,
        struck: NAME,
        caughtWith: told('the right note with which it was caught; null: with none', v.nullable(NAME)),
        place: PLACE,
      }),
    ),
  }),
  says('repeats', { spots: listOf(v.object({ step: STEP, spot: SPOT })) }),

  says('stopped', { at: SPOT, gapSec: NUMBER }),
  says('restarted', { at: SPOT, back: told('null: to the very beginning', v.nullable(SPOT)) }),
  says('broken-off', { at: SPOT }),
  says('started-late', { at: SPOT }),

  says('hands-apart-for-now', {
    reason: v.variant('kind', [
      v.object({ kind: v.literal('crossings') }),
      v.object({ kind: v.picklist(['delay', 'uneven']), together: NUMBER, alone: NUMBER }),
    ]),
  }),
  says('crossing-late-both-ways', { lateMs: WHOLE_MS }),
  says('crossing-late-one-direction', {
    crossing: CROSSING_AT,
    sameNote: told('each of them leads to that note', v.boolean()),
    times: COUNT,
    lateMs: WHOLE_MS,
  }),
  says('crossing-late', {
    crossings: told(
      'the latest first',
      listOf(v.object({ step: STEP, crossing: CROSSING_AT, lateMs: WHOLE_MS })),
    ),
  }),
  says('late-note', {
    notes: told('the latest first', listOf(v.object({ step: STEP, at: SPOT, lateMs: WHOLE_MS }))),
  }),
  says('change-hesitates', { to: CHORD_PLACE, ratio: NUMBER }),
  says('late-at-the-turn', { lateMs: WHOLE_MS, chords: v.boolean() }),
  says('tired', {
    attempts: told('so many in a row, each less even than the one before', COUNT),
    fromPercent: NUMBER,
    toPercent: NUMBER,
  }),
  says('uneven-in-pairs', { rhythm: IN_PAIRS }),
  says('uneven', { percent: NUMBER, boundPercent: NUMBER }),
  says('drift', { fromBpm: NUMBER, toBpm: NUMBER }),
  says('one-hand-leads', { first: HAND, byMs: WHOLE_MS }),
  says('hands-apart', {}),
  says('chords-spread', {
    spreadMs: WHOLE_MS,
    last: told('which note is mostly last', v.nullable(v.picklist(['lowest', 'inner', 'highest']))),
    hand: told('said where both hands play', v.nullable(HAND)),
  }),
  says('inner-notes-soft', {
    softerDb: told('null: most are too soft to be heard at all', v.nullable(NUMBER)),
  }),

  says('slows-to-the-end', { fromBpm: NUMBER, toBpm: NUMBER }),
  says('broad-last-note', { lateMs: WHOLE_MS }),
  says('in-a-rhythm', { rhythm: RHYTHM }),
  says('tempo-sways', { slowBpm: NUMBER, fastBpm: NUMBER }),
  says('loudness-shaped', {
    way: v.picklist(['louder', 'softer', 'to-the-turn', 'from-the-turn']),
    byDb: NUMBER,
  }),
  says('accented-in-groups', { every: told('every so-manieth note', COUNT), byDb: NUMBER }),
  says('pedal-held', {}),

  says('not-sure', {
    notes: listOf(v.object({ step: STEP, note: NAME, place: PLACE, hand: v.nullable(HAND) })),
  }),

  says('practised', PRACTICE),

  says('under-tempo', { playedBpm: NUMBER, aimBpm: NUMBER }),
  says('key-ready', {
    key: told('null: it is a passage of one’s own', v.nullable(KEY)),
    atBpm: v.nullable(NUMBER),
    inARow: COUNT,
    allSure: v.boolean(),
  }),
  says('hand-ready', { hand: v.nullable(HAND), inARow: COUNT, allSure: v.boolean() }),
  says('often-enough', { inARow: COUNT, allSure: v.boolean() }),
  says('better', { improved: IMPROVED }),
  says('twice-at-the-criterion', { allSure: v.boolean() }),
  says('at-the-criterion', { allSure: v.boolean() }),
  says('nearly-even', { percent: NUMBER, boundPercent: NUMBER }),
  says('nothing-to-remark', { right: COUNT, of: COUNT, unsure: COUNT }),
]);
/** One thing said of an attempt: a situation with its values. */
export type Statement = Shape<typeof STATEMENT>;
export type SituationName = Statement['situation'];
/** The values of one situation. */
export type Saying<Name extends SituationName> = Extract<Statement, { readonly situation: Name }>;
export { IMPROVED };
