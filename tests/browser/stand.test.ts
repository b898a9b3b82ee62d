import type { Browser, Page } from 'playwright-core';
import { afterEach, describe, expect, inject, it } from 'vitest';
import { violations } from './axe.ts';
import { microphoneOf } from './sounds.ts';
import { openBrowser, visit } from './visit.ts';

const site = `${inject('siteUrl')}#stand`;
let browser: Browser | null = null;
afterEach(async () => {
  await browser?.close();
  browser = null;
});

const state = (page: Page, words: RegExp, timeout = 30_000): Promise<void> =>
  page.locator('.state', { hasText: words }).waitFor({ timeout });
const listen = (page: Page): Promise<void> =>
  page.getByRole('button', { name: 'Listen', exact: true }).click();

/** A machine that is busy with other things loses sound, and the page says so; then the next attempt is waited for. */
const ROUNDS = { whole: 3, played: 6 } as const;
const soundWasLost = async (page: Page): Promise<boolean> =>
  (await page.getByRole('alert').allInnerTexts()).some((text) => /sound were lost/.test(text));

describe('at the piano', () => {
  it('hears three attempts in a row after one touch, draws their pearls, and tells each', async () => {
    const path = await microphoneOf(
      Array.from({ length: ROUNDS.played }, (_, round) => ({ name: 'late-thumb', atSec: 4 + 12 * round })),
      90,
    );
    browser = await openBrowser(path);
    const { page, errors, strayRequests, close } = await visit(browser, site);
    await page.getByLabel('Key', { exact: true }).selectOption('Ab major');
    await page.getByText('The microphone is needed to hear when you begin').waitFor();
    await listen(page);
    await state(page, /Waiting for your first note/);
    expect(await violations(page)).toEqual([]);
    let whole = 0;
    for (let round = 1; round <= ROUNDS.played && whole < ROUNDS.whole; round++) {
      await state(page, /^Listening$/);
      await page.locator('circle.struck').nth(11).waitFor();
      await state(page, new RegExp(`Attempt ${round}\\. Ready for the next`));
      if (await soundWasLost(page)) continue;
      whole += 1;
      expect(await page.getByRole('alert').allInnerTexts()).toEqual([]);
      expect(await page.locator('#verdict').innerText()).toMatch(/thumb/);
      expect(await page.locator('.next').innerText()).toMatch(/^Next:/);
    }
    expect(whole).toBe(ROUNDS.whole);
    expect(await violations(page)).toEqual([]);
    await page.keyboard.press('Escape');
    await page.locator('[data-spot="12"]').waitFor();
    expect(errors).toEqual([]);
    expect(strayRequests).toEqual([]);
    await close();
  });

  it('that is refused says so plainly, with the way out', async () => {
    browser = await openBrowser('refused');
    const { page, errors, close } = await visit(browser, site);
    await listen(page);
    expect(await page.getByRole('alert').innerText()).toMatch(/not allowed.*Allow it for this page/s);
    await page.getByRole('button', { name: 'Listen', exact: true }).waitFor();
    expect(errors).toEqual([]);
    await close();
  });

  it('without a microphone says that there is none', async () => {
    browser = await openBrowser();
    const { page, close } = await visit(browser, site);
    await listen(page);
    expect(await page.getByRole('alert').innerText()).toMatch(/No microphone was found/);
    await close();
  });

  it('with processing that cannot be switched off flags the attempt', async () => {
    const path = await microphoneOf([{ name: 'late-thumb', atSec: 3 }], 40);
    browser = await openBrowser(path);
    const { page, close } = await visit(browser, site, {
      before: (fresh) =>
        fresh.addInitScript(() => {
          const settings = MediaStreamTrack.prototype.getSettings;
          MediaStreamTrack.prototype.getSettings = function () {
            return { ...settings.call(this), noiseSuppression: true };
          };
        }),
    });
    await page.getByLabel('Key', { exact: true }).selectOption('Ab major');
    await listen(page);
    await state(page, /Attempt 1/);
    await page.getByRole('button', { name: 'Stop' }).click();
    await page.getByText('The device recorded with noise suppression on').waitFor();
    await close();
  });

  it('whose microphone is unplugged in the middle tells what was heard, and goes on when it is back', async () => {
    const path = await microphoneOf([{ name: 'late-thumb', atSec: 3 }], 60);
    browser = await openBrowser(path);
    const { page, errors, close } = await visit(browser, site, {
      before: (fresh) =>
        fresh.addInitScript(() => {
          const ask = navigator.mediaDevices.getUserMedia.bind(navigator.mediaDevices);
          navigator.mediaDevices.getUserMedia = async (constraints) => {
            const stream = await ask(constraints);
            (window as unknown as { track: MediaStreamTrack }).track = stream.getAudioTracks()[0]!;
            return stream;
          };
        }),
    });
    await page.getByLabel('Key', { exact: true }).selectOption('Ab major');
    await listen(page);
    await page.locator('circle.struck').nth(6).waitFor();
    // As the system does it when a plug is pulled (Media Capture and Streams, W3C): the track ends and says so.
    await page.evaluate(() => {
      const { track } = window as unknown as { track: MediaStreamTrack };
      track.stop();
      track.dispatchEvent(new Event('ended'));
    });
    await state(page, /Not listening/);
    expect(await page.getByRole('alert').innerText()).toMatch(/microphone is gone/);
    await page.locator('#verdict').waitFor();
    expect(await page.locator('#verdict').innerText()).not.toBe('');
    await page.evaluate(() => navigator.mediaDevices.dispatchEvent(new Event('devicechange')));
    await state(page, /Attempt 1\. Ready for the next/);
    expect(errors).toEqual([]);
    await close();
  });

  it('checks the room by silence and notes, says how the place is, and remembers the piano', async () => {
    // Silence, then three notes of an arpeggio that is played too fast for the check: it asks anew for each.
    const path = await microphoneOf(
      [
        { name: 'late-thumb', atSec: 5 },
        { name: 'left-hand', atSec: 12 },
        { name: 'clean-scale', atSec: 19 },
      ],
      60,
    );
    browser = await openBrowser(path);
    const { page, errors, close } = await visit(browser, site);
    await page.getByRole('button', { name: 'Check the room' }).click();
    await page.getByText('Be quite still').waitFor();
    await page.getByText('Play one low note').waitFor();
    await page.getByRole('button', { name: 'Done' }).waitFor({ timeout: 45_000 });
    expect(await page.locator('.title').innerText()).toMatch(/good place|can be better/);
    expect(await violations(page)).toEqual([]);
    await page.getByRole('button', { name: 'Done' }).click();
    await page.getByText(/The piano stands at A = /).waitFor();
    await page.reload();
    await page.getByText(/The piano stands at A = /).waitFor();
    await page.getByRole('button', { name: 'Another piano' }).click();
    expect(await page.getByText(/The piano stands at A = /).count()).toBe(0);
    expect(errors).toEqual([]);
    await close();
  });

  it('reloaded in the middle of an attempt loses nothing of it', async () => {
    const path = await microphoneOf([{ name: 'late-thumb', atSec: 3 }], 60);
    browser = await openBrowser(path);
    const { page, errors, close } = await visit(browser, site);
    await page.getByLabel('Key', { exact: true }).selectOption('Ab major');
    await listen(page);
    const heard = page.locator('circle.struck');
    await heard.nth(8).waitFor();
    const before = await heard.count();
    await page.reload();
    await page.locator('article #verdict').waitFor();
    await page.getByText('The page was closed during this attempt').waitFor();
    expect(await page.locator('.where').innerText()).toMatch(/A♭ major/);
    await page.locator('[data-spot]').first().waitFor();
    await page.getByText('Every note, as a table').click();
    const rows = page.locator('tbody tr').filter({ hasNotText: 'missed' });
    await rows.nth(before - 1).waitFor();
    // It is told once: another page finds nothing left behind.
    await page.reload();
    await page.getByRole('heading', { name: 'At the piano' }).waitFor();
    await page.waitForTimeout(1500);
    expect(await page.locator('article').count()).toBe(0);
    expect(errors).toEqual([]);
    await close();
  });
});
