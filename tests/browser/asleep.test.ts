import type { Page } from 'playwright-core';
import { describe, inject } from 'vitest';
import { followSound, hearWhole, it, play } from './hearing.ts';
import { microphoneOf } from './sounds.ts';
import { verdictOf, visit } from './visit.ts';

/** No browser under test locks its screen: the page's sound is stopped and its document says so, as a phone does it. */
async function canSleep(page: Page): Promise<void> {
  await followSound(page);
  await page.addInitScript(() => {
    let seen: DocumentVisibilityState = 'visible';
    Object.defineProperty(document, 'visibilityState', { get: () => seen });
    const { soundings } = window as unknown as { soundings: readonly AudioContext[] };
    Object.assign(window, {
      sleep: async () => {
        seen = 'hidden';
        document.dispatchEvent(new Event('visibilitychange'));
        await Promise.all(soundings.map((one) => one.suspend()));
        (window as unknown as { hush: () => void }).hush();
      },
      wake: () => {
        seen = 'visible';
        document.dispatchEvent(new Event('visibilitychange'));
      },
    });
  });
}
const sleep = (page: Page): Promise<void> =>
  page.evaluate(() => (window as unknown as { sleep: () => Promise<void> }).sleep());
const state = (page: Page, words: RegExp): Promise<void> =>
  page.locator('.state', { hasText: words }).waitFor();

// Side by side: most of their time they wait for sound to be over.
describe.concurrent('a screen that is locked while somebody plays', () => {
  it('stops the listening, says so, goes on when the page is seen again, and loses nothing heard before', async ({
    hearing,
    expect,
  }) => {
    // The first attempt breaks off, and the rest is waited for: a slow machine too is still in the middle of it.
    const path = await microphoneOf([{ name: 'late-thumb', atSec: 0 }], 4);
    const whole = await microphoneOf([{ name: 'late-thumb', atSec: 0 }], 7);
    const browser = await hearing(path);
    const { page, errors, close } = await visit(browser, `${inject('siteUrl')}#stand`, {
      before: async (fresh) => {
        await canSleep(fresh);
        await hearWhole(fresh, path, true);
      },
    });
    await page.getByLabel('Key', { exact: true }).selectOption('Ab major');
    await page.getByRole('button', { name: 'Listen', exact: true }).click();
    await state(page, /Waiting for your first note/);
    await play(page);
    await page.locator('circle.struck').nth(6).waitFor();
    await sleep(page);
    await state(page, /Not listening/);
    await expect
      .poll(() => page.getByRole('alert').innerText())
      .toMatch(/screen was locked.*Touch the page to go on/s);
    const before = await page.locator('circle.struck').count();
    expect(before).toBeGreaterThan(6);
    await page.evaluate(() => (window as unknown as { wake: () => void }).wake());
    await page.getByText('The microphone is back; listening goes on.').waitFor();
    await state(page, /Attempt 1\. Ready for the next/);
    await expect.poll(() => page.locator('#verdict').innerText()).not.toBe('');
    await play(page, whole);
    await state(page, /Attempt 2\. Ready for the next/);
    await expect
      .poll(() => verdictOf(page))
      .toMatch(/late going up to C|come late, most C going up|C going up in the (lower|upper) octave/);
    expect(errors).toEqual([]);
    await close();
  });

  it('goes on by a touch where the browser does not let the page go on by itself', async ({
    hearing,
    expect,
  }) => {
    const path = await microphoneOf([{ name: 'late-thumb', atSec: 0 }], 7);
    const browser = await hearing(path);
    const { page, errors, close } = await visit(browser, `${inject('siteUrl')}#stand`, {
      before: async (fresh) => {
        await canSleep(fresh);
        await hearWhole(fresh, path, true);
      },
    });
    await page.getByLabel('Key', { exact: true }).selectOption('Ab major');
    await page.getByRole('button', { name: 'Listen', exact: true }).click();
    await state(page, /Waiting for your first note/);
    await sleep(page);
    await state(page, /Not listening/);
    await page.locator('.state').click();
    await state(page, /Waiting for your first note/);
    await play(page);
    await state(page, /Attempt 1\. Ready for the next/);
    expect(errors).toEqual([]);
    await close();
  });
});
