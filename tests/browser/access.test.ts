import type { Browser, Page } from 'playwright-core';
import { beforeAll, describe, expect, inject, it } from 'vitest';
import { nothingBeyondItsEdge, nothingWrong, nothingWrongAtAnySize } from './axe.ts';
import { asFile, review } from './student/made.ts';
import { choose, drawnAnew, seesPass, sharedBrowser, SIZES, SOUNDING, verdictOf, visit } from './visit.ts';

const site = inject('siteUrl');
let browser: Browser;
beforeAll(async () => {
  browser = await sharedBrowser();
});

/** Tab after Tab until what has the focus says this among other things. */
async function tabTo(page: Page, name: string): Promise<void> {
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
}

describe('at every size, light and dark, axe finds nothing wrong and nothing lies beyond the edge', () => {
  it('before a report, with all that there is to choose, and with one', async () => {
    const { page, close } = await visit(browser, site);
    await page.locator('.music svg').first().waitFor();
    await page.getByText('Fingers and more').click();
    await page.getByText('Fingers written over notes').click();
    await nothingWrongAtAnySize(page);
    await page.getByRole('button', { name: 'Example' }).click();
    await verdictOf(page);
    await page.getByText('Every note, as a table').click();
    await page.getByText('Credits').click();
    await nothingWrongAtAnySize(page);
    await close();
  });

  it('at the piano', async () => {
    const { page, close } = await visit(browser, `${site}#stand`);
    await page.locator('.music svg').first().waitFor();
    await nothingWrongAtAnySize(page);
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

  it.each([
    { percent: 200, width: 640, height: 400 },
    { percent: 400, width: 320, height: 256 },
  ])('enlarged to $percent % (WCAG 2.2, 1.4.10) scrolls one way only, wherever it is', async (size) => {
    const { page, errors, close } = await visit(browser, `${site}?attempt=bundled`, size);
    await verdictOf(page);
    await page.locator('[data-spot="12"]').waitFor();
    await page.getByText('Every note, as a table').click();
    await nothingBeyondItsEdge(page, 'the report');
    for (const [link, there] of [
      ['At the piano', 'h1:has-text("At the piano")'],
      ['Keys', '.circle'],
      ['Journal', '#attempts, h1:has-text("Journal")'],
      ['For teachers', 'h1'],
    ] as const) {
      await page.getByRole('link', { name: link }).click();
      await page.locator(there).first().waitFor();
      await drawnAnew(page);
      await nothingBeyondItsEdge(page, link);
    }
    // German has the longest words.
    await choose(page.getByRole('radio', { name: 'Deutsch' }));
    for (const link of ['Am Klavier', 'Tonarten', 'Tagebuch', 'Lehrkräfte', 'Spielen']) {
      await page.getByRole('link', { name: link, exact: true }).click();
      await page.locator('nav [aria-current]', { hasText: link }).waitFor();
      await drawnAnew(page);
      await nothingBeyondItsEdge(page, link);
    }
    await choose(page.getByRole('radio', { name: 'English' }));
    // The bar below leaves most of the screen to what is read.
    await page.getByRole('link', { name: 'Play', exact: true }).click();
    await page.locator('.bar').waitFor();
    const covered = await page.evaluate(() => {
      const bar = document.querySelector('.bar')!;
      return getComputedStyle(bar).position === 'sticky' ? bar.clientHeight / innerHeight : 0;
    });
    expect(covered).toBeLessThan(1 / 3);
    expect(errors).toEqual([]);
    await close();
  });

  it('is drawn in the colours that the system forces: pearls, arches, what is chosen, the strong button, its dot', async () => {
    const { page, close } = await visit(browser, `${site}?attempt=bundled`);
    await verdictOf(page);
    await page.locator('[data-spot="12"]').waitFor();
    for (const colorScheme of ['light', 'dark'] as const) {
      await page.emulateMedia({ forcedColors: 'active', colorScheme });
      await drawnAnew(page);
      const seen = await page.evaluate(() => {
        /** what the system calls so, as this browser writes a colour */
        const systems = (name: string): string => {
          const probe = document.body.appendChild(document.createElement('i'));
          probe.style.setProperty('color', name);
          const { color } = getComputedStyle(probe);
          probe.remove();
          return color;
        };
        const styleOf = (selector: string) => getComputedStyle(document.querySelector(selector)!);
        return {
          wanted: { ink: systems('CanvasText'), paper: systems('Canvas'), accent: systems('LinkText') },
          pearl: styleOf('.pearl.struck').fill,
          arch: styleOf('.arch.late').stroke,
          button: styleOf('.bar .strong').backgroundColor,
          dot: styleOf('.bar .records').backgroundColor,
          chosen: styleOf('input:checked + span').boxShadow,
          page: styleOf('html').backgroundColor,
        };
      });
      const { ink, paper, accent } = seen.wanted;
      expect(seen).toMatchObject({ pearl: ink, arch: accent, button: ink, dot: paper, page: paper });
      expect(seen.chosen).toContain(ink);
      await nothingWrong(page, `forced colours, ${colorScheme}`);
    }
    await close();
  });

  it('is used by the keyboard alone, from the choice to hearing one spot', async () => {
    const { page, close } = await visit(browser, site);
    await tabTo(page, 'Right');
    await page.keyboard.press('ArrowLeft');
    await page.getByRole('heading', { name: /left hand/ }).waitFor();
    await tabTo(page, 'Example');
    await page.keyboard.press('Enter');
    await verdictOf(page);
    await expect.poll(() => page.evaluate(() => document.activeElement?.id)).toBe('verdict');
    await page.locator('[data-spot]').first().waitFor();
    await tabTo(page, 'Set it up');
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

  it('is used by the keyboard alone, from the first visit to a remark of a review, and back to the journal', async () => {
    const { page, errors, close } = await visit(browser, site);
    await page.locator('.music svg').first().waitFor();
    await tabTo(page, 'Journal');
    await page.keyboard.press('Enter');
    await page.getByRole('button', { name: 'Open a review' }).waitFor();
    // Listened for early: a browser that is told of it in the moment of the key opens its own window.
    const choosing = page.waitForEvent('filechooser');
    await tabTo(page, 'Open a review');
    await page.keyboard.press('Enter');
    const chooser = await choosing;
    await chooser.setFiles(await asFile(review()));
    await page.getByRole('heading', { name: 'From Ms Ley' }).waitFor();
    await tabTo(page, 'hear this spot');
    await seesPass(page, SOUNDING, () => page.keyboard.press('Enter'));
    await page.keyboard.press('Shift+Tab');
    await page.keyboard.press('Tab');
    await expect
      .poll(() => page.evaluate(() => document.activeElement?.getAttribute('aria-current')))
      .toBe('true');
    await tabTo(page, 'The journal');
    await page.keyboard.press('Enter');
    await page.locator('section[aria-labelledby="from-teacher"]').waitFor();
    expect(errors).toEqual([]);
    await close();
  });
});
