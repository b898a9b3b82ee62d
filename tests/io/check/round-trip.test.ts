import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Report } from '../../../src/engine/index.ts';
import { checkAttempt } from '../../../src/io/history/check-file.ts';
import { readReview, writeReview } from '../../../src/io/review/index.ts';
import { anyReport } from '../../engine/report/any-report.ts';
import { schemaFaults } from '../../support/report-schema.ts';
import { madeUp } from '../review/made-up.ts';

/** What a later version may put in, and under what name. */
const LATER = fc.dictionary(
  fc.stringMatching(/^later[A-Za-z0-9_]{1,12}$/),
  fc.oneof(
    fc.integer(),
    fc.double({ noNaN: true, noDefaultInfinity: true }),
    fc.boolean(),
    fc.constant(null),
    fc.constant({ a: [1, { b: 'c' }] }),
    fc.constant('so: "é" 𝄞\nand on'),
  ),
  { minKeys: 1, maxKeys: 2 },
);

/** A report with later fields in a share of its objects, at any depth, before or after what is there. */
const withLater = (report: Report): fc.Arbitrary<unknown> =>
  fc
    .record({ later: fc.array(LATER, { minLength: 1, maxLength: 5 }), one: fc.integer({ min: 1, max: 4 }) })
    .map(({ later, one }) => {
      let count = 0;
      const strewn = (value: unknown): unknown => {
        if (Array.isArray(value)) return value.map(strewn);
        if (value === null || typeof value !== 'object') return value;
        const parts = Object.entries(value).map(([name, part]) => [name, strewn(part)] as const);
        const own = count++ % one === 0 ? Object.entries(later[count % later.length]!) : [];
        return Object.fromEntries(count % 2 === 0 ? [...own, ...parts] : [...parts, ...own]);
      };
      return strewn(JSON.parse(JSON.stringify(report)));
    });

const bytesOf = (value: unknown): Uint8Array => new TextEncoder().encode(JSON.stringify(value));

/** A report into a journal's file and out again. */
function throughJournal(report: unknown): unknown {
  const attempt = {
    id: '0mf1c2r80-1a2b3c4d',
    name: 'your recording',
    remarks: [],
    device: null,
    choice: null,
    targetBpm: null,
    durationSec: 6,
    reason: '',
    report,
  };
  const read = checkAttempt(bytesOf(attempt), attempt.id);
  return 'trouble' in read ? read : read.report;
}

/** A report into a review's file, out, into another one, and out again. */
async function throughReviews(report: unknown): Promise<unknown> {
  const made = madeUp();
  const bare = { ...made.attempts[0]!, sound: null, remarks: [], corrections: [] };
  const once = await readReview(
    await writeReview({ ...made, attempts: [{ ...bare, report: report as Report }] }),
  );
  const again = await readReview(await writeReview(once));
  return again.attempts[0]!.report;
}

describe('every report that the engine can make, also with fields of a later version at any depth', () => {
  const remarked = new Set<string>();

  it('is as the published schema says, and goes through journal and reviews to the last byte', async () => {
    const reports = anyReport.chain((report) => {
      for (const one of report.remarks) remarked.add('hand' in one ? `${one.kind} of one hand` : one.kind);
      return fc.oneof(fc.constant(report as unknown), withLater(report));
    });
    await fc.assert(
      fc.asyncProperty(reports, async (report) => {
        expect(schemaFaults(report)).toEqual([]);
        expect(JSON.stringify(throughJournal(report))).toBe(JSON.stringify(report));
        expect(JSON.stringify(await throughReviews(report))).toBe(JSON.stringify(report));
      }),
      { numRuns: 80 },
    );
  }, 120_000);

  it('among them some in which one hand plays in another octave', () => {
    expect([...remarked]).toContain('other-octave of one hand');
    expect(remarked.size).toBeGreaterThan(4);
  });
});
