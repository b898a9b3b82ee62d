import type { Browser, Page } from 'playwright-core';
import { beforeAll, describe, expect, inject, it } from 'vitest';
import { violations } from '../axe.ts';
import { sharedBrowser, visit } from '../visit.ts';
import { openInvented } from './stored-class.ts';

const site = inject('siteUrl');
let browser: Browser;
beforeAll(async () => {
  browser = await sharedBrowser();
});

const lines = (page: Page) => page.locator('[data-class] li');
const firstName = (page: Page): Promise<string> => lines(page).first().locator('.name').innerText();

describe('a class at a glance', () => {
  it('is forty students on one screen, who needs help most first; sorted, searched, and led to', async () => {
    const { page, errors, close } = await visit(browser, `${site}#teacher`, { width: 1440, height: 900 });
    await openInvented(page, 40, 4);
    await expect.poll(() => lines(page).count()).toBe(40);
    const box = (await page.locator('[data-class] ol').boundingBox())!;
    expect(box.height).toBeLessThan(800);
    expect(await lines(page).first().innerText()).toMatch(/nothing was recognised in 1 recording/);
    await page.locator('label', { hasText: 'by name' }).click();
    await expect.poll(() => firstName(page)).toBe('Ada');
    await page.getByLabel('Find a name').fill('tom');
    await expect.poll(() => lines(page).count()).toBe(2);
    await lines(page).first().getByRole('button').click();
    await expect.poll(() => page.evaluate(() => document.activeElement?.textContent)).toMatch(/^Tomke/);
    await expect.poll(() => violations(page)).toEqual([]);
    expect(errors).toEqual([]);
    await close();
  });
});
