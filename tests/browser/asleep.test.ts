import type { Browser, Page } from 'playwright-core';
import { afterEach, describe, expect, inject, it } from 'vitest';
import { microphoneOf } from './sounds.ts';
import { openBrowser, visit } from './visit.ts';

let browser: Browser | null = null;
afterEach(async () => {
  await browser?.close();
  browser = null;
});

/** No browser under test locks its screen: the page's sound is stopped and its document says so, as a phone does it. */
const canSleep = (page: Page): Promise<unknown> =>
  page.addInitScript(() => {
    const contexts: AudioContext[] = [];
    const Opened = window.AudioContext;
    window.AudioContext = class extends Opened {
      constructor(options?: AudioContextOptions) {
        super(options);
        contexts.push(this);
      }
    };
    let seen: DocumentVisibilityState = 'visible';
    Object.defineProperty(document, 'visibilityState', { get: () => seen });
    Object.assign(window, {
      sleep: async () => {
        seen = 'hidden';
        document.dispatchEvent(new Event('visibilitychange'));
        await Promise.all(contexts.map((context) => context.suspend()));
      },
      wake: () => {
        seen = 'visible';
        document.dispatchEvent(new Event('visibilitychange'));
      },
    });
  });
const sleep = (page: Page): Promise<void> =>
  page.evaluate(() => (window as unknown as { sleep: () => Promise<void> }).sleep());
const state = (page: Page, words: RegExp, timeout = 30_000): Promise<void> =>
  page.locator('.state', { hasText: words }).waitFor({ timeout });

describe('a screen that is locked while somebody plays', () => {
  it('stops the listening, says so, goes on when the page is seen again, and loses nothing heard before', async () => {
    browser = await openBrowser(
      await microphoneOf(
        [
          { name: 'late-thumb', atSec: 3 },
          { name: 'late-thumb', atSec: 18 },
        ],
        60,
      ),
    );
    const { page, errors, close } = await visit(browser, `${inject('siteUrl')}#stand`, { before: canSleep });
    await page.getByLabel('Key', { exact: true }).selectOption('Ab major');
    await page.getByRole('button', { name: 'Listen', exact: true }).click();
    await page.locator('circle.struck').nth(6).waitFor();
    await sleep(page);
    await state(page, /Not listening/);
    expect(await page.getByRole('alert').innerText()).toMatch(/screen was locked.*Touch the page to go on/s);
    const before = await page.locator('circle.struck').count();
    expect(before).toBeGreaterThan(6);
    await page.evaluate(() => (window as unknown as { wake: () => void }).wake());
    await page.getByText('The microphone is back; listening goes on.').waitFor();
    await state(page, /Attempt 1\. Ready for the next/);
    expect(await page.locator('#verdict').innerText()).not.toBe('');
    await state(page, /Attempt 2\. Ready for the next/);
    expect(await page.locator('#verdict').innerText()).toMatch(/thumb/);
    expect(errors).toEqual([]);
    await close();
  });

  it('goes on by a touch where the browser does not let the page go on by itself', async () => {
    browser = await openBrowser(await microphoneOf([{ name: 'late-thumb', atSec: 8 }], 40));
    const { page, errors, close } = await visit(browser, `${inject('siteUrl')}#stand`, { before: canSleep });
    await page.getByLabel('Key', { exact: true }).selectOption('Ab major');
    await page.getByRole('button', { name: 'Listen', exact: true }).click();
    await state(page, /Waiting for your first note/);
    await sleep(page);
    await state(page, /Not listening/);
    await page.locator('.state').click();
    await state(page, /Waiting for your first note|Listening$/);
    await state(page, /Attempt 1\. Ready for the next/);
    expect(errors).toEqual([]);
    await close();
  });
});
