import type { Browser, Page } from 'playwright-core';
import { beforeAll, expect, inject, it } from 'vitest';
import { fixturePath } from '../sounds.ts';
import { sharedBrowser, visit } from '../visit.ts';

const site = inject('siteUrl');
let browser: Browser;
beforeAll(async () => {
  browser = await sharedBrowser();
});

const focusIsIn = (page: Page, selector: string) =>
  expect.poll(() => page.evaluate((wanted) => document.activeElement?.matches(wanted), selector)).toBe(true);

it('a recording is heard, remarked on and left by keys alone, and the focus never falls out', async () => {
  const { page, errors, close } = await visit(browser, `${site}#teacher`);
  await page
    .getByLabel('Recordings to open', { exact: true })
    .setInputFiles([fixturePath('late-thumb'), fixturePath('clean-scale')]);
  await expect.poll(() => page.locator('[data-playing]').count()).toBe(2);
  await page.locator('.going').waitFor({ state: 'detached' });
  await page.locator('[data-playing]').first().focus();
  await page.keyboard.press('Enter');
  await focusIsIn(page, '#verdict');
  await page.keyboard.press('?');
  await page.getByText('write a remark', { exact: true }).waitFor();
  await focusIsIn(page, '#keys summary');
  // Two keys beside the text: one to begin, one chord to add.
  await page.keyboard.press('r');
  await focusIsIn(page, '[data-remark]');
  await page.keyboard.type('Much calmer.');
  await page.keyboard.press('Control+Enter');
  await page.getByRole('list', { name: 'Remarks on this attempt' }).getByText('Much calmer.').waitFor();
  await focusIsIn(page, '[data-remark]');
  const remark = page.getByLabel('Your remark');
  await expect.poll(() => remark.inputValue()).toBe('');
  await page.keyboard.type('Half a');
  await expect.poll(() => remark.inputValue()).toBe('Half a');
  await page.keyboard.press('Escape');
  await focusIsIn(page, '#verdict');
  expect(await remark.inputValue()).toBe('Half a');
  await page.keyboard.press('e');
  await expect
    .poll(() => page.evaluate(() => document.activeElement?.closest('#correct') !== null))
    .toBe(true);
  await page.keyboard.press('Escape');
  await page.getByText('Attempt 1 of 2').waitFor();
  // Heard, remarked on and on to the next: three keys beside the text, and none to get back to the page.
  await page.locator('#verdict').focus();
  await page.keyboard.press('Space');
  await page.keyboard.press('r');
  await focusIsIn(page, '[data-remark]');
  await page.keyboard.type(' as before.');
  await page.keyboard.press('Control+Shift+Enter');
  await page.getByText('Attempt 2 of 2').waitFor();
  await focusIsIn(page, '#verdict');
  await page.keyboard.press('Shift+ArrowLeft');
  await page.getByText('Attempt 1 of 2').waitFor();
  await page.getByText('Half a as before.').waitFor();
  await page.keyboard.press('n');
  await page.getByText('Attempt 2 of 2').waitFor();
  await focusIsIn(page, '#verdict');
  await page.keyboard.press('Escape');
  await focusIsIn(page, '[data-playing]');
  expect(errors).toEqual([]);
  await close();
});
