import * as v from 'valibot';
import { BPM, BUILDABLE, exerciseOf, INTENTION, MIDI, SECONDS, told } from '../../engine/index.ts';
import type { ExerciseChoice, Intention, Shape } from '../../engine/index.ts';
import { plainName } from '../check/index.ts';
import { REPORT_NAME, SOUND_NAME, VOICE_NAME } from './names.ts';

/** The first file of a review says what it is. */
export const FORMAT = 'evenfall-review';
export const FORMAT_VERSION = 1;

/**
 * The most that a review holds. Far beyond what a teacher writes in an evening, and little enough that no file can fill a
 * device: up to 200 recordings are to fit, and a minute of sound in Opus is half a megabyte.
 */
export const REVIEW_LIMITS = {
  mostFileBytes: 256 * 2 ** 20,
  mostUnpackedBytes: 384 * 2 ** 20,
  mostAttempts: 200,
  mostRemarks: 200,
  mostCorrections: 200,
  mostVoices: 1000,
  mostAssigned: 50,
  mostManifestBytes: 8 * 2 ** 20,
  mostReportBytes: 4 * 2 ** 20,
  /** an hour of Opus, or six minutes of one channel in 16 bits */
  mostSoundBytes: 32 * 2 ** 20,
  mostVoiceBytes: 16 * 2 ** 20,
  /** notes struck, missed and unsure of one attempt; the longest exercise has 114 */
  mostNotes: 2000,
  nameLetters: 200,
  remarkLetters: 4000,
  wordsLetters: 20_000,
} as const;
const { mostAttempts, mostRemarks, mostCorrections, mostAssigned } = REVIEW_LIMITS;
const { nameLetters, remarkLetters, wordsLetters } = REVIEW_LIMITS;

const text = (mostLetters: number) => v.pipe(v.string(), v.maxLength(mostLetters));
const list = <Item extends v.GenericSchema>(item: Item, most: number) =>
  v.pipe(v.array(item), v.maxLength(most));
const wholeNumber = (least: number, most: number) =>
  v.pipe(v.number(), v.integer(), v.minValue(least), v.maxValue(most));

/** Names of things, made by a program: nothing that could be taken for a path or for markup. */
export const ID = v.pipe(v.string(), v.regex(/^[0-9A-Za-z][0-9A-Za-z_-]{0,79}$/));
export const STEP = wholeNumber(0, 1000);
/** 4102444800000: the year 2100. */
export const MOMENT = v.pipe(wholeNumber(0, 4_102_444_800_000), v.description('ms since 1970'));

/** Where a remark is pinned. A kind must be known, or the remark would hang somewhere else. */
export const PLACE = v.variant('kind', [
  v.object({ kind: v.literal('attempt') }),
  v.object({
    kind: told('one note struck, missed or unsure', v.literal('note')),
    step: v.nullable(STEP),
    midi: MIDI,
    timeSec: told('on the attempt’s clock; null for what did not sound', v.nullable(SECONDS)),
  }),
  v.pipe(
    v.object({ kind: v.literal('stretch'), fromStep: STEP, toStep: STEP }),
    v.check(({ fromStep, toStep }) => fromStep <= toStep, 'It ends before it begins.'),
  ),
]);

/** Something a teacher says about a place, typed or spoken (at least one of both). */
const REMARK = v.pipe(
  v.object({
    id: ID,
    place: PLACE,
    text: told('empty where only spoken', text(remarkLetters)),
    voice: told('the spoken remark; null: none', v.nullable(v.pipe(v.string(), v.regex(VOICE_NAME)))),
  }),
  v.check((one) => one.text.trim() !== '' || one.voice !== null, 'It says nothing.'),
);

/** What a teacher holds against a verdict of the tool. It stands beside the tool's own, never over it. */
export const CORRECTION = v.object({
  place: told('the note that it is about; attempt: the verdict in words', PLACE),
  verdict: v.picklist(['correct', 'wrong', 'missed', 'not-played', 'mistaken']),
  why: text(remarkLetters),
});

