import { mkdtempSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Browser, Page } from 'playwright-core';
import { beforeAll, describe, expect, inject, it } from 'vitest';
import { it as listening, hearWhole, play } from './hearing.ts';
import { openSeededJournal } from './journal/scenes.ts';
import { fixturePath, microphoneWav } from './sounds.ts';
import { stored } from './stored.ts';
import { asFile, review } from './student/made.ts';
import { choose, seesPass, sharedBrowser, SOUNDING, verdictOf, visit } from './visit.ts';

const site = inject('siteUrl');
let browser: Browser;
beforeAll(async () => {
  browser = await sharedBrowser();
});

const hash = (page: Page): Promise<string> => page.evaluate(() => location.hash);
const heading = (page: Page, name: string | RegExp): Promise<void> =>
  page.getByRole('heading', { name }).first().waitFor();
const open = (page: Page, fixture: string): Promise<void> =>
  page.locator('.bar input[type=file]').setInputFiles(fixturePath(fixture));
const about = (page: Page, words: RegExp): Promise<void> =>
  page.locator('.where', { hasText: words }).waitFor();
const told = (page: Page, verdict: string): Promise<void> =>
  expect.poll(() => verdictOf(page), { message: 'the verdict' }).toBe(verdict);

async function atPiano(page: Page, key: string, address: string): Promise<void> {
  await page.locator('.what', { hasText: key }).waitFor();
  await expect.poll(() => hash(page)).toContain(address);
}

/** A moment: what is done, and what must be there, before a reload and after it. */
type Moment = readonly [
  name: string,
  act: (page: Page) => Promise<unknown>,
  there: (page: Page) => Promise<unknown>,
];

/** What one moment finds and another must find again. */
const found: Record<string, string> = {};

