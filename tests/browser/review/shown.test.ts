import type { Browser, Page } from 'playwright-core';
import { beforeAll, describe, expect, inject, it } from 'vitest';
import { nothingBeyondItsEdge, violations } from '../axe.ts';
import { atEverySize, sharedBrowser, visit } from '../visit.ts';

let browser: Browser;
beforeAll(async () => {
  browser = await sharedBrowser();
});

interface Played {
  readonly what: string;
  readonly fromSec: number;
  readonly toSec: number | undefined;
}
const played = (page: Page): Promise<readonly Played[]> => page.evaluate<readonly Played[]>('window.played');

async function shown(query: string) {
  const there = await visit(browser, `${inject('workshopUrl')}tests/browser/review/shown.html?${query}`);
  await there.page.locator('[data-pin]').first().waitFor();
  return there;
}

describe('an attempt that was reviewed', () => {
  it('marks in the list what is touched over the string, and plays the spot', async () => {
    const { page, errors, close } = await shown('attempt=0');
    await page.locator('[data-pin="1"]').click();
    const note = page.locator('li', { hasText: 'Bring the thumb under' });
    await expect.poll(() => note.locator('button[aria-current]').count()).toBe(1);
    const [one] = await played(page);
    // From the note before to the one after the next.
    expect(one!.what).toBe('attempt');
    expect(one!.toSec! - one!.fromSec).toBeGreaterThan(0.5);
    await page.locator('[data-pin="2"]').click();
    await expect.poll(() => page.locator('button[aria-current]').innerText()).toMatch(/from A♭5 to A♭4/);
    await expect.poll(() => page.locator('rect.stretch').count()).toBe(1);
    expect((await played(page)).length).toBe(2);
    expect(errors).toEqual([]);
    await close();
  });

  it('marks over the string what is touched in the list', async () => {
    const { page, close } = await shown('attempt=0');
    await page
      .getByRole('listitem')
      .getByRole('button', { name: /^1 note 5, C5/ })
      .click();
    await expect.poll(() => page.locator('.pin.chosen').getAttribute('data-pin')).toBe('1');
    await expect.poll(() => played(page)).toHaveLength(1);
    await close();
  });

  it('is heard where it was spoken', async () => {
    const { page, close } = await shown('attempt=0');
    await page.getByRole('button', { name: /^Hear the remark.*The whole attempt/ }).click();
    await page.getByRole('button', { name: /^Stop.*The whole attempt/ }).waitFor();
    await expect.poll(() => played(page)).toEqual([{ what: 'voice', fromSec: 0 }]);
    await close();
  });

  it('has the teacher’s verdict beside the tool’s own, and the exercise that she chose', async () => {
    const first = await shown('attempt=0');
    await expect
      .poll(() => first.page.locator('article').innerText())
      .toMatch(/Every note right[\s\S]*Your teacher says: that is mistaken\. The first C was in time/);
    await first.close();
    const second = await shown('attempt=1');
    await expect
      .poll(() => second.page.locator('article').innerText())
      .toMatch(
        /took it for: F major[\s\S]*Evenfall heard: E struck instead of F[\s\S]*Your teacher says: it was right\./,
      );
    await second.close();
  });

  it('is read by keyboard alone', async () => {
    const { page, close } = await shown('attempt=0');
    await page.keyboard.press('Tab');
    await expect
      .poll(() => page.evaluate(() => document.activeElement?.getAttribute('aria-label')))
      .toBe('Remark 1: note 5, C5');
    await page.keyboard.press('Enter');
    await expect.poll(() => page.locator('.pin.chosen').getAttribute('data-pin')).toBe('1');
    await page.keyboard.press('Tab');
    await page.keyboard.press('Space');
    await expect.poll(() => page.locator('.pin.chosen').getAttribute('data-pin')).toBe('2');
    await close();
  });

  it.each([
    ['en', 0],
    ['en', 1],
    ['de', 0],
    ['de', 1],
  ] as const)('fits every size in %s, attempt %i, and axe finds nothing', async (language, attempt) => {
    const { page, errors, close } = await shown(`attempt=${attempt}&language=${language}`);
    await atEverySize(page, async (seen) => {
      await nothingBeyondItsEdge(page, seen);
      // The workshop's page has no heading of its own.
      const found = (await violations(page)).filter(
        (one) => !/^(page-has-heading-one|heading-order|html-has-lang)/.test(one),
      );
      expect(found, seen).toEqual([]);
      const low = await page.evaluate(
        () =>
          [...document.querySelectorAll('button, li button')].filter(
            (one) => one.getBoundingClientRect().height < 44,
          ).length,
      );
      expect(low, seen).toBe(0);
    });
    expect(errors).toEqual([]);
    await close();
  });
});
