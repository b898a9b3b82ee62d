import type { Browser, Page } from 'playwright-core';
import { beforeAll, describe, expect, inject, it } from 'vitest';
import { fixturePath } from '../sounds.ts';
import { sharedBrowser, visit } from '../visit.ts';
import { visitDoor } from '../workshop.ts';

const site = inject('siteUrl');
let browser: Browser;
beforeAll(async () => {
  browser = await sharedBrowser();
});

/** The page for teachers with one attempt of Mara's, in two windows. */
async function twoWindows() {
  const { page, errors, close } = await visit(browser, `${site}#teacher`);
  await page.getByLabel('Recordings to open', { exact: true }).setInputFiles(fixturePath('late-thumb'));
  await page.locator('[data-playing]').waitFor();
  const other = await page.context().newPage();
  await other.goto(`${site}#teacher`);
  await other.locator('[data-playing]').waitFor();
  return { page, other, errors, close };
}

const openAttempt = async (page: Page): Promise<void> => {
  await page.locator('[data-playing]').click();
  await page.locator('[data-spot]').first().waitFor();
};
const remark = (page: Page) => page.getByLabel('Your remark');
const words = (page: Page) => page.getByLabel('To the student, about all of it');
const openReview = (page: Page): Promise<void> => page.getByText('Make the review').click();

describe('two windows of the page for teachers', () => {
  it('follow each other: names, remarks, and both of what both type', async () => {
    const { page, other, errors, close } = await twoWindows();
    await page.getByRole('button', { name: /^Change the name/ }).click();
    await page.getByLabel('Student', { exact: true }).fill('Mara');
    await page.getByRole('button', { name: 'Save', exact: true }).click();
    await other.getByRole('heading', { name: 'Mara' }).waitFor();
    await openReview(page);
    await openReview(other);
    await words(page).fill('Good work.');
    await words(other).fill('Slower next week.');
    await words(page).blur();
    await words(other).blur();
    for (const one of [page, other])
      await expect.poll(() => words(one).inputValue()).toBe('Good work.\n\nSlower next week.');
    await openAttempt(page);
    await openAttempt(other);
    await remark(page).fill('Let the thumb travel.');
    await page.getByRole('button', { name: 'Add the remark' }).click();
    await other.getByText('Let the thumb travel.').waitFor();
    expect(errors).toEqual([]);
    await close();
  });

  it('lose nothing that is typed: not by a reload, not where the device is full', async () => {
    const { page, errors, close } = await twoWindows();
    await openAttempt(page);
    await remark(page).fill('Half a sent');
    // The address leads to the attempt itself.
    await page.reload();
    await expect.poll(() => remark(page).inputValue()).toBe('Half a sent');
    await page.getByRole('button', { name: 'All attempts' }).click();
    await openReview(page);
    await page.evaluate(() => {
      const { put } = IDBObjectStore.prototype;
      IDBObjectStore.prototype.put = function (value: unknown, key?: IDBValidKey) {
        if (this.name === 'students') throw new DOMException('full', 'QuotaExceededError');
        return key === undefined ? put.call(this, value) : put.call(this, value, key);
      };
    });
    await words(page).fill('A whole week of work');
    await words(page).blur();
    await page.getByRole('alert').waitFor();
    expect(await words(page).inputValue()).toBe('A whole week of work');
    await page.reload();
    await openReview(page);
    await expect.poll(() => words(page).inputValue()).toBe('A whole week of work');
    expect(errors).toEqual([]);
    await close();
  });
});

/** In a page with the store: every change of two windows, in an order that `seed` draws → what is kept in the end. */
const INTERLEAVED = (seed: number): string => `(async () => {
  const { createTeachingStore } = window.door;
  const windows = [createTeachingStore({ databaseName: 'class-${seed}' }), createTeachingStore({ databaseName: 'class-${seed}' })];
  let told = 0;
  windows[1].onChanged(() => (told += 1));
  const student = { id: 's', name: '', words: '', message: '', assignment: [], sent: [], deletedMs: null };
  const playing = { id: 'p', studentId: 's', heardMs: null, remarks: 0, deletedMs: null };
  await windows[0].addStudents([student]);
  await windows[0].addPlayings([{ playing, reports: { own: null, chosen: null }, sound: null }]);
  const student_ = (at, fields) => () => windows[at].changeStudents([{ id: 's', fields }]);
  const playing_ = (at, fields) => () => windows[at].changePlayings([{ id: 'p', fields }]);
  const say = (at, id) => () => windows[at].changeSaid('p', (said) => ({ ...said, remarks: [...said.remarks, { id }] }));
  const acts = [
    student_(0, () => ({ name: 'Mara' })),
    student_(1, () => ({ words: 'Good.' })),
    student_(0, ({ assignment }) => ({ assignment: [...assignment, 'C'] })),
    student_(1, ({ assignment }) => ({ assignment: [...assignment, 'D'] })),
    student_(0, ({ sent }) => ({ sent: [...sent, 'one'] })),
    student_(1, ({ sent }) => ({ sent: [...sent, 'two'] })),
    playing_(0, () => ({ heardMs: 5 })),
    playing_(1, () => ({ chosen: 'scale' })),
    playing_(0, ({ remarks }) => ({ remarks: remarks + 1 })),
    playing_(1, ({ remarks }) => ({ remarks: remarks + 1 })),
    say(0, 'a'), say(1, 'b'), say(0, 'c'), say(1, 'd'),
  ];
  let state = ${seed} + 1;
  const draw = () => (state = (state * 48271) % 2147483647) / 2147483647;
  const order = acts.map((act) => ({ act, at: draw() })).sort((a, b) => a.at - b.at);
  await Promise.all(order.map(({ act }) => act()));
  const { students: [s], playings: [p] } = await windows[1].records({ students: ['s'], files: [], playings: ['p'] });
  const { remarks } = await windows[0].said('p');
  const kept = {
    name: s.name, words: s.words, assigned: s.assignment.toSorted(), sent: s.sent.toSorted(), version: s.version,
    heardMs: p.heardMs, chosen: p.chosen, remarks: p.remarks, said: remarks.map(({ id }) => id).toSorted(),
  };
  await Promise.all(windows.map((one) => one.close()));
  return { kept, wasTold: told > 0 };
})()`;

it('records that two windows change, in ten orders, keep every change of both', async () => {
  const { page, errors, close } = await visitDoor(browser, 'teacher');
  for (let seed = 0; seed < 10; seed++) {
    const { kept, wasTold } = await page.evaluate<{ kept: unknown; wasTold: boolean }>(INTERLEAVED(seed));
    expect(kept).toEqual({
      name: 'Mara',
      words: 'Good.',
      assigned: ['C', 'D'],
      sent: ['one', 'two'],
      version: 6,
      heardMs: 5,
      chosen: 'scale',
      remarks: 2,
      said: ['a', 'b', 'c', 'd'],
    });
    expect(wasTold).toBe(true);
  }
  expect(errors).toEqual([]);
  await close();
});
