import * as v from 'valibot';
import {
  BPM,
  BUILDABLE,
  CHANGE,
  ENGLISH,
  RECOGNITION,
  REPORT,
  SECONDS,
  tellKept,
  tellNotice,
  told,
} from '../../engine/index.ts';
import type { Locale, Shape } from '../../engine/index.ts';
import { tellTrouble } from '../../io/troubles/index.ts';
import { fastestOf } from './fastest.ts';
import { copyOf } from './left-out.ts';
import type { Pile } from './types.ts';

const WHEN = v.nullable(v.pipe(v.string(), v.regex(/^\d{4}-\d\d-\d\dT\d\d:\d\d:\d\d\.\d{3}Z$/)));
const BPM_OFF = v.pipe(v.number(), v.minValue(0));
const WITHOUT = v.object({ file: v.string(), reason: v.string() });

const ATTEMPT = v.object({
  file: v.string(),
  recorded: told('by the file’s name, else by its own time', WHEN),
  startSec: v.pipe(SECONDS, v.minValue(0)),
  endSec: v.pipe(SECONDS, v.minValue(0)),
  recognition: RECOGNITION,
  report: v.nullable(REPORT),
  reason: told('why there is no report', v.string()),
  since: told(
    'what changed since the student’s last attempt at the same exercise; null: the first here',
    v.nullable(v.object({ recorded: WHEN, changes: v.array(CHANGE) })),
  ),
});

const FASTEST = v.object({
  exercise: BUILDABLE,
  bpm: told('beats a minute', BPM),
  plusMinus: told('null: nothing faster has failed, so it is that at least', v.nullable(BPM_OFF)),
});

/** The JSON contract of `desk`, version 1, published as desk.schema.json (`npm run schemas`). */
export const DESK = v.pipe(
  v.object({
    format: v.literal('evenfall-desk'),
    version: v.literal(1),
    students: v.array(
      v.object({
        name: told('empty where neither folder nor file name tells', v.string()),
        attempts: v.array(ATTEMPT),
        fastestEven: v.exactOptional(
          told('the fastest tempo still even, of each exercise that has one', v.array(FASTEST)),
        ),
      }),
    ),
    silent: told('recordings without any playing', v.array(WITHOUT)),
    unread: told('recordings that could not be read', v.array(WITHOUT)),
    remarks: told(
      'what was left out or could not be read of single recordings',
      v.array(v.object({ file: v.string(), remark: v.string() })),
    ),
  }),
  v.metadata({
    title: 'Evenfall desk, version 1',
    description:
      'A pile of recordings, sorted: student by student, attempt by attempt, oldest first. Units are in the names of the fields. Version 1 may gain fields; none is taken away or changes its meaning.',
  }),
);

/** A pile of recordings, sorted → what `desk --json` prints of it. */
export function pileObject(
  { students, silent, unread, copies, remarks }: Pile,
  locale: Locale = ENGLISH,
): Shape<typeof DESK> {
  return {
    format: 'evenfall-desk',
    version: 1,
    students: students.map(({ name, attempts }) => ({
      name,
      attempts: attempts.map(({ recording, found, since }) => ({
        file: recording.name,
        recorded: time(recording.whenMs),
        startSec: found.startSec,
        endSec: found.endSec,
        recognition: found.recognition,
        report: found.report,
        reason: tellKept(found.reason, locale),
        since: since === null ? null : { recorded: time(since.whenMs), changes: since.changes },
      })),
      fastestEven: fastestOf(attempts),
    })),
    silent: silent.map(({ recording, reason }) => ({
      file: recording.name,
      reason: tellKept(reason, locale),
    })),
    unread: unread.map(({ name, reason }) => ({
      file: name,
      reason: `${name}: ${tellTrouble(reason, locale.language)}`,
    })),
    remarks: [
      ...remarks.map(({ recording, remark }) => ({
        file: recording.name,
        remark: tellNotice(remark, locale),
      })),
      ...copies.map(({ recording, of }) => ({
        file: recording.name,
        remark: tellTrouble(copyOf(of), locale.language),
      })),
    ],
  };
}

/** ms since 1970 → ISO 8601 in UTC. */
export function time(whenMs: number | null): string | null {
  return whenMs === null ? null : new Date(whenMs).toISOString();
}