/** One attempt that travels. */
const ATTEMPT = v.object({
  id: ID,
  whenMs: told('when it was played; null: not known', v.nullable(MOMENT)),
  name: told('of the recording, as the student or the file calls it', text(nameLetters)),
  report: v.pipe(v.string(), v.regex(REPORT_NAME)),
  recognisedAs: told(
    'what the tool took it for, where the teacher chose another exercise; null: the same',
    v.nullable(BUILDABLE),
  ),
  exampleFor: v.exactOptional(
    told('played by the teacher, as an example for the attempt of this name; absent: the student’s own', ID),
  ),
  sound: told('null: it travels without', v.nullable(v.pipe(v.string(), v.regex(SOUND_NAME)))),
  remarks: v.pipe(
    list(REMARK, mostRemarks),
    v.check((these) => haveOwnIds(these), 'Two have one name.'),
  ),
  corrections: list(CORRECTION, mostCorrections),
});

/** An exercise to practise, and what is asked of it. */
export const ASSIGNED = v.pipe(
  v.object({
    exercise: BUILDABLE,
    targetBpm: told('beats a minute; null: none', v.nullable(BPM)),
    inARow: told(
      'attempts in a row that are to meet the criteria; null: as usual',
      v.nullable(wholeNumber(1, 100)),
    ),
    evennessPercent: told(
      'evenness at most; null: as usual',
      v.nullable(v.pipe(v.number(), v.minValue(0.1), v.maxValue(100))),
    ),
    note: text(remarkLetters),
    intention: v.exactOptional(
      told('how it is to be practised, by which it is judged; absent: as it is written', INTENTION),
    ),
  }),
  v.check(({ exercise, intention }) => fits(exercise, intention), 'The stretch lies beyond the exercise.'),
);

function fits(exercise: ExerciseChoice, intention: Intention | undefined): boolean {
  return (intention?.stretch?.toStep ?? 0) < (exerciseOf(exercise)?.steps.length ?? 0);
}

function haveOwnIds(these: readonly { readonly id: string }[]): boolean {
  return new Set(these.map((one) => one.id)).size === these.length;
}

type Filed = Pick<Shape<typeof ATTEMPT>, 'id' | 'exampleFor'>;

/** Each is an example for an attempt that is there, and is the student's own. */
function areExamples(these: readonly Filed[]): boolean {
  const own = new Set(these.filter(({ exampleFor }) => exampleFor === undefined).map(({ id }) => id));
  return these.every(({ exampleFor }) => exampleFor === undefined || own.has(exampleFor));
}

/** What `manifest.json` of version 1 holds: type, check, and published as review.schema.json (`npm run schemas`). */
export const MANIFEST_V1 = v.pipe(
  v.object({
    format: v.literal(FORMAT),
    version: v.literal(FORMAT_VERSION),
    kind: told(
      'review: from a teacher; attempts: from a student to a teacher',
      v.picklist(['review', 'attempts']),
    ),
    id: ID,
    madeMs: MOMENT,
    student: told('as they call themselves; empty where it is not said', text(nameLetters)),
    teacher: told('as they call themselves; empty where it is not said', text(nameLetters)),
    words: told('about all of it', text(wordsLetters)),
    attempts: v.pipe(
      list(ATTEMPT, mostAttempts),
      v.check((these) => haveOwnIds(these), 'Two have one name.'),
      v.check((these) => areExamples(these), 'An example is for no attempt in it.'),
    ),
    assignment: list(ASSIGNED, mostAssigned),
  }),
  v.metadata({
    title: 'Evenfall review, version 1: manifest.json',
    description:
      "A review file is a zip (deflated or stored; no password, no zip64) with manifest.json as this schema has it, reports/N.json (report.schema.json), sound/N.webm or .wav, and voice/N.webm or .wav. N counts from 1. Every file is named once in the manifest, and no other file may be in it. All text is plain text, never markup. Steps are those of the attempt's exercise, from 0. A manifest of version 1 may gain fields; none is taken away or changes its meaning.",
  }),
);
export type Manifest = Shape<typeof MANIFEST_V1>;

/** Any version: enough to say that it is newer. */
export const MANIFEST_HEAD = v.object({
  format: v.literal(FORMAT),
  version: v.pipe(v.number(), v.integer(), v.minValue(1)),
});

/** The same with its names in one line each. */
export function withPlainNames(manifest: Manifest): Manifest {
  return {
    ...manifest,
    student: plainName(manifest.student),
    teacher: plainName(manifest.teacher),
    attempts: manifest.attempts.map((attempt) => ({ ...attempt, name: plainName(attempt.name) })),
  };
}
