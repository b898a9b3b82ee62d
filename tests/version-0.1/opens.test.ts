import { readFileSync } from 'node:fs';
import { resolve } from 'node:path';
import { unzipSync } from 'fflate';
import { describe, expect, it } from 'vitest';
import { REPORT } from '../../src/engine/index.ts';
import { checked } from '../../src/io/check/index.ts';
import { checkAttempt, checkHead } from '../../src/io/history/check-file.ts';
import { tarMembers } from '../../src/io/history/tar.ts';
import { readReview, writeReview } from '../../src/io/review/index.ts';
import { DESK } from '../../src/terminal/pile/json.ts';
import { deskFaults } from '../support/desk-schema.ts';
import { schemaFaults } from '../support/report-schema.ts';

const fileOf = (name: string): Buffer<ArrayBuffer> => readFileSync(resolve(import.meta.dirname, name));
const textOf = (bytes: Uint8Array | null): string => new TextDecoder().decode(bytes ?? undefined);

describe('what version 0.1 wrote opens unchanged', () => {
  const reports = fileOf('reports.jsonl').toString().trim().split('\n');

  it.each(
    reports.map((text) => [(JSON.parse(text) as { exercise: { title: string } }).exercise.title, text]),
  )('the report of %s', (_, text) => {
    const report: unknown = JSON.parse(text);
    const found = checked(REPORT, report);
    expect(JSON.stringify('value' in found ? found.value : found.issue.message)).toBe(text);
    expect(schemaFaults(report)).toEqual([]);
  });

  it('the sorted pile', () => {
    const text = fileOf('desk.json').toString().trim();
    const desk: unknown = JSON.parse(text);
    const found = checked(DESK, desk);
    expect(JSON.stringify('value' in found ? found.value : found.issue.message)).toBe(text);
    expect(deskFaults(desk)).toEqual([]);
  });

  it('the review, and it is written again to the same bytes', async () => {
    const old = fileOf('review.zip');
    const review = await readReview(new Blob([old]));
    expect(review).toMatchObject({ teacher: 'Ms Ley', attempts: [{ remarks: { length: 3 } }, {}] });
    const again = new Uint8Array(await (await writeReview(review)).arrayBuffer());
    const [before, after] = [unzipSync(new Uint8Array(old)), unzipSync(again)];
    expect(Object.keys(after)).toEqual(Object.keys(before));
    for (const [name, bytes] of Object.entries(before))
      if (name === 'manifest.json')
        expect(JSON.parse(textOf(after[name]!))).toEqual(JSON.parse(textOf(bytes)));
      else expect(after[name], name).toEqual(bytes);
  });

  it('the journal, attempt by attempt', async () => {
    const stream = new Blob([fileOf('journal.tar.gz')]).stream().pipeThrough(new DecompressionStream('gzip'));
    const seen: string[] = [];
    for await (const { name, bytes } of tarMembers(stream, 2 ** 20)) {
      seen.push(name.replace(/^attempts\/.*\//, ''));
      if (name === 'evenfall-journal.json')
        expect(checkHead(bytes!)).toEqual({
          remembered: { ready: { evennessPercent: 6.5 }, language: 'de' },
          passages: [],
        });
      if (name.endsWith('attempt.json')) expect(JSON.stringify(checkAttempt(bytes!, ''))).toBe(textOf(bytes));
    }
    expect(seen.filter((name) => name === 'attempt.json')).toHaveLength(5);
    expect(seen.filter((name) => name === 'sound.wav')).toHaveLength(4);
  });
});
