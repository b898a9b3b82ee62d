import * as v from 'valibot';
import type { Report } from '../../engine/index.ts';
import { CHOICE, parseJson, REPORT, textOf } from '../check/index.ts';
import { ID_PATTERN, timeIn } from './drawers.ts';
import { HistoryError } from './errors.ts';
import type { Remembered } from './types.ts';

/** The first file in an exported journal says what it is. */
export const FORMAT = 'evenfall-journal';
export const FORMAT_VERSION = 1;

const HEAD = v.object({
  format: v.literal(FORMAT),
  version: v.pipe(v.number(), v.integer(), v.minValue(1)),
  remembered: v.record(v.pipe(v.string(), v.maxLength(100)), v.unknown()),
});

const text = textOf(2000);

/** An attempt in a file: its entry without what belongs to one device or follows from the report, and its report. */
const ATTEMPT = v.pipe(
  v.object({
    id: v.pipe(v.string(), v.regex(ID_PATTERN)),
    name: text,
    remarks: v.pipe(v.array(text), v.maxLength(100)),
    device: v.nullable(text),
    choice: v.nullable(CHOICE),
    targetBpm: v.nullable(v.pipe(v.number(), v.minValue(1), v.maxValue(1000))),
    durationSec: v.pipe(v.number(), v.minValue(0), v.maxValue(86_400)),
    reason: text,
    report: v.nullable(REPORT),
  }),
  // 4102444800000: the year 2100. What lies beyond is no time at which anything was played.
  v.check((attempt) => timeIn(attempt.id) < 4_102_444_800_000, 'Its time lies in a far future.'),
);

export interface FiledAttempt {
  readonly id: string;
  readonly name: string;
  readonly remarks: readonly string[];
  readonly device: string | null;
  readonly choice: v.InferOutput<typeof CHOICE> | null;
  readonly targetBpm: number | null;
  readonly durationSec: number;
  readonly reason: string;
  readonly report: Report | null;
}

/** The bytes of the head → what is remembered besides attempts; throws HistoryError where it is no journal, or a newer one. */
export function checkHead(bytes: Uint8Array): Remembered {
  const head = v.safeParse(HEAD, parseJson(bytes));
  if (!head.success) throw new HistoryError('This file is no journal of Evenfall.');
  if (head.output.version > FORMAT_VERSION) {
    throw new HistoryError(
      'This journal was written by a newer version. Bring this page up to date, then import it.',
    );
  }
  return head.output.remembered;
}

/** The bytes of an attempt → the attempt, or in one sentence why it is none. */
export function checkAttempt(bytes: Uint8Array): FiledAttempt | string {
  const found = v.safeParse(ATTEMPT, parseJson(bytes));
  if (found.success) return found.output;
  const [issue] = found.issues;
  const where = v.getDotPath(issue) ?? 'the whole';
  return `${where}: ${issue.message}`.slice(0, 300);
}
