import { describe, expect, it } from 'vitest';
import { DEFAULT_CRITERIA } from '../../../src/engine/index.ts';
import type { Review } from '../../../src/io/review/index.ts';
import type { Shelf, Shelved } from '../../../src/io/shelf/index.ts';
import { Journal } from '../../../src/ui/attempt/journal.svelte.ts';
import { assignedIn, Reviews, type ReviewDevices } from '../../../src/ui/practice/reviews.svelte.ts';
import { ASSIGNMENT, review, SCALE, tone } from '../../browser/student/made.ts';

const FILE = new File(['PK…'], 'review.zip');
const head = (made: Review, more: Partial<Shelved> = {}): Shelved => ({
  id: made.id,
  madeMs: made.madeMs,
  receivedMs: made.madeMs + 1000,
  teacher: made.teacher,
  words: made.words,
  attempts: made.attempts.length,
  remarks: 0,
  assignment: made.assignment,
  readMs: null,
  deletedMs: null,
  ...more,
});

/** A shelf of this page alone. */
function invented(): Shelf {
  const held = new Map<string, { readonly made: Review; head: Shelved }>();
  const change = (id: string, more: Partial<Shelved>): Promise<void> => {
    const one = held.get(id);
    if (one !== undefined) one.head = { ...one.head, ...more };
    return Promise.resolve();
  };
  return {
    all: () => Promise.resolve([...held.values()].map((one) => one.head)),
    put: (made) => {
      held.set(made.id, { made, head: head(made) });
      return Promise.resolve(head(made));
    },
    review: (id) => Promise.resolve(held.get(id)?.made ?? null),
    markRead: (id) => change(id, { readMs: 1 }),
    remove: (id) => change(id, { deletedMs: 1 }),
    restore: (id) => change(id, { deletedMs: null }),
    close: () => Promise.resolve(),
  };
}
/** … and one that refuses everything, as in a private window. */
const refusing = new Proxy({} as Shelf, {
  get: () => () => Promise.reject(new Error('This browser keeps no reviews here.')),
});

function rig(more: Partial<ReviewDevices> = {}) {
  const journal = new Journal(null);
  const reviews = new Reviews(
    {
      shelf: invented(),
      isReview: () => Promise.resolve(true),
      read: () => Promise.resolve(review()),
      decode: (_bytes, name) => {
        expect(name).toBe('sound.wav');
        return Promise.resolve({ channels: [new Float32Array(80)], sampleRateHz: 16_000 });
      },
      ...more,
    },
    journal,
  );
  return { journal, reviews };
}

describe('a file that was opened', () => {
  it('is asked whether it is a review only where it is an archive', async () => {
    const { reviews } = rig();
    expect(await reviews.isReview(FILE)).toBe(true);
    expect(await reviews.isReview(new File(['RIFF'], 'a.wav'))).toBe(false);
    expect(await reviews.isReview(new File([], 'empty'))).toBe(false);
    const broken = rig({ isReview: () => Promise.reject(new Error('It cannot be read.')) });
    expect(await broken.reviews.isReview(FILE)).toBe(false);
  });

  it('is kept, read, shown, and what it assigns is what attempts are judged by', async () => {
    const { reviews, journal } = rig();
    expect(await reviews.receive([FILE])).toBe(true);
    expect(reviews.opened).toEqual(review());
    expect(reviews.shown).toMatchObject([{ id: 'review-one', readMs: 1 }]);
    expect(journal.standards.assigned.map(({ exercise, note }) => [exercise.key, note])).toEqual([
      ['D major', 'Listen to the turn at the top.'],
      ['Ab major', ''],
    ]);
    expect(journal.standards.criteriaFor(SCALE)).toMatchObject({ readyInARow: 2, evennessPercent: 6.5 });
    // By what the levels ask of it: src/engine/standing/levels.ts.
    expect(journal.standards.criteriaFor({ ...SCALE, hands: 'left' })).toEqual({
      ...DEFAULT_CRITERIA,
      leastBpm: 80,
      loudnessDb: 3,
      touch: 'legato',
    });
    expect(journal.standards.criteriaFor(null)).toEqual(DEFAULT_CRITERIA);
  });

  it('that is refused changes nothing, and it is said why', async () => {
    const { reviews, journal } = rig({ read: () => Promise.reject(new Error('It is damaged.')) });
    expect(await reviews.receive([FILE])).toBe(false);
    expect([reviews.opened, reviews.shown, journal.standards.assigned, reviews.reading]).toEqual([
      null,
      [],
      [],
      null,
    ]);
    expect(reviews.trouble?.why).toEqual([{ trouble: 'unforeseen', detail: 'It is damaged.' }]);
    reviews.dismissTrouble();
    expect(reviews.trouble).toBeNull();
  });

  it('with attempts for a teacher is not taken for a review', async () => {
    const { reviews } = rig({ read: () => Promise.resolve(review({ kind: 'attempts' })) });
    expect(await reviews.receive([FILE])).toBe(false);
    expect(reviews.trouble?.why).toEqual([{ trouble: 'review-for-teacher' }]);
    expect(reviews.shown).toEqual([]);
  });

  it('may come with others: all are kept, the first is shown, and the rest is to be read', async () => {
    const made = [review(), review({ id: 'two' })];
    let at = 0;
    const { reviews } = rig({
      read: (file) =>
        file === FILE ? Promise.resolve(made[at++]!) : Promise.reject(new Error('It is damaged.')),
    });
    expect(await reviews.receive([new File(['PK'], 'broken.zip'), FILE, FILE])).toBe(true);
    expect(reviews.opened?.id).toBe('review-one');
    expect(reviews.shown.map(({ id, readMs }) => [id, readMs])).toEqual([
      ['review-one', 1],
      ['two', null],
    ]);
    expect(reviews.trouble?.why).toEqual([
      { trouble: 'within', name: 'broken.zip', of: { trouble: 'unforeseen', detail: 'It is damaged.' } },
    ]);
  });

  it('is shown even where nothing can be kept', async () => {
    const { reviews } = rig({ shelf: refusing });
    expect(await reviews.receive([FILE])).toBe(true);
    expect(reviews.opened).toEqual(review());
    expect(reviews.trouble?.why).toMatchObject([{ detail: /keeps no reviews/ }]);
  });
});

