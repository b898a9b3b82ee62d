import { readFileSync } from 'node:fs';
import type { Browser, Page } from 'playwright-core';
import { beforeAll, expect, inject, it } from 'vitest';
import { fixturePath } from '../sounds.ts';
import { sharedBrowser, visit } from '../visit.ts';

const site = inject('siteUrl');
let browser: Browser;
beforeAll(async () => {
  browser = await sharedBrowser();
});

const openPage = () => visit(browser, `${site}#teacher`);
const openAttempt = async (page: Page): Promise<void> => {
  await page.locator('[data-playing]').click();
  await page.locator('[data-spot]').first().waitFor();
};
const remark = async (page: Page, text: string): Promise<void> => {
  await page.getByLabel('Your remark').fill(text);
  await page.getByRole('button', { name: 'Add the remark' }).click();
  await page.getByText(text).waitFor();
};
const bringIn = (page: Page, path: string): Promise<void> =>
  page.getByLabel('A file with everything, to bring in').setInputFiles(path);

it('everything goes into one file, comes in on another device, and there overwrites nothing', async () => {
  const here = await openPage();
  await here.page.getByLabel('Recordings to open', { exact: true }).setInputFiles({
    name: 'Mara - arpeggio.wav',
    mimeType: 'audio/wav',
    buffer: readFileSync(fixturePath('late-thumb')),
  });
  await here.page.locator('[data-playing]').waitFor();
  await here.page.getByRole('button', { name: /^That is right/ }).click();
  await openAttempt(here.page);
  await here.page.getByLabel('Your remark').fill('Lovely and calm.');
  await here.page.getByRole('button', { name: 'Keep these words' }).click();
  await here.page.getByRole('button', { name: 'Lovely and calm.' }).waitFor();
  await remark(here.page, 'Let the thumb travel.');
  await here.page.getByRole('button', { name: 'All attempts' }).click();
  const [saved] = await Promise.all([
    here.page.waitForEvent('download'),
    here.page.getByRole('button', { name: 'Save everything in one file' }).click(),
  ]);
  expect(saved.suggestedFilename()).toMatch(/^evenfall-teacher-\d{4}-\d\d-\d\d\.tar\.gz$/);
  const path = await saved.path();

  const there = await openPage();
  await bringIn(there.page, path);
  await there.page.getByText('1 student and 1 attempt came in').waitFor();
  await there.page.getByRole('heading', { name: 'Mara' }).waitFor();
  await openAttempt(there.page);
  await there.page.getByText('Let the thumb travel.').waitFor();
  await there.page.getByRole('button', { name: 'Play it all' }).waitFor();
  await there.page.getByRole('button', { name: 'Lovely and calm.' }).click();
  expect(await there.page.getByLabel('Your remark').inputValue()).toBe('Lovely and calm.');
  await remark(there.page, 'Said on the other device.');
  await there.page.getByRole('button', { name: 'All attempts' }).click();
  await there.page.getByText('Everything that came in (1)').click();
  await there.page.getByRole('button', { name: 'Hear it whole' }).waitFor();

  await bringIn(there.page, path);
  await there.page.getByText('1 attempt was here already').waitFor();
  await expect.poll(() => there.page.locator('[data-playing]').count()).toBe(1);
  await openAttempt(there.page);
  await there.page.getByText('Said on the other device.').waitFor();
  await there.page.getByText('Let the thumb travel.').waitFor();

  await there.page.getByRole('button', { name: 'All attempts' }).click();
  await bringIn(there.page, fixturePath('clean-scale'));
  await there.page.getByText('It is no backup of the page for teachers.').waitFor();
  expect([...here.errors, ...there.errors]).toEqual([]);
  await here.close();
  await there.close();
});
