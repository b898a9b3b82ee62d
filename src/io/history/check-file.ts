import * as v from 'valibot';
import { BPM, BUILDABLE, INTENTION, NOTICE, REPORT, told } from '../../engine/index.ts';
import type { Shape } from '../../engine/index.ts';
import { checked, parseJson } from '../check/index.ts';
import { StorageError } from '../database/index.ts';
import type { Trouble } from '../troubles/index.ts';
import { ID_PATTERN, timeIn } from './entry.ts';
import type { Remembered } from './types.ts';

/** The first file in an exported journal says what it is. */
export const FORMAT = 'evenfall-journal';
export const FORMAT_VERSION = 1;

/** The most that one device lists, and some. */
const MOST_PASSAGES = 2000;

const HEAD = v.object({
  format: v.literal(FORMAT),
  version: v.pipe(v.number(), v.integer(), v.minValue(1)),
  remembered: v.record(v.pipe(v.string(), v.maxLength(100)), v.unknown()),
  /** of one's own; whether they are any, whoever takes them looks */
  passages: v.exactOptional(v.pipe(v.array(v.unknown()), v.maxLength(MOST_PASSAGES))),
});

/** The year 2100: what lies beyond is no time at which anything was played. */
const FAR_FUTURE_MS = Date.UTC(2100, 0);

const text = v.pipe(v.string(), v.maxLength(2000));

/** An attempt in a file: its entry without what belongs to one device or follows from the report, and its report. */
export const ATTEMPT = v.pipe(
  v.object({
    id: v.pipe(v.string(), v.regex(ID_PATTERN)),
    name: told('as it is called on the page', text),
    remarks: told(
      'what was left out or changed on the way to the page; in version 0.1 plain sentences',
      v.pipe(v.array(v.union([text, NOTICE])), v.maxLength(100)),
    ),
    device: told('what the microphone calls itself; null: not known', v.nullable(text)),
    choice: told('as chosen; null: it was to be recognised', v.nullable(BUILDABLE)),
    targetBpm: told('beats a minute; null: none', v.nullable(BPM)),
    intention: v.exactOptional(told('what of it was to be practised', INTENTION)),
    durationSec: v.pipe(v.number(), v.minValue(0), v.maxValue(86_400)),
    reason: told(
      'why there is no report, in version 0.1 a plain sentence; empty where there is one or none was tried',
      v.union([text, NOTICE]),
    ),
    report: v.nullable(REPORT),
  }),
  v.check(({ id }) => timeIn(id) < FAR_FUTURE_MS, 'Its time lies in a far future.'),
);
export type FiledAttempt = Shape<typeof ATTEMPT>;

/** The bytes of the head → what is remembered besides attempts, and passages of one's own; throws StorageError where it is no journal, or a newer one. */
export function checkHead(bytes: Uint8Array): {
  readonly remembered: Remembered;
  readonly passages: readonly unknown[];
} {
  const head = v.safeParse(HEAD, parseJson(bytes));
  if (!head.success) throw new StorageError({ trouble: 'no-journal' });
  if (head.output.version > FORMAT_VERSION) {
    throw new StorageError({ trouble: 'journal-newer' });
  }
  return { remembered: head.output.remembered, passages: head.output.passages ?? [] };
}

/** The name that an attempt has in a file, whatever it is → when it was played, ms since 1970; null: it does not tell. */
export function timeNamed(id: string): number | null {
  return ID_PATTERN.test(id) && timeIn(id) < FAR_FUTURE_MS ? timeIn(id) : null;
}

/** The bytes of an attempt → the attempt, or why it is none; `id`: by which the file names it. */
export function checkAttempt(bytes: Uint8Array, id: string): FiledAttempt | Trouble {
  const found = checked(ATTEMPT, parseJson(bytes));
  if ('value' in found) return found.value;
  const place = (v.getDotPath(found.issue) ?? 'attempt.json').slice(0, 300);
  return { trouble: 'journal-attempt', whenMs: timeNamed(id), place };
}