describe('a review that was deleted', () => {
  it('asks for nothing any more, and asks again when it is brought back', async () => {
    const { reviews, journal } = rig();
    await reviews.receive([FILE]);
    await reviews.remove('review-one');
    expect([reviews.opened, reviews.shown, journal.standards.assigned]).toEqual([null, [], []]);
    expect(reviews.deleted).toHaveLength(1);
    await reviews.restore(['review-one']);
    expect(reviews.shown).toHaveLength(1);
    expect(journal.standards.assigned).toHaveLength(2);
    await reviews.open('review-one');
    expect(reviews.opened).toEqual(review());
  });
});

describe('the sound of an attempt that was reviewed', () => {
  it('is the one that travelled, else the student’s own, else none', async () => {
    const { reviews, journal } = rig();
    const [with_, without] = review().attempts;
    expect(await reviews.soundOf({ ...with_!, sound: tone() })).toMatchObject({ sampleRateHz: 16_000 });
    expect(await reviews.soundOf(without!)).toBeNull();
    const own = {
      channels: [new Float32Array(8)],
      sampleRateHz: 8000,
      name: 'x',
      recordedHere: true,
      remarks: [],
    };
    Object.assign(journal, {
      open: (id: string) => Promise.resolve(id === without!.id ? { sound: own } : null),
    });
    expect(await reviews.soundOf(without!)).toBe(own);
  });

  it('that cannot be decoded is none, and it is said why', async () => {
    const { reviews } = rig({ decode: () => Promise.reject(new Error('It is damaged.')) });
    expect(await reviews.soundOf(review().attempts[0]!)).toBeNull();
    expect(reviews.trouble?.why).toEqual([{ trouble: 'unforeseen', detail: 'It is damaged.' }]);
  });
});

describe('what is assigned', () => {
  const shelved = head(review());

  it('counts from when the review was made, or came, where the teacher’s clock is ahead', () => {
    expect(assignedIn([shelved])[0]?.sinceMs).toBe(shelved.madeMs);
    expect(assignedIn([{ ...shelved, receivedMs: shelved.madeMs - 5000 }])[0]?.sinceMs).toBe(
      shelved.madeMs - 5000,
    );
  });

  it('is spelt our way, so that one exercise is one', () => {
    const odd = { ...ASSIGNMENT[0]!, exercise: { ...SCALE, key: 'c♯ minor' } };
    expect(assignedIn([{ ...shelved, assignment: [odd] }])[0]?.exercise).toMatchObject({
      key: 'C# minor',
      minorScale: 'harmonic',
    });
  });
});
