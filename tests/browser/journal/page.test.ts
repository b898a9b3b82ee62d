import { mkdtempSync, readFileSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Browser, Locator, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, inject, it } from 'vitest';
import { nothingBeyondItsEdge, nothingWrongAtAnySize } from '../axe.ts';
import { hearWhole, recordWhole } from '../hearing.ts';
import { microphoneWav } from '../sounds.ts';
import { stored } from '../stored.ts';
import { choose, openBrowser, seesPass, SOUNDING, verdictOf, visit } from '../visit.ts';
import { ATTEMPTS } from './five-years.ts';
import { openEmptyJournal, openSeededJournal } from './scenes.ts';

const site = inject('siteUrl');
let browser: Browser;
/** what the microphone hears */
let heard: string;
beforeAll(async () => {
  heard = join(mkdtempSync(join(tmpdir(), 'evenfall-')), 'microphone.wav');
  writeFileSync(heard, await microphoneWav('late-thumb'));
  browser = await openBrowser(heard);
});
afterAll(() => browser.close());

/** Records what the microphone hears, from the first touch to Stop. */
async function record(page: Page): Promise<void> {
  await page.getByLabel('Key', { exact: true }).selectOption('Ab major');
  await page.getByRole('button', { name: 'Record', exact: true }).click();
  await page.getByRole('button', { name: 'Turn on the microphone' }).click();
  await recordWhole(page, 'late-thumb');
}

const reportsKept = (page: Page, count: number): Promise<void> =>
  expect
    .poll(() => stored(page, 'evenfall-journal', 'reports'), { message: 'reports in the journal' })
    .toHaveLength(count);
const openJournal = (page: Page): Promise<void> => page.getByRole('link', { name: 'Journal' }).click();
const rows = (page: Page) => page.locator('[data-row]');

describe('an attempt', () => {
  it('is in the journal with its report and its sound, also after the page was closed', async () => {
    const { page, errors, close } = await visit(browser, site, {
      before: (fresh) => hearWhole(fresh, heard, true),
    });
    await record(page);
    const verdict = await verdictOf(page);
    await reportsKept(page, 1);
    await openJournal(page);
    await rows(page).first().waitFor();
    await expect
      .poll(() => rows(page).first().innerText())
      .toMatch(/A♭ major arpeggio, 2\soctaves, right hand\s+today .*of 13 right/);
    await page.reload();
    await rows(page).first().waitFor();
    await page.locator('#kept').waitFor();
    await expect
      .poll(() => page.locator('#kept ~ p').first().innerText())
      .toMatch(/1 attempt, all with sound/);
    await rows(page).locator('button').first().click();
    await expect.poll(() => verdictOf(page)).toBe(verdict);
    await seesPass(page, SOUNDING, () => page.locator('[data-spot="3"]').click());
    expect(errors).toEqual([]);
    await close();
  });

  it('is stored before it is analysed: a page closed in the middle loses nothing', async () => {
    const { page, close } = await visit(browser, site, {
      before: async (there) => {
        await hearWhole(there, heard, true);
        // An analysis that never comes to its end.
        await there.route(/analyst\.worker/, () => undefined);
      },
    });
    // Nor is it doubled where the page is closed before what was laid aside of it could be forgotten.
    await page.evaluate(() => {
      IDBObjectStore.prototype.delete = () => {
        throw new Error('Nothing is forgotten.');
      };
    });
    await record(page);
    const sounds = (): Promise<unknown> => stored(page, 'evenfall-journal', 'sounds');
    await expect.poll(sounds, { message: 'sounds in the journal' }).toHaveLength(1);
    await page.unroute(/analyst\.worker/);
    // Not at the attempt's own address, where it is listened to by itself.
    await page.goto('about:blank');
    await page.goto(site);
    const laidAside = (): Promise<unknown> => stored(page, 'evenfall-unfinished', 'attempts');
    await expect.poll(laidAside, { message: 'attempts laid aside' }).toEqual([]);
    await openJournal(page);
    await expect.poll(() => rows(page).first().innerText()).toMatch(/not listened to yet/);
    await rows(page).locator('button').first().click();
    await page.getByRole('button', { name: 'Listen to it now' }).click();
    await expect
      .poll(() => verdictOf(page))
      .toMatch(/late going up to C|come late, most C going up|C going up in the (lower|upper) octave/);
    await openJournal(page);
    await expect.poll(() => rows(page).first().innerText()).toMatch(/of 13 right/);
    await expect.poll(() => rows(page).count()).toBe(1);
    await close();
  });

  it('is compared with those of the journal, not only of this page', async () => {
    const { page, close } = await visit(browser, site, { before: (fresh) => hearWhole(fresh, heard, true) });
    for (const times of [1, 2]) {
      await record(page);
      await verdictOf(page);
      await reportsKept(page, times);
      await page.reload();
    }
    await openJournal(page);
    await rows(page).first().waitFor();
    await expect.poll(() => rows(page).count()).toBe(2);
    await page
      .getByRole('button', { name: /^A♭ major arpeggio: left hand not played, right hand not yet/ })
      .click();
    await expect
      .poll(() => page.locator('.hand').nth(1).innerText())
      .toMatch(/Right hand: not yet\s+Last time .* crossings came late/);
    await close();
  });

  it('that was deleted comes back at one touch, also later', async () => {
    const { page, close } = await visit(browser, site);
    await openSeededJournal(page, 30);
    const first = await rows(page).first().innerText();
    await page
      .getByRole('button', { name: /^Delete/ })
      .first()
      .click();
    await page.getByText('29 attempts').first().waitFor();
    await page.getByRole('button', { name: 'Undo' }).click();
    await page.getByText('30 attempts').first().waitFor();
    await expect.poll(() => rows(page).first().innerText()).toBe(first);
    await page
      .getByRole('button', { name: /^Delete/ })
      .first()
      .click();
    await page.getByText('29 attempts').first().waitFor();
    await page.reload();
    await page.getByText('1 deleted attempt can be brought back').waitFor();
    await page.getByRole('button', { name: 'Bring back' }).click();
    await page.getByText('30 attempts').first().waitFor();
    await close();
  });
});

