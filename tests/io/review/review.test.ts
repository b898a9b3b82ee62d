import { unzipSync } from 'fflate';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  REVIEW_LIMITS,
  isReview,
  readReview,
  ReviewError,
  withExamples,
  writeReview,
} from '../../../src/io/review/index.ts';
import type { Review } from '../../../src/io/review/index.ts';
import { madeUp, wav, withExample } from './made-up.ts';

describe('a review written and read', () => {
  it('is the same to the last field, sounds included', async () => {
    expect(await readReview(await writeReview(madeUp()))).toEqual(madeUp());
  });

  it('holds what the teacher played as an example, which is for an attempt in it', async () => {
    const told = withExample();
    const [first, example, second] = told.attempts;
    const read = await readReview(await writeReview(told));
    expect(read).toEqual(told);
    expect(withExamples(read)).toEqual([
      { attempt: first, example },
      { attempt: second, example: null },
    ]);
    expect(withExamples(madeUp()).map((one) => one.example)).toEqual([null, null]);
    for (const exampleFor of ['nobody', 'example'])
      await expect(
        writeReview({ ...told, attempts: [first!, { ...example!, exampleFor }] }),
      ).rejects.toMatchObject({ trouble: { trouble: 'review-unwritable' } });
  });

  it('gives the same bytes each time', async () => {
    const [one, two] = [
      await (await writeReview(madeUp())).bytes(),
      await (await writeReview(madeUp())).bytes(),
    ];
    expect(one).toEqual(two);
  });

  it('begins with what it is, and sounds lie in it as they are', async () => {
    const file = await bytesOf(await writeReview(madeUp()));
    const files = unzipSync(file);
    expect(Object.keys(files)).toEqual([
      'manifest.json',
      'reports/1.json',
      'sound/1.webm',
      'voice/1.webm',
      'voice/2.wav',
      'reports/2.json',
    ]);
    expect(JSON.parse(new TextDecoder().decode(files['manifest.json']))).toMatchObject({
      format: 'evenfall-review',
      version: 1,
    });
  });

  it('keeps any words, names and figures', async () => {
    await fc.assert(
      fc.asyncProperty(reviews, async (review) => {
        expect(await readReview(await writeReview(review))).toEqual(review);
      }),
      { numRuns: 60 },
    );
  });

  it('is told from other files by what is in it', async () => {
    const file = await writeReview(madeUp());
    expect(await isReview(file)).toBe(true);
    expect(await isReview(file.slice(0, 400))).toBe(true);
    expect(await isReview(new Blob([wav(50).bytes]))).toBe(false);
    expect(await isReview(new Blob([]))).toBe(false);
  });
});

describe('what is shown of a review', () => {
  it('holds no unseen signs, and names have one line', async () => {
    const base = madeUp();
    const written = await writeReview({
      ...base,
      student: 'Stu\u202edent\u0000\nSeven\u2066',
      words: 'one\r\ntwo\u2028three\u0007 <b>four</b>',
    });
    const read = await readReview(written);
    expect(read.student).toBe('Student Seven');
    expect(read.words).toBe('one\ntwo\nthree <b>four</b>');
  });
});

describe('a review that cannot be written says so', () => {
  const [first, ...rest] = madeUp().attempts;
  const with_ = (change: Partial<Review['attempts'][number]>): Review => ({
    ...madeUp(),
    attempts: [{ ...first!, ...change }, ...rest],
  });
  it.each([
    ['words that are too long', { ...madeUp(), words: 'x'.repeat(REVIEW_LIMITS.wordsLetters + 1) }, /words/],
    [
      'a remark that says nothing',
      with_({ remarks: [{ id: 'r1', place: { kind: 'attempt' }, text: ' ', voice: null }] }),
      /attempts\.1\.remarks\.1: It says nothing/,
    ],
    [
      'a remark beside the exercise',
      with_({
        remarks: [{ id: 'r1', place: { kind: 'stretch', fromStep: 3, toStep: 13 }, text: 'x', voice: null }],
      }),
      /remark on attempt 1 hangs on a step/,
    ],
    [
      'a sound that is too long',
      with_({ sound: { bytes: new Uint8Array(REVIEW_LIMITS.mostSoundBytes + 1), mime: 'audio/wav' } }),
      /sound is too long/,
    ],
  ])('%s', async (_, review, message) => {
    await expect(writeReview(review)).rejects.toThrow(ReviewError);
    await expect(writeReview(review)).rejects.toThrow(message);
  });
});

async function bytesOf(file: Blob): Promise<Uint8Array> {
  return new Uint8Array(await file.arrayBuffer());
}

const letters = (maxLength: number) =>
  fc.string({ unit: 'grapheme', maxLength }).map((text) => text.replace(/[\p{Cc}\u2028\u2029]/gu, ''));
const line = letters(60).map((text) => text.replace(/\s+/g, ' ').trim());
const reviews: fc.Arbitrary<Review> = fc
  .record({
    kind: fc.constantFrom('review' as const, 'attempts' as const),
    student: line,
    teacher: line,
    words: letters(300),
    name: line,
    text: letters(200).map((text) => `x${text}`),
    why: letters(200),
    note: letters(100),
    madeMs: fc.integer({ min: 0, max: 4_000_000_000_000 }),
    targetBpm: fc.option(fc.integer({ min: 1, max: 400 })),
    step: fc.integer({ min: 0, max: 12 }),
  })
  .map(({ name, text, why, note, targetBpm, step, ...own }) => {
    const base = madeUp();
    const [first, second] = [base.attempts[0]!, base.attempts[1]!];
    const place = { kind: 'note', step, midi: 60 + step, timeSec: null } as const;
    return {
      ...base,
      ...own,
      attempts: [
        {
          ...first,
          name,
          remarks: [{ id: 'r1', place, text, voice: null }],
          corrections: [{ place, verdict: 'missed', why }],
        },
        second,
      ],
      assignment: [{ ...base.assignment[0]!, targetBpm, note }],
    };
  });
