import { readFileSync } from 'node:fs';
import { resolve } from 'node:path';
import { Ajv2020 } from 'ajv/dist/2020.js';
import { unzipSync } from 'fflate';
import { beforeAll, describe, expect, it } from 'vitest';
import { readReview, ReviewError, writeReview } from '../../../src/io/review/index.ts';
import type { Trouble } from '../../../src/io/troubles/index.ts';
import { layZip, type Laid } from '../archive/zip.ts';
import { schemaFaults } from '../../support/report-schema.ts';
import { goodFiles } from './hostile.ts';
import { madeUp } from './made-up.ts';

let files: readonly Laid[];
beforeAll(async () => {
  files = await goodFiles();
});

const bytesOf = (text: string): Uint8Array => new TextEncoder().encode(text);
const manifestOf = (): Record<string, unknown> =>
  JSON.parse(new TextDecoder().decode(files[0]!.bytes)) as Record<string, unknown>;
const withManifest = (change: object): readonly Laid[] => [
  { name: 'manifest.json', bytes: bytesOf(JSON.stringify({ ...manifestOf(), ...change })) },
  ...files.slice(1),
];
const holding = (name: string, bytes: Uint8Array): readonly Laid[] =>
  files.map((file) => (file.name === name ? { name, bytes } : file));
const deep = `${'['.repeat(30)}${']'.repeat(30)}`;

describe('a file from outside is refused, with its reason', () => {
  const cases: readonly (readonly [string, () => readonly Laid[], Trouble['trouble'], RegExp])[] = [
    ['without a manifest', () => files.slice(1), 'no-review', /no review of Evenfall/],
    ['of another program', () => withManifest({ format: 'other' }), 'no-review', /no review of Evenfall/],
    [
      'of a newer version',
      () => withManifest({ version: 2 }),
      'review-newer',
      /newer version.*Load this page anew/,
    ],
    ['of no version', () => withManifest({ version: '1' }), 'no-review', /no review/],
    [
      'with a page in it',
      () => [...files, { name: 'index.html', bytes: bytesOf('<script>') }],
      'review-refused',
      /belongs to no review/,
    ],
    [
      'with a report too many',
      () => [...files, { name: 'reports/9.json', bytes: bytesOf('{}') }],
      'review-refused',
      /belongs to no review/,
    ],
    [
      'with a sound too few',
      () => files.filter((file) => file.name !== 'sound/1.webm'),
      'review-refused',
      /missing/,
    ],
    [
      'with a script for a sound',
      () => holding('sound/1.webm', bytesOf('alert(1)')),
      'review-refused',
      /sound\/1\.webm in it is no sound/,
    ],
    [
      'with WebM that goes by WAV',
      () => holding('voice/2.wav', files.find((file) => file.name === 'voice/1.webm')!.bytes),
      'review-refused',
      /voice\/2\.wav in it is no sound/,
    ],
    [
      'with a report that is none',
      () => holding('reports/1.json', bytesOf('{"format":"evenfall-report"}')),
      'review-refused',
      /reports\/1\.json is no report/,
    ],
    [
      'nested without end',
      () => [{ name: 'manifest.json', bytes: bytesOf(`{"a":${deep}}`) }],
      'no-review',
      /no review/,
    ],
    [
      'of letters that are none',
      () => [{ name: 'manifest.json', bytes: Uint8Array.of(0x22, 0xff, 0x22) }],
      'no-review',
      /no review/,
    ],
    [
      'with words without end',
      () => withManifest({ words: 'x'.repeat(20_001) }),
      'review-refused',
      /\(words\)/,
    ],
    ['made before there were computers', () => withManifest({ madeMs: -1 }), 'review-refused', /\(madeMs\)/],
    [
      'with an exercise that there is not',
      () =>
        withManifest({
          assignment: [
            {
              ...madeUp().assignment[0],
              exercise: { key: 'H major', form: 'scale', hands: 'right', octaves: 9 },
            },
          ],
        }),
      'review-refused',
      /assignment\.1\.exercise/,
    ],
    [
      'with a stretch to practise beyond the exercise',
      () =>
        withManifest({
          assignment: [
            {
              ...madeUp().assignment[0],
              intention: { times: 3, rhythm: 'even', stretch: { fromStep: 0, toStep: 13 } },
            },
          ],
        }),
      'review-refused',
      /assignment\.1/,
    ],
    [
      'with a rhythm that there is not',
      () =>
        withManifest({
          assignment: [{ ...madeUp().assignment[0], intention: { times: 3, rhythm: 'sideways' } }],
        }),
      'review-refused',
      /assignment\.1\.intention\.rhythm/,
    ],
    [
      'with a remark beside the exercise',
      () =>
        withManifest({
          attempts: (manifestOf()['attempts'] as { remarks: object[] }[]).map((one) => ({
            ...one,
            remarks: one.remarks.map((remark) => ({
              ...remark,
              place: { kind: 'stretch', fromStep: 2, toStep: 13 },
            })),
          })),
        }),
      'review-refused',
      /remark on attempt 1 hangs on a step/,
    ],
    [
      'that names a file twice',
      () =>
        withManifest({
          attempts: (manifestOf()['attempts'] as object[]).map((one) => ({
            ...one,
            report: 'reports/1.json',
          })),
        }),
      'review-refused',
      /twice/,
    ],
    [
      'whose path climbs',
      () =>
        withManifest({
          attempts: (manifestOf()['attempts'] as object[]).map((one) => ({
            ...one,
            sound: '../sound/1.webm',
          })),
        }),
      'review-refused',
      /attempts\.1\.sound/,
    ],
    [
      'with a sound too large',
      () => [
        ...files,
        {
          name: 'reports/3.json',
          bytes: new Uint8Array(8),
          method: 0,
          sizeBytes: 5 * 2 ** 20,
          packedBytes: 5 * 2 ** 20,
        },
      ],
      'review-unopened',
      /cannot be opened/,
    ],
  ];
  it.each(cases)('%s', async (_, laid, trouble, message) => {
    const reading = readReview(new Blob([layZip(laid())]));
    await expect(reading).rejects.toThrow(ReviewError);
    await expect(reading).rejects.toThrow(message);
    await expect(reading).rejects.toMatchObject({ trouble: { trouble } });
  });
});

describe('the published schema of a review', () => {
  const path = resolve(import.meta.dirname, '../../../src/io/review/review.schema.json');
  const validate = new Ajv2020({ allErrors: true, allowUnionTypes: true }).compile(
    JSON.parse(readFileSync(path, 'utf8')) as object,
  );

  it('holds for what is written, and that of reports for its reports', async () => {
    const written = unzipSync(new Uint8Array(await (await writeReview(madeUp())).arrayBuffer()));
    const json = (name: string): unknown => JSON.parse(new TextDecoder().decode(written[name]));
    validate(json('manifest.json'));
    expect(validate.errors ?? []).toEqual([]);
    expect(schemaFaults(json('reports/1.json'))).toEqual([]);
    expect(schemaFaults(json('reports/2.json'))).toEqual([]);
  });

  it.each([
    ['another version', { version: 2 }],
    ['a manifest without attempts', { attempts: undefined }],
    ['a name without end', { student: 'x'.repeat(201) }],
    [
      'a place of no kind',
      { attempts: [{ remarks: [{ id: 'a', place: { kind: 'page' }, text: 'x', voice: null }] }] },
    ],
  ])('refuses %s', (_, change) => {
    expect(validate(JSON.parse(JSON.stringify({ ...manifestOf(), ...change })))).toBe(false);
  });
});
