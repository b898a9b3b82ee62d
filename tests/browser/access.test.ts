import type { Browser } from 'playwright-core';
import { beforeAll, describe, expect, inject, it } from 'vitest';
import { violations } from './axe.ts';
import { sharedBrowser, SIZES, verdictOf, visit } from './visit.ts';

const site = inject('siteUrl');
let browser: Browser;
beforeAll(async () => {
  browser = await sharedBrowser();
});

describe.each(['light', 'dark'] as const)('in %s', (colorScheme) => {
  it.each(SIZES)(
    'axe finds nothing wrong on a $name, before and after a report',
    async ({ width, height }) => {
      const { page, close } = await visit(browser, site, { width, height, colorScheme });
      await page.locator('.music svg').first().waitFor();
      expect(await violations(page)).toEqual([]);
      await page.getByRole('button', { name: 'Example' }).click();
      await verdictOf(page);
      await page.getByText('Every note, as a table').click();
      await page.getByText('Credits').click();
      expect(await violations(page)).toEqual([]);
      await close();
    },
  );

  it.each(SIZES)('axe finds nothing wrong at the piano on a $name', async ({ width, height }) => {
    const { page, close } = await visit(browser, `${site}#stand`, { width, height, colorScheme });
    await page.locator('.music svg').first().waitFor();
    expect(await violations(page)).toEqual([]);
    expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(width);
    await close();
  });
});

describe('the page', () => {
  it.each(SIZES)('never scrolls sideways on a $name', async ({ width, height }) => {
    const { page, close } = await visit(browser, `${site}?attempt=bundled`, { width, height });
    await verdictOf(page);
    await page.locator('.music svg').first().waitFor();
    expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(width);
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
    expect(await page.evaluate(() => document.activeElement?.id)).toBe('verdict');
    await page.locator('[data-spot]').first().waitFor();
    await page.keyboard.press('Tab');
    expect(await page.evaluate(() => document.activeElement?.getAttribute('data-spot'))).toBe('0');
    await page.keyboard.press('ArrowRight');
    await page.keyboard.press('ArrowRight');
    expect(await page.evaluate(() => document.activeElement?.getAttribute('data-spot'))).toBe('2');
    await page.keyboard.press('Enter');
    await page.locator('[data-spot][aria-current=true]').first().waitFor();
    await page.keyboard.press('End');
    await page.keyboard.press('Home');
    expect(await page.evaluate(() => document.activeElement?.getAttribute('data-spot'))).toBe('0');
    await close();
  });
});