const PLAYING: readonly Moment[] = [
  ['the first visit', () => Promise.resolve(), (page) => heading(page, /^C major · tonic arpeggio/)],
  [
    'a key chosen',
    (page) => page.getByLabel('Key', { exact: true }).selectOption('E major'),
    (page) => heading(page, /^E major · tonic arpeggio/),
  ],
  [
    'form, length and hand chosen',
    async (page) => {
      for (const label of ['Scale', 'Left']) await choose(page.getByLabel(label, { exact: true }));
      await choose(page.locator('.row').getByLabel('1', { exact: true }));
    },
    async (page) => {
      await heading(page, 'E major · scale, one octave · left hand');
      expect(await hash(page)).toBe('#play/e-major-scale-left-1');
    },
  ],
  [
    'a tempo aimed at',
    async (page) => {
      await page.getByLabel('Tempo aim').fill('66');
      await page.keyboard.press('Tab');
    },
    (page) => expect.poll(() => page.getByLabel('Tempo aim').inputValue()).toBe('66'),
  ],
  [
    'recognising asked for',
    (page) => page.getByLabel('Recognise the exercise for me').check(),
    (page) => expect.poll(() => page.getByLabel('Recognise the exercise for me').isChecked()).toBe(true),
  ],
  [
    'a file that is listened to',
    async (page) => {
      await page.route(/analyst\.worker/, () => undefined);
      await page.reload();
      await open(page, 'missed-and-repeated');
      await page.locator('.bar progress').waitFor();
      await page.waitForURL(/#play\/attempt\//);
      // Kept before it is listened to, however long that takes.
      await expect
        .poll(() => page.evaluate(async () => (await indexedDB.databases()).map(({ name }) => name)))
        .toContain('evenfall-opened');
      await page.unroute(/analyst\.worker/);
    },
    async (page) => {
      found['file'] = await verdictOf(page);
      found['address'] = await hash(page);
    },
  ],
  [
    'a report of an opened file, and its sound',
    () => Promise.resolve(),
    async (page) => {
      await told(page, found['file']!);
      await seesPass(page, SOUNDING, () => page.locator('[data-spot="3"]').click());
    },
  ],
  [
    'a stretch set up to be practised, the report folded',
    (page) => page.getByRole('button', { name: 'Set it up' }).click(),
    async (page) => {
      await page.getByText(/How to practise: Only/).waitFor();
      expect(await page.locator('#verdict').count()).toBe(0);
    },
  ],
  ['Back to the report', (page) => page.goBack(), (page) => told(page, found['file']!)],
  [
    'the example',
    (page) => page.getByRole('button', { name: 'Example', exact: true }).click(),
    (page) => about(page, /example attempt/),
  ],
  [
    'a bookmark of the report',
    (page) => page.goto(site + found['address']!),
    (page) => told(page, found['file']!),
  ],
  [
    'a key',
    async (page) => {
      await page.getByRole('link', { name: 'Keys' }).click();
      await choose(page.locator('.circle input[value="Eb minor"]'));
    },
    async (page) => {
      await heading(page, /E♭ minor/);
      expect(await hash(page)).toBe('#keys/eb-minor');
    },
  ],
  [
    'the exercise of a key, the old report folded',
    (page) =>
      page
        .locator('section[aria-labelledby="arpeggio-title"]')
        .getByRole('button', { name: 'Play it' })
        .click(),
    async (page) => {
      await page.getByRole('heading', { level: 1, name: /^E♭ minor · tonic arpeggio/ }).waitFor();
      expect(await page.locator('#verdict').count()).toBe(0);
    },
  ],
  [
    'the same at the piano',
    (page) => page.getByRole('link', { name: 'At the piano' }).click(),
    (page) => atPiano(page, 'E♭ minor', '#stand/eb-minor-arpeggio-'),
  ],
  [
    'another exercise chosen there',
    (page) => page.getByLabel('Key', { exact: true }).selectOption('D major'),
    (page) => atPiano(page, 'D major', '#stand/d-major-arpeggio-'),
  ],
  [
    'a bookmark of an exercise at the piano',
    (page) => page.goto(`${site}#stand/d-minor-scale-melodic-left-1`),
    (page) => atPiano(page, 'D minor', '#stand/d-minor-scale-melodic-left-1'),
  ],
];

const READING: readonly Moment[] = [
  [
    'an attempt of the journal',
    async (page) => {
      await openSeededJournal(page, 12);
      await page.locator('[data-row] button').first().click();
    },
    async (page) => {
      found['kept'] ??= await verdictOf(page);
      await told(page, found['kept']);
    },
  ],
  ['Back to the journal', (page) => page.goBack(), (page) => page.locator('[data-row]').first().waitFor()],
  [
    'a review from a teacher',
    async (page) => page.getByLabel('A review to open').setInputFiles(await asFile(review())),
    (page) => heading(page, 'From Ms Ley'),
  ],
  [
    'attempts on their way to a teacher, with a word',
    async (page) => {
      await page.getByRole('button', { name: 'The journal' }).click();
      await page.getByRole('button', { name: 'Send to my teacher' }).click();
      await page.getByLabel('A few words').fill('The left hand was hard.');
    },
    (page) => expect.poll(() => page.getByLabel('A few words').inputValue()).toBe('The left hand was hard.'),
  ],
];

const TEACHING: readonly Moment[] = [
  [
    'a student',
    async (page) => {
      await page.goto(`${site}#teacher`);
      await page.locator('input[multiple][type=file]').first().setInputFiles(fixturePath('late-thumb'));
      await page.locator('.going').waitFor({ state: 'detached' });
      await page.locator('.students h2 a').first().click();
    },
    (page) => page.getByRole('button', { name: 'All students' }).waitFor(),
  ],
  [
    'an attempt heard, with a remark that is being typed',
    async (page) => {
      await page.locator('[data-playing]').first().click();
      await page.getByLabel('Your remark').fill('Let the thumb travel');
    },
    (page) => expect.poll(() => page.getByLabel('Your remark').inputValue()).toBe('Let the thumb travel'),
  ],
  [
    'words to a student that are being typed',
    async (page) => {
      await page.getByRole('button', { name: 'All attempts' }).click();
      await page.getByText('Make the review').click();
      await page.getByLabel('To the student, about all of it').pressSequentially('Good work');
    },
    async (page) => {
      if (!(await page.getByLabel('To the student, about all of it').isVisible()))
        await page.getByText('Make the review').click();
      await expect
        .poll(() => page.getByLabel('To the student, about all of it').inputValue())
        .toBe('Good work');
    },
  ],
];

/** One visit through all moments, the page reloaded at each. */
async function reloadAt(moments: readonly Moment[]): Promise<void> {
  const { page, errors, close } = await visit(browser, site);
  for (const [name, act, there] of moments) {
    await act(page);
    await there(page).catch((error: unknown) => {
      throw new Error(`${name}, before the reload`, { cause: error });
    });
    await page.reload();
    await there(page).catch((error: unknown) => {
      throw new Error(`${name}, after the reload`, { cause: error });
    });
  }
  expect(errors).toEqual([]);
  await close();
}

describe('a reload loses nothing', () => {
  it('of what is played', () => reloadAt(PLAYING));
  it('of what is read', () => reloadAt(READING));
  it('of what is taught', () => reloadAt(TEACHING));

  listening('of a recording in progress: what has sounded is kept and told', async ({ hearing }) => {
    const heard = join(mkdtempSync(join(tmpdir(), 'evenfall-')), 'microphone.wav');
    writeFileSync(heard, await microphoneWav('late-thumb'));
    const { page, errors, close } = await visit(
      await hearing(heard),
      `${site}#play/ab-major-arpeggio-right-2`,
      {
        before: (fresh) => hearWhole(fresh, heard, true),
      },
    );
    await page.getByRole('button', { name: 'Record', exact: true }).click();
    await page.getByRole('button', { name: 'Turn on the microphone' }).click();
    await page.getByRole('button', { name: 'Start' }).click();
    await play(page);
    // Laid aside piece by piece, a tenth of a second each: five seconds of the playing, at least.
    const pieces = async (): Promise<number> =>
      ((await stored(page, 'evenfall-unfinished', 'pieces')) as readonly unknown[]).length;
    await expect.poll(pieces, { message: 'pieces laid aside' }).toBeGreaterThan(50);
    await page.reload();
    await about(page, /A♭ major/);
    await page.getByText('The page was closed').first().waitFor();
    const verdict = await verdictOf(page);
    await page.waitForURL(/#play\/attempt\//);
    await page.reload();
    await told(page, verdict);
    expect(errors).toEqual([]);
    await close();
  });
});

it('an address that leads to nothing says so, and the page goes on', async () => {
  const { page, errors, close } = await visit(browser, `${site}#play/attempt/opened-000000000-x`);
  await page.getByText('This attempt is not on this device').waitFor();
  await page.getByRole('button', { name: 'Record', exact: true }).waitFor();
  expect(await hash(page)).toBe('');
  expect(errors).toEqual([]);
  await close();
});
