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

const SETTLED = v.object({ cents: v.number(), by: ID });

const STUDENT = v.object({
  id: ID,
  name: text(200),
  aliases: v.exactOptional(list(text(200))),
  proposed: v.exactOptional(v.boolean()),
  words: text(8000),
  message: text(8000),
  assignment: list(ASSIGNED),
  piano: v.exactOptional(v.nullable(SETTLED)),
  elsewhere: v.exactOptional(v.array(SETTLED)),
  sent: list(v.object({ id: ID, madeMs: MOMENT, fileName: text(400), attempts: list(ID) })),
});

const FILE = v.object({
  id: ID,
  path: text(4000),
  studentId: ID,
  addedMs: MOMENT,
  writtenMs: moment,
  bytes: v.pipe(v.number(), v.minValue(0)),
  print: v.exactOptional(text(100)),
  state: v.picklist(['waiting', 'sorted', 'failed', 'refused']),
  /** why it failed or was refused, in English */
  reason: text(4000),
  remarks: list(told),
  untold: v.exactOptional(told),
  seenMs: v.exactOptional(MOMENT),
});

const PLAYING = v.object({
  id: ID,
  fileId: v.union([v.literal(''), ID]),
  studentId: ID,
  addedMs: MOMENT,
  whenMs: moment,
  name: text(1000),
  startSec: SECONDS,
  endSec: SECONDS,
  recognition: RECOGNITION,
  chosen: v.nullable(BUILDABLE),
  reason: told,
  heardMs: moment,
  answeredMs: moment,
});

const TEMPLATE = v.object({
  id: ID,
  words: text(4000),
  assignment: v.exactOptional(v.pipe(v.array(ASSIGNED), v.maxLength(50))),
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

/** What was said of an attempt; a spoken remark lies in a file of its own beside it, numbered by its place among the remarks. */
const ATTEMPT = v.object({
  id: ID,
  own: v.nullable(REPORT),
  chosen: v.nullable(REPORT),
  remarks: list(v.object({ id: ID, place: PLACE, text: text(8000) })),
  corrections: list(CORRECTION),
  /** what the teacher played as an example; its sound lies in a file of its own */
  example: v.exactOptional(v.object({ report: REPORT, madeMs: MOMENT })),
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