describe('the journal', () => {
  it('goes out as one file and comes into another browser', async () => {
    const one = await visit(browser, site);
    await openSeededJournal(one.page, 30);
    const downloading = one.page.waitForEvent('download');
    await one.page.getByRole('button', { name: 'Export the journal' }).click();
    const download = await downloading;
    const buffer = readFileSync(await download.path());
    expect(download.suggestedFilename()).toMatch(/^evenfall-journal-\d{4}-\d\d-\d\d\.tar\.gz$/);
    await one.close();
    const two = await visit(browser, site);
    await openEmptyJournal(two.page);
    await two.page
      .getByLabel('A journal to import')
      .setInputFiles({ name: 'journal.tar.gz', mimeType: 'application/gzip', buffer });
    await two.page.getByText('30 attempts added.').waitFor();
    await expect.poll(() => rows(two.page).count()).toBeGreaterThan(8);
    await rows(two.page).locator('button').first().click();
    await expect
      .poll(() => verdictOf(two.page))
      .toMatch(/^Every note right\. The time from note to note varies/);
    await two.page.getByText('The sound of this attempt is not kept').waitFor();
    await two.close();
  });

  it('says so plainly when a file is none of its own', async () => {
    const { page, errors, close } = await visit(browser, site);
    await openEmptyJournal(page);
    const file = { name: 'letter.gz', mimeType: 'application/gzip', buffer: Buffer.from('Hello') };
    await page.getByLabel('A journal to import').setInputFiles(file);
    const told = page.getByRole('alert').getByText('no journal of Evenfall');
    await told.waitFor();
    const inSight = async (): Promise<boolean> => {
      const box = (await told.boundingBox())!;
      return box.y >= 0 && box.y < page.viewportSize()!.height;
    };
    await expect.poll(inSight).toBe(true);
    expect(errors).toEqual([]);
    await close();
  });

  it('judges anew when what counts as ready is changed, and remembers it', async () => {
    const { page, close } = await visit(browser, site);
    await openSeededJournal(page, 300);
    const ready = (): Promise<number> => page.locator('button[aria-label*=" ready"]').count();
    const before = await ready();
    await page.getByText('What counts as ready').click();
    await page.getByLabel('Variation of time at seven notes a second, at most').fill('25');
    await page.getByLabel('Attempts in a row at the criterion').fill('1');
    await page.keyboard.press('Tab');
    await expect.poll(ready, { message: 'more is ready once less is asked for' }).toBeGreaterThan(before);
    const after = await ready();
    await page.reload();
    await expect.poll(ready, { message: 'what was ready before the reload is ready after it' }).toBe(after);
    await close();
  });

  it('remembers what counts as ready though the page is reloaded in the same moment', async () => {
    const { page, close } = await visit(browser, site);
    await openEmptyJournal(page);
    const evenness = page.getByLabel('Variation of time at seven notes a second, at most');
    for (const percent of ['20', '21', '22', '23', '24', '25', '26', '27', '28', '29']) {
      await Promise.all([
        page.waitForEvent('load'),
        evenness.evaluate((input: HTMLInputElement, wanted) => {
          input.value = wanted;
          input.dispatchEvent(new Event('change', { bubbles: true }));
          location.reload();
        }, percent),
      ]);
      await page.locator('#kept').waitFor();
      await expect.poll(() => evenness.inputValue(), { message: 'evenness after the reload' }).toBe(percent);
    }
    await close();
  });

  it('holds five years of practice, and draws only the rows that are seen', async () => {
    const { page, errors, close } = await visit(browser, site);
    await openSeededJournal(page, ATTEMPTS, { aDay: 20, reports: false });
    await page.getByText('36,500 attempts').first().waitFor();
    await rows(page).first().waitFor();
    await expect.poll(() => rows(page).count()).toBeLessThan(40);
    await page.locator('.scroller').evaluate((list) => (list.scrollTop = list.scrollHeight));
    await page.locator(`[data-row="${ATTEMPTS - 1}"]`).waitFor();
    await expect.poll(() => rows(page).count()).toBeLessThan(40);
    expect(errors).toEqual([]);
    await close();
  });

  it('leads from the plan of the day to listening in one touch', async () => {
    const { page, close } = await visit(browser, site);
    await openSeededJournal(page, 300);
    const what = await page.locator('#today ~ ol .what').first().innerText();
    await page.locator('#today ~ ol button').first().click();
    await page.getByRole('button', { name: 'Turn on the microphone' }).waitFor();
    await expect
      .poll(() => page.locator('#exercise').innerText())
      .toMatch(new RegExp(`^${what.split(' ')[0]!} major`));
    await close();
  });

  it('is used by the keyboard alone', async () => {
    const { page, close } = await visit(browser, site);
    await openSeededJournal(page, 60);
    for (let presses = 0; presses < 60; presses += 1) {
      await page.keyboard.press('Tab');
      if (await page.evaluate(() => document.activeElement?.closest('[data-row]') !== null)) break;
    }
    const at = (): Promise<string | null | undefined> =>
      page.evaluate(() => document.activeElement?.closest('[data-row]')?.getAttribute('data-row'));
    expect(await at()).toBe('0');
    for (const key of ['ArrowDown', 'ArrowDown', 'ArrowUp']) await page.keyboard.press(key);
    await expect.poll(at).toBe('1');
    await page.keyboard.press('End');
    await expect.poll(at).toBe('59');
    await page.keyboard.press('Home');
    await expect.poll(at).toBe('0');
    await page.keyboard.press('Enter');
    await verdictOf(page);
    await expect.poll(() => page.evaluate(() => document.activeElement?.id)).toBe('verdict');
    await page.keyboard.press('Shift+Tab');
    await page.keyboard.press('Shift+Tab');
    await page.keyboard.press('Enter');
    await rows(page).first().waitFor();
    await close();
  });
});

