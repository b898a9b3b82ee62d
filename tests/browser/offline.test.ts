import { readFileSync, writeFileSync } from 'node:fs';
import { join, resolve } from 'node:path';
import type { Browser, Page } from 'playwright-core';
import { afterAll, afterEach, beforeAll, beforeEach, describe, expect, it } from 'vitest';
import { openOwnSite } from './own-site.ts';
import { microphoneOf } from './sounds.ts';
import type { ServedFolder } from './static.ts';
import { drawnAnew, openBrowser, verdictOf, visit } from './visit.ts';

/** Puts a newer version there: another title, and the service worker that goes with it. */
function renew(folder: string): void {
  const page = join(folder, 'index.html');
  writeFileSync(page, readFileSync(page, 'utf8').replace('<title>Evenfall', '<title>Evenfall, newer'));
  const keeper = join(folder, 'offline.js');
  writeFileSync(keeper, readFileSync(keeper, 'utf8').replace(/VERSION = '\w+'/, "VERSION = 'newer'"));
}

const kept = (page: Page): Promise<boolean> =>
  page.evaluate(async () => (await navigator.serviceWorker.getRegistration())?.active?.state === 'activated');

/** Leaves the page: what it was still making ready in the background does not run into the network's end. */
const leave = (page: Page): Promise<unknown> => page.goto('about:blank');

/** The page has asked whether there is a newer version, none waits or is on its way, and what it would say of it is drawn. */
async function upToDate(page: Page): Promise<void> {
  await page.waitForFunction(async () => {
    const registration = await navigator.serviceWorker.ready;
    await registration.update();
    const { active, installing, waiting } = registration;
    return active?.state === 'activated' && installing === null && waiting === null;
  });
  await drawnAnew(page);
}

let browser: Browser;
let site: ServedFolder;
let url: string;
beforeAll(async () => {
  browser = await openBrowser(await microphoneOf([{ name: 'late-thumb', atSec: 3 }], 30));
});
afterAll(() => browser.close());
beforeEach(async () => {
  site = await openOwnSite();
  ({ url } = site);
});
afterEach(() => site.close());

describe('without a network', () => {
  it('the page, once loaded, opens anew, tells the example, draws music, and listens at the piano', async () => {
    const { page, errors, strayRequests, close } = await visit(browser, url, { keepsFiles: true });
    await expect.poll(() => kept(page), { message: 'its files are kept' }).toBe(true);
    await leave(page);
    site.close();
    await page.context().setOffline(true);
    await page.goto(url);
    await page.getByRole('button', { name: 'Example' }).click();
    await expect.poll(() => verdictOf(page)).toMatch(/The crossing comes late/);
    await page.locator('.music svg').first().waitFor();
    await page.getByRole('link', { name: 'At the piano' }).click();
    await page.getByRole('button', { name: 'Listen', exact: true }).click();
    await page.locator('.state', { hasText: /Attempt 1/ }).waitFor();
    expect(errors).toEqual([]);
    expect(strayRequests).toEqual([]);
    await close();
  });

  it('every kind of recording is still read', async () => {
    const { page, errors, close } = await visit(browser, url, { keepsFiles: true });
    await expect.poll(() => kept(page), { message: 'its files are kept' }).toBe(true);
    await leave(page);
    await page.context().setOffline(true);
    await page.goto(url);
    const samples = resolve(import.meta.dirname, '../io/decode/samples');
    for (const name of ['flac-s16-stereo.flac', 'mp3-stereo.mp3', 'opus-stereo.webm', 'vorbis-stereo.ogg']) {
      await page.locator('input[type=file]').setInputFiles(join(samples, name));
      await page.getByRole('heading', { name: 'No playing was found in this recording' }).waitFor();
      await page.getByRole('button', { name: 'Example' }).click();
      await verdictOf(page);
    }
    expect(errors).toEqual([]);
    await close();
  });
});

