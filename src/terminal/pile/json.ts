import type { Pile, Recording } from './types.ts';

/** The JSON contract of `desk` (desk.schema.json), version 1. */
export function pileObject({ students, silent, unread, remarks }: Pile) {
  const file = ({ name }: Recording): string => name;
  return {
    format: 'evenfall-desk',
    version: 1,
    students: students.map(({ name, attempts }) => ({
      name,
      attempts: attempts.map(({ recording, found, since }) => ({
        file: file(recording),
        recorded: time(recording.whenMs),
        startSec: found.startSec,
        endSec: found.endSec,
        recognition: found.recognition,
        report: found.report,
        reason: found.reason,
        since: since === null ? null : { recorded: time(since.whenMs), changes: since.changes },
      })),
    })),
    silent: silent.map(({ recording, reason }) => ({ file: file(recording), reason })),
    unread: unread.map(({ recording, reason }) => ({ file: file(recording), reason })),
    remarks: remarks.map(({ recording, remark }) => ({ file: file(recording), remark })),
  };
}

/** ms since 1970 → ISO 8601 in UTC. */
function time(whenMs: number | null): string | null {
  return whenMs === null ? null : new Date(whenMs).toISOString();
}
