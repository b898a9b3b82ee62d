import type { Browser } from 'playwright-core';
import { beforeAll, describe, expect, inject, it } from 'vitest';
import { nothingBeyondItsEdge, nothingWrong } from './axe.ts';
import { atEverySize, seesPass, sharedBrowser, SIZES, SOUNDING, verdictOf, visit } from './visit.ts';

const site = inject('siteUrl');
let browser: Browser;
beforeAll(async () => {
  browser = await sharedBrowser();
});

describe('at every size, light and dark, axe finds nothing wrong and nothing lies beyond the edge', () => {
  it('before a report and with one', async () => {
    const { page, close } = await visit(browser, site);
    await page.locator('.music svg').first().waitFor();
    await atEverySize(page, (seen) => nothingWrong(page, seen));
    await page.getByRole('button', { name: 'Example' }).click();
    await verdictOf(page);
    await page.getByText('Every note, as a table').click();
    await page.getByText('Credits').click();
    await atEverySize(page, (seen) => nothingWrong(page, seen));
    await close();
  });

  it('at the piano', async () => {
    const { page, close } = await visit(browser, `${site}#stand`);
    await page.locator('.music svg').first().waitFor();
    await atEverySize(page, (seen) => nothingWrong(page, seen));
    await close();
  });
});

describe('the page', () => {
  it.each(SIZES)('never scrolls sideways on a $name', async ({ width, height }) => {
    const { page, close } = await visit(browser, `${site}?attempt=bundled`, { width, height });
    await verdictOf(page);
    await page.locator('.music svg').first().waitFor();
    await nothingBeyondItsEdge(page);
    await close();
  });

  it('is used by the keyboard alone, from the choice to hearing one spot', async () => {
    const { page, close } = await visit(browser, site);
    const tabTo = async (name: string): Promise<void> => {
      for (let presses = 0; presses < 60; presses += 1) {
        const at = await page.evaluate(() => {
          const here = document.activeElement;
          if (here === document.body) return '';
          return (
            here?.getAttribute('aria-label') ?? here?.closest('label')?.textContent ?? here?.textContent ?? ''
          );
        });
        if (at.includes(name)) return;
        await page.keyboard.press('Tab');
      }
      throw new Error(`Tab never came to "${name}"`);
    };
    await tabTo('Right');
    await page.keyboard.press('ArrowLeft');
    await page.getByRole('heading', { name: /left hand/ }).waitFor();
    await tabTo('Example');
    await page.keyboard.press('Enter');
    await verdictOf(page);
    await expect.poll(() => page.evaluate(() => document.activeElement?.id)).toBe('verdict');
    await page.locator('[data-spot]').first().waitFor();
    await tabTo('Set it up');
    await page.keyboard.press('Tab');
    await expect.poll(() => page.evaluate(() => document.activeElement?.getAttribute('data-spot'))).toBe('0');
    await page.keyboard.press('ArrowRight');
    await page.keyboard.press('ArrowRight');
    await expect.poll(() => page.evaluate(() => document.activeElement?.getAttribute('data-spot'))).toBe('2');
    await seesPass(page, SOUNDING, () => page.keyboard.press('Enter'));
    await page.keyboard.press('End');
    await page.keyboard.press('Home');
    await expect.poll(() => page.evaluate(() => document.activeElement?.getAttribute('data-spot'))).toBe('0');
    await close();
  });
});
