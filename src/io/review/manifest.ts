import * as v from 'valibot';
import { CHOICE, nameOf, textOf } from '../check/index.ts';
import { REVIEW_LIMITS } from './limits.ts';
import { REPORT_NAME, SOUND_NAME, VOICE_NAME } from './names.ts';

/** The first file of a review says what it is. */
export const FORMAT = 'evenfall-review';
export const FORMAT_VERSION = 1;

const { mostAttempts, mostRemarks, mostCorrections, mostAssigned } = REVIEW_LIMITS;
const { nameLetters, remarkLetters, wordsLetters } = REVIEW_LIMITS;

/** Names of things, made by a program: nothing that could be taken for a path or for markup. */
const id = v.pipe(v.string(), v.regex(/^[0-9A-Za-z][0-9A-Za-z_-]{0,79}$/));
const name = nameOf(nameLetters);
const text = textOf(remarkLetters);
const step = v.pipe(v.number(), v.integer(), v.minValue(0), v.maxValue(1000));
/** 4102444800000: the year 2100. */
const moment = v.pipe(v.number(), v.integer(), v.minValue(0), v.maxValue(4_102_444_800_000));

const place = v.variant('kind', [
  v.strictObject({ kind: v.literal('attempt') }),
  v.strictObject({
    kind: v.literal('note'),
    step: v.nullable(step),
    midi: v.pipe(v.number(), v.integer(), v.minValue(0), v.maxValue(127)),
    timeSec: v.nullable(v.pipe(v.number(), v.minValue(-60), v.maxValue(86_400))),
  }),
  v.pipe(
    v.strictObject({ kind: v.literal('stretch'), fromStep: step, toStep: step }),
    v.check(({ fromStep, toStep }) => fromStep <= toStep, 'It ends before it begins.'),
  ),
]);

const remark = v.pipe(
  v.object({ id, place, text, voice: v.nullable(v.pipe(v.string(), v.regex(VOICE_NAME))) }),
  v.check((one) => one.text.trim() !== '' || one.voice !== null, 'It says nothing.'),
);

const correction = v.object({
  place,
  verdict: v.picklist(['correct', 'wrong', 'missed', 'not-played', 'mistaken'] as const),
  why: text,
});

const attempt = v.object({
  id,
  whenMs: v.nullable(moment),
  name,
  report: v.pipe(v.string(), v.regex(REPORT_NAME)),
  recognisedAs: v.nullable(CHOICE),
  sound: v.nullable(v.pipe(v.string(), v.regex(SOUND_NAME))),
  remarks: v.pipe(
    v.array(remark),
    v.maxLength(mostRemarks),
    v.check((these) => haveOwnIds(these), 'Two have one name.'),
  ),
  corrections: v.pipe(v.array(correction), v.maxLength(mostCorrections)),
});

const assigned = v.object({
  exercise: CHOICE,
  targetBpm: v.nullable(v.pipe(v.number(), v.minValue(1), v.maxValue(1000))),
  inARow: v.nullable(v.pipe(v.number(), v.integer(), v.minValue(1), v.maxValue(100))),
  evennessPercent: v.nullable(v.pipe(v.number(), v.minValue(0.1), v.maxValue(100))),
  note: text,
});

function haveOwnIds(these: readonly { readonly id: string }[]): boolean {
  return new Set(these.map((one) => one.id)).size === these.length;
}

/**
 * What `manifest.json` of version 1 holds; published as review.schema.json. Fields that a later writer of version 1 adds
 * are passed over; places of a remark must be known, or it would hang somewhere else.
 */
export const MANIFEST_V1 = v.object({
  format: v.literal(FORMAT),
  version: v.literal(FORMAT_VERSION),
  kind: v.picklist(['review', 'attempts'] as const),
  id,
  madeMs: moment,
  student: name,
  teacher: name,
  words: textOf(wordsLetters),
  attempts: v.pipe(
    v.array(attempt),
    v.maxLength(mostAttempts),
    v.check((these) => haveOwnIds(these), 'Two have one name.'),
  ),
  assignment: v.pipe(v.array(assigned), v.maxLength(mostAssigned)),
});

/** Any version: enough to say that it is newer. */
export const MANIFEST_HEAD = v.object({
  format: v.literal(FORMAT),
  version: v.pipe(v.number(), v.integer(), v.minValue(1)),
});

export type Manifest = v.InferOutput<typeof MANIFEST_V1>;
