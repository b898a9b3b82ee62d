import type { Browser, Page } from 'playwright-core';
import { beforeAll, describe, expect, it } from 'vitest';
import type { Shelved } from '../../../src/io/shelf/index.ts';
import { visitDoor } from '../workshop.ts';
import { sharedBrowser } from '../visit.ts';

let browser: Browser;
beforeAll(async () => {
  browser = await sharedBrowser();
});

const DAY_MS = 86_400_000;
/** What every test here begins with, in the page. */
const PRELUDE = `
  const { createShelf, review, openDB } = window.door;
  const DAY_MS = ${DAY_MS};
  let clock = Date.UTC(2026, 10, 25, 9);
  const shelf = (options = {}) => createShelf({ now: () => clock, ...options });
  const same = (a, b) => {
    if (a instanceof Uint8Array) return b instanceof Uint8Array && a.length === b.length && a.every((x, i) => x === b[i]);
    if (a === null || typeof a !== 'object') return a === b;
    return Object.keys({ ...a, ...b }).every((key) => same(a[key], b[key]));
  };
`;
const run = <T>(page: Page, body: string): Promise<T> =>
  page.evaluate<T>(`(async () => { ${PRELUDE} ${body} })()`);

/** Runs the body of an async function in a page with a store of its own, and gives what it returns. */
async function inPage<T>(body: string): Promise<T> {
  const { page, errors, close } = await visitDoor(browser, 'shelf');
  const result = await run<T>(page, body);
  expect(errors).toEqual([]);
  await close();
  return result;
}

describe('the shelf of reviews', () => {
  it('gives back a review to the last byte after the page was closed', async () => {
    const { page, close } = await visitDoor(browser, 'shelf');
    await run(page, `await shelf().put(review());`);
    await page.reload();
    await page.waitForFunction(() => 'door' in window);
    const found = await run<{ same: boolean; notOther: boolean; heads: readonly Shelved[] }>(
      page,
      `const one = shelf();
       const kept = await one.review('review-one');
       const whole = same(kept, review());
       kept.attempts[0].sound.bytes[50] += 1;
       return { same: whole, notOther: !same(kept, review()), heads: await one.all() };`,
    );
    expect(found).toMatchObject({
      same: true,
      notOther: true,
      heads: [
        { id: 'review-one', teacher: 'Ms Ley', attempts: 2, remarks: 4, readMs: null, deletedMs: null },
      ],
    });
    expect(found.heads[0]!.assignment).toHaveLength(2);
    await close();
  });

  it('has the same review once, unread only the first time', async () => {
    const heads = await inPage<readonly Shelved[]>(
      `const one = shelf();
       await one.put(review());
       await one.markRead('review-one');
       clock += 1000;
       await one.put(review());
       return one.all();`,
    );
    expect(heads).toHaveLength(1);
    expect(heads[0]!.readMs).toBe(heads[0]!.receivedMs);
  });

  it('puts a review that was made anew in place of the old one, and never the old one over the new', async () => {
    const found = await inPage<{ words: readonly string[]; read: number | null; moments: number }>(
      `const one = shelf();
       const words = [];
       const received = new Set();
       for (const [madeMs, text] of [[2000, 'second'], [3000, 'third'], [1000, 'first']]) {
         await one.put(review({ madeMs, words: text }));
         clock += 1000;
         words.push((await one.review('review-one')).words);
         received.add((await one.all())[0].receivedMs);
         if (text === 'second') await one.markRead('review-one');
       }
       return { words, read: (await one.all())[0].readMs, moments: received.size };`,
    );
    // What is assigned counts from when the first of them came.
    expect(found).toEqual({ words: ['second', 'third', 'third'], read: null, moments: 1 });
  });

  it('lists them newest first', async () => {
    const ids = await inPage<readonly string[]>(
      `const one = shelf();
       for (const [id, madeMs] of [['b', 2], ['c', 3], ['a', 1]]) await one.put(review({ id, madeMs }));
       return (await one.all()).map(({ id }) => id);`,
    );
    expect(ids).toEqual(['c', 'b', 'a']);
  });

  it('brings back what was deleted for a week, and then ends it', async () => {
    const found = await inPage<{ back: number | null; again: number | null; left: number; reviews: number }>(
      `const one = shelf();
       await one.put(review());
       await one.remove('review-one');
       clock += 6 * DAY_MS;
       await one.all();
       await one.restore('review-one');
       const back = (await one.all())[0].deletedMs;
       await one.remove('review-one');
       await one.put(review());
       const again = (await one.all())[0].deletedMs;
       await one.remove('review-one');
       clock += 8 * DAY_MS;
       const left = (await one.all()).length;
       await one.close();
       const database = await openDB('evenfall-shelf');
       const reviews = await database.count('reviews');
       database.close();
       return { back, again, left, reviews };`,
    );
    expect(found).toEqual({ back: null, again: null, left: 0, reviews: 0 });
  });

  it('says plainly when there is no room or no store, and keeps what it had', async () => {
    const found = await inPage<{ full: string; left: number; closed: string }>(
      `const one = shelf();
       await one.put(review());
       const put = IDBObjectStore.prototype.put;
       IDBObjectStore.prototype.put = function (value, key) {
         if (this.name === 'reviews') throw new DOMException('full', 'QuotaExceededError');
         return key === undefined ? put.call(this, value) : put.call(this, value, key);
       };
       const said = (promise) => promise.then(() => 'done', (error) => error.name + ': ' + error.message);
       const full = await said(one.put(review({ id: 'two' })));
       IDBObjectStore.prototype.put = put;
       const left = (await one.all()).length;
       const open = indexedDB.open;
       IDBFactory.prototype.open = () => { throw new DOMException('private', 'SecurityError'); };
       const closed = await said(shelf({ databaseName: 'other' }).all());
       IDBFactory.prototype.open = open;
       return { full, left, closed };`,
    );
    expect(found.full).toMatch(/^StorageError: There is no room left/);
    expect(found.closed).toMatch(/^StorageError: This browser keeps no reviews/);
    expect(found.left).toBe(1);
  });
});