it('a journal that cannot be read is told to be unread: none of it is called empty or not yet begun', async () => {
  const { page, close } = await visit(browser, `${site}licences.md`);
  await page.evaluate(
    () =>
      new Promise<void>((resolve) => {
        const opening = indexedDB.open('evenfall-journal', 1000);
        opening.onsuccess = () => {
          opening.result.close();
          resolve();
        };
      }),
  );
  await page.goto(`${site}#journal`);
  await page
    .getByText('The journal could not be read: attempts that are kept in it are not shown.')
    .waitFor();
  const said = await page.locator('main').innerText();
  expect(said).not.toContain('Nothing is in it yet');
  expect(said).not.toContain('Today');
  expect(said).not.toContain('Over the weeks');
  await close();
});

it('of the levels a tempo stands in one piece on a phone, and what belongs together in one line', async () => {
  const { page, close } = await visit(browser, site, { width: 390, height: 844 });
  await openEmptyJournal(page);
  await page.getByText('Levels: what is begun').click();
  const first = page.locator('.level summary').first();
  await expect.poll(() => first.innerText()).toMatch(/arpeggio 1\u00a0octave ♩\u00a0=\u00a050/);
  await first.click();
  const asks = page.locator('.level').first().locator('.asks > li');
  await asks.first().waitFor();
  for (const ask of await asks.all()) {
    const middle = async (part: Locator): Promise<number> => {
      const { y, height } = (await part.boundingBox())!;
      return y + height / 2;
    };
    const form = await middle(ask.getByLabel('Exercise', { exact: true }));
    expect(await middle(ask.getByRole('button'))).toBeCloseTo(form, -1);
    const touch = await middle(ask.getByLabel(/: touch$/i));
    expect(await middle(ask.getByRole('checkbox'))).toBeCloseTo(touch, -1);
  }
  await close();
});

it('axe finds nothing wrong at any size, light or dark, and nothing lies beyond the edge', async () => {
  const { page, errors, close } = await visit(browser, site);
  const nothing = (): Promise<void> => nothingWrongAtAnySize(page);
  await openEmptyJournal(page);
  await nothing();
  await openSeededJournal(page, 400);
  await page.getByRole('button', { name: /^C major arpeggio: / }).click();
  await page.locator('.trend summary').first().click();
  await page.getByText('What counts as ready').click();
  await page
    .getByRole('button', { name: /^Delete/ })
    .first()
    .click();
  await page.getByText('Levels: what is begun').click();
  await page.getByText('Level 1.').click();
  await nothing();
  // German is longer.
  await page.setViewportSize({ width: 390, height: 844 });
  await choose(page.getByRole('radio', { name: 'Deutsch' }));
  await page.getByRole('heading', { name: 'Tagebuch', exact: true }).waitFor();
  await nothingBeyondItsEdge(page, 'phone, German');
  await choose(page.getByRole('radio', { name: 'English' }));
  await rows(page).locator('button').first().click();
  await verdictOf(page);
  await nothing();
  expect(errors).toEqual([]);
  await close();
});
