import * as v from 'valibot';
import { BUILDABLE, NOTICE, RECOGNITION, REPORT, SECONDS } from '../../engine/index.ts';
import type { Shape } from '../../engine/index.ts';
import { checked, parseJson } from '../check/index.ts';
import { StorageError } from '../database/index.ts';
import { ASSIGNED, CORRECTION, ID, MOMENT, PLACE } from '../review/manifest.ts';

/** The first file of a backup says what it is. */
export const FORMAT = 'evenfall-teaching';
export const FORMAT_VERSION = 1;
/** A class of forty with ten recordings a week for five years, twice over. */
const MOST = 200_000;

const text = (mostLetters: number) => v.pipe(v.string(), v.maxLength(mostLetters));
const list = <Item extends v.GenericSchema>(item: Item) => v.pipe(v.array(item), v.maxLength(MOST));
const told = v.union([text(4000), NOTICE]);
const moment = v.nullable(MOMENT);

/** A piano of which is known which keys were struck. */
export const SETTLED = v.object({
  /** against A4 = 440 Hz */
  cents: v.number(),
  /** the attempt of which the teacher said what it was */
  by: ID,
});

/** A review that was made. */
const SENT = v.object({
  /** the same for one that was made again, before anything new came in */
  id: ID,
  madeMs: MOMENT,
  fileName: text(400),
  /** names of the attempts in it */
  attempts: list(ID),
});

/** Somebody whose recordings lie here. */
export const STUDENT = v.object({
  id: ID,
  /** as the teacher calls them; '' where no name was found */
  name: text(200),
  /** what else their recordings are called by: beginnings of names, folders, senders; absent: nothing */
  aliases: v.exactOptional(list(text(200))),
  /** the name was read out of what a recording is called, and the teacher has not said yet that it is right; absent: they have */
  proposed: v.exactOptional(v.boolean()),
  /** about all of it, for the next review */
  words: text(8000),
  /** what they wrote themselves with the last attempts that they sent */
  message: text(8000),
  assignment: list(ASSIGNED),
  /** the tuning of their piano, as a correction settled it; absent or null: none did */
  piano: v.exactOptional(v.nullable(SETTLED)),
  /** of other pianos that they play, as corrections before settled them; absent: none did */
  elsewhere: v.exactOptional(v.array(SETTLED)),
  sent: list(SENT),
});

/** A recording that was handed in. */
export const FILE = v.object({
  id: ID,
  /** as it came, folders and all, e.g. "Mara/d-major.m4a" */
  path: text(4000),
  studentId: ID,
  addedMs: MOMENT,
  /** when it was recorded as its name has it, else when the file was last written; null: not known */
  writtenMs: moment,
  bytes: v.pipe(v.number(), v.minValue(0)),
  /** what tells its sound from all other (`printOf`); absent: not known */
  print: v.exactOptional(text(100)),
  /** failed: it may be tried again; refused: nothing of it was kept */
  state: v.picklist(['waiting', 'sorted', 'failed', 'refused']),
  /** why it failed or was refused, in English; '' where it did not */
  reason: text(4000),
  /** what could not be read */
  remarks: list(told),
  /** why no playing was found in it; absent: some was, or version 0.1 sorted it */
  untold: v.exactOptional(told),
  /** when it was heard as it came; absent: never */
  seenMs: v.exactOptional(MOMENT),
});

/** One stretch of playing that was found. */
export const PLAYING = v.object({
  id: ID,
  /** '' for what a student sent as attempts */
  fileId: v.union([v.literal(''), ID]),
  studentId: ID,
  /** when it came to this student */
  addedMs: MOMENT,
  /** when it was played, as far as that is known: the file's time, or as the student's own journal has it */
  whenMs: moment,
  name: text(1000),
  /** where it lay in its recording */
  startSec: SECONDS,
  endSec: SECONDS,
  recognition: RECOGNITION,
  /** what the teacher says it is; null: as recognised */
  chosen: v.nullable(BUILDABLE),
  /** why there is no report, '' where there is one */
  reason: told,
  heardMs: moment,
  /** when it last went out in a review */
  answeredMs: moment,
});

/** Own words, or exercises, that the teacher uses again. */
export const TEMPLATE = v.object({
  id: ID,
  /** a remark, or what the exercises together are called */
  words: text(4000),
  /** exercises that are assigned together, each as it is to be practised; absent: it is a remark */
  assignment: v.exactOptional(v.pipe(v.array(ASSIGNED), v.maxLength(50))),
  /** how often it was used */
  used: v.pipe(v.number(), v.integer(), v.minValue(0)),
});

const HEAD = v.object({
  format: v.literal(FORMAT),
  version: v.literal(FORMAT_VERSION),
  students: list(STUDENT),
  files: list(FILE),
  playings: list(PLAYING),
  templates: v.exactOptional(list(TEMPLATE)),
  /** of the teacher's own; whether they are any, whoever takes them looks */
  passages: v.exactOptional(list(v.unknown())),
});
export type BackupHead = Shape<typeof HEAD>;

const ANY_HEAD = v.object({ format: v.literal(FORMAT), version: v.number() });

export const WRITTEN_REMARK = v.object({ id: ID, place: PLACE, text: text(8000) });
/** What the teacher played as an example; its sound lies in a file of its own. */
export const EXAMPLE = v.object({ report: REPORT, madeMs: MOMENT });

/** What was said of an attempt; a spoken remark lies in a file of its own beside it, numbered by its place among the remarks. */
const ATTEMPT = v.object({
  id: ID,
  own: v.nullable(REPORT),
  chosen: v.nullable(REPORT),
  remarks: list(WRITTEN_REMARK),
  corrections: list(CORRECTION),
  example: v.exactOptional(EXAMPLE),
  /** of the piano; checked where it is taken in */
  taught: v.exactOptional(v.unknown()),
});
export type BackupAttempt = Shape<typeof ATTEMPT>;

/** The bytes of the first file → who and what lies in the backup; throws StorageError where it is none, or a newer one. */
export function checkBackup(bytes: Uint8Array): BackupHead {
  const value = parseJson(bytes);
  const any = v.safeParse(ANY_HEAD, value);
  if (!any.success) throw new StorageError({ trouble: 'no-backup' });
  if (any.output.version > FORMAT_VERSION) throw new StorageError({ trouble: 'backup-newer' });
  const found = checked(HEAD, value);
  if ('value' in found) return found.value;
  throw new StorageError({ trouble: 'backup-damaged' });
}

/** The bytes of an attempt → the attempt; null where it is none. */
export function checkBackupAttempt(bytes: Uint8Array): BackupAttempt | null {
  const found = checked(ATTEMPT, parseJson(bytes));
  return 'value' in found ? found.value : null;
}