describe('a newer version', () => {
  it('waits until it is asked for, then takes over', async () => {
    const { page, errors, close } = await visit(browser, url, { keepsFiles: true });
    await expect.poll(() => kept(page), { message: 'its files are kept' }).toBe(true);
    renew(site.folder);
    await page.reload();
    const notice = page.getByText('A new version is ready.');
    await notice.waitFor();
    await expect.poll(() => page.title()).toBe('Play · Evenfall');
    await page.reload();
    await notice.waitFor();
    await expect.poll(() => page.title()).toBe('Play · Evenfall');
    await page.getByRole('button', { name: 'Use it now' }).click();
    await expect.poll(() => page.title(), { message: 'title of the page' }).toBe('Play · Evenfall, newer');
    await upToDate(page);
    await expect.poll(() => notice.count()).toBe(0);
    const shelves = await page.evaluate(() => caches.keys());
    expect(shelves).toEqual(['evenfall-newer']);
    expect(errors).toEqual([]);
    await close();
  });

  it('is not spoken of at the first visit', async () => {
    const { page, close } = await visit(browser, url, { keepsFiles: true });
    await expect.poll(() => kept(page), { message: 'its files are kept' }).toBe(true);
    await upToDate(page);
    await expect.poll(() => page.getByText('A new version is ready.').count()).toBe(0);
    await close();
  });
});

describe('as an app', () => {
  it('the page has all that an installation wants', async () => {
    const { page, close } = await visit(browser, url, { keepsFiles: true });
    const session = await page.context().newCDPSession(page);
    const { url: manifestUrl, errors } = await session.send('Page.getAppManifest');
    expect(manifestUrl).toBe(`${url}manifest.webmanifest`);
    expect(errors).toEqual([]);
    await expect.poll(() => kept(page), { message: 'its files are kept' }).toBe(true);
    const missing = await session.send('Page.getInstallabilityErrors');
    // A window of a test browser is a private one, in which nothing can be installed; nothing else may be in the way.
    const others = missing.installabilityErrors.filter(({ errorId }) => errorId !== 'in-incognito');
    expect(others).toEqual([]);
    const manifest = (await (await page.request.get(manifestUrl)).json()) as {
      readonly icons: readonly { readonly src: string; readonly sizes: string; readonly type: string }[];
    };
    for (const { src, sizes, type } of manifest.icons) {
      const answer = await page.request.get(new URL(src, url).href);
      expect(answer.ok()).toBe(true);
      if (type !== 'image/png') continue;
      const bytes = await answer.body();
      // PNG (ISO/IEC 15948): width and height stand in the first chunk, bytes 16 to 23.
      expect(`${bytes.readUInt32BE(16)}x${bytes.readUInt32BE(20)}`).toBe(sizes);
    }
    await close();
  });

  it('the policy of the page lets nothing in or out but its own', async () => {
    const { page, errors, close } = await visit(browser, url, { keepsFiles: true });
    const refused = await page.evaluate(async () => {
      const blocked: string[] = [];
      document.addEventListener('securitypolicyviolation', ({ effectiveDirective }) =>
        blocked.push(effectiveDirective),
      );
      await fetch('https://example.invalid/').catch(() => undefined);
      const script = document.createElement('script');
      script.textContent = 'window.intruder = true';
      document.body.append(script);
      const image = document.createElement('img');
      image.src = 'https://example.invalid/dot.png';
      document.body.append(image);
      const frame = document.createElement('iframe');
      frame.src = 'https://example.invalid/';
      document.body.append(frame);
      // Each of the four is told by an event of its own.
      while (blocked.length < 4) await new Promise((resolve) => requestAnimationFrame(resolve));
      return { blocked: blocked.sort(), intruded: 'intruder' in window };
    });
    expect(refused).toEqual({
      blocked: ['connect-src', 'frame-src', 'img-src', 'script-src-elem'],
      intruded: false,
    });
    expect(errors.length).toBeGreaterThan(0);
    await close();
  });
});
