import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, inject, it } from 'vitest';
import { encodeWav } from '../../../src/io/exchange/index.ts';
import type { Review } from '../../../src/io/review/index.ts';
import { reviewPage } from '../../../src/ui/review/page/in-node.ts';
import { madeUp } from '../../io/review/made-up.ts';
import { violations } from '../axe.ts';
import { fixtureSound } from '../sounds.ts';
import { sharedBrowser, SIZES, visit } from '../visit.ts';

let browser: Browser;
let folder: string;
beforeAll(async () => {
  browser = await sharedBrowser();
  folder = mkdtempSync(join(tmpdir(), 'evenfall-'));
});
afterAll(async () => {
  rmSync(folder, { recursive: true });
});

/** A page from a file, as a student opens it who has no network; and all that it asked for or complained of. */
async function opened(
  html: string,
  size: { width: number; height: number },
  colorScheme: 'light' | 'dark' = 'light',
) {
  const file = join(folder, 'review.html');
  writeFileSync(file, html);
  const context = await browser.newContext({ viewport: size, colorScheme, offline: true });
  const page = await context.newPage();
  const asked: string[] = [];
  const said: string[] = [];
  page.on('request', (request) => asked.push(request.url().slice(0, 60)));
  page.on('console', (message) => said.push(message.text()));
  page.on('pageerror', (error) => said.push(error.message));
  page.on('dialog', (dialog) => said.push(dialog.message()));
  await page.goto(pathToFileURL(file).href);
  return { page, asked, said, close: () => context.close() };
}
const beyondEdge = (page: Page): Promise<number> =>
  page.evaluate(() => document.documentElement.scrollWidth - innerWidth);

describe('a review as one page, opened without a network', () => {
  it.each(
    SIZES.flatMap((size) => (['light', 'dark'] as const).map((scheme) => [size.name, scheme, size] as const)),
  )('reads at the size of a %s, %s', async (_, scheme, size) => {
    const { page, asked, said, close } = await opened(reviewPage(madeUp(), 'en'), size, scheme);
    expect(await beyondEdge(page)).toBeLessThanOrEqual(0);
    await expect.poll(() => page.locator('.string:visible').count()).toBe(2);
    expect(asked.filter((url) => !/^(file|data):/.test(url))).toEqual([]);
    expect(said).toEqual([]);
    const sizes = await page.evaluate(() =>
      [...document.querySelectorAll('p:not(.on-paper-only), dt, dd, li')].map((element) =>
        Number.parseFloat(getComputedStyle(element).fontSize),
      ),
    );
    expect(Math.min(...sizes)).toBeGreaterThanOrEqual(15);
    await close();
  });

  it('lets axe find nothing, and plays its sounds', async () => {
    const { channels, sampleRateHz } = await fixtureSound('clean-scale');
    const sound = {
      bytes: new Uint8Array(encodeWav({ channels, sampleRateHz })),
      mime: 'audio/wav' as const,
    };
    const [first, second] = [madeUp().attempts[0]!, madeUp().attempts[1]!];
    const { page, close } = await opened(
      reviewPage({ ...madeUp(), attempts: [{ ...first, sound }, second] }, 'en'),
      SIZES[3],
    );
    // axe itself is a script: it is let in for the test alone.
    const allowed = await browser.newContext({ bypassCSP: true, viewport: SIZES[3] });
    const beside = await allowed.newPage();
    await beside.goto(page.url());
    await expect.poll(() => violations(beside)).toEqual([]);
    const seconds = await page
      .locator('audio')
      .first()
      .evaluate(
        (audio: HTMLAudioElement) =>
          new Promise<number>((resolve, reject) => {
            const done = (): void => resolve(audio.duration);
            if (audio.readyState > 0) done();
            audio.addEventListener('loadedmetadata', done);
            audio.addEventListener('error', () => reject(new Error('The sound does not open.')));
          }),
      );
    expect(seconds).toBeCloseTo(channels[0]!.length / sampleRateHz, 1);
    await allowed.close();
    await close();
  });

  it('runs no script and asks for nothing, whatever a review says', async () => {
    const tricks = [
      '<script>window.harmed=1</script>',
      '<img src="https://example.invalid/x.png" onerror="window.harmed=1">',
      '"><svg onload="window.harmed=1"><style>@import "https://example.invalid/x.css"</style>',
      '</style></title><script src="https://example.invalid/x.js"></script>',
      '<iframe srcdoc="<script>parent.harmed=1</script>"></iframe>',
      '<a href="javascript:window.harmed=1" autofocus onfocus="window.harmed=1">here</a>',
      '<audio data-sound="0" autoplay onplay="window.harmed=1">',
      '<meta http-equiv="refresh" content="0;url=https://example.invalid/">',
    ].join(' ');
    const base = madeUp();
    const hostile: Review = {
      ...base,
      student: tricks,
      teacher: tricks,
      words: tricks,
      attempts: base.attempts.map((attempt) => ({
        ...attempt,
        name: tricks,
        report: { ...attempt.report, words: { ...attempt.report.words, verdict: tricks, nextStep: tricks } },
        remarks: attempt.remarks.map((remark) => ({ ...remark, text: tricks })),
        corrections: attempt.corrections.map((one) => ({ ...one, why: tricks })),
      })),
      assignment: base.assignment.map((one) => ({ ...one, note: tricks })),
    };
    const { page, asked, said, close } = await opened(reviewPage(hostile, 'en'), SIZES[0]);
    await page.waitForLoadState('networkidle');
    const found = await page.evaluate(() => ({
      harmed: 'harmed' in window,
      made: document.querySelectorAll(
        'script, img, iframe, a, .review style, [onload], [onerror], [autofocus]',
      ).length,
      shown: document.body.innerText.split('<script>window.harmed=1</script>').length - 1,
    }));
    expect(found).toMatchObject({ harmed: false, made: 0 });
    expect(found.shown).toBeGreaterThan(8);
    expect(asked.filter((url) => !/^(file|data):/.test(url))).toEqual([]);
    expect(said).toEqual([]);
    expect(await beyondEdge(page)).toBeLessThanOrEqual(0);
    await close();
  });

  it('keeps a script out even if one came in', async () => {
    const html = reviewPage(madeUp(), 'en').replace(
      '</main>',
      '</main><script>window.harmed=1</script><p onclick="window.harmed=1" id="trap">x</p>',
    );
    const { page, said, close } = await opened(html, SIZES[3]);
    await page.locator('#trap').click();
    await expect.poll(() => page.evaluate(() => 'harmed' in window)).toBe(false);
    expect(said.join(' ')).toMatch(/Content Security Policy/);
    await close();
  });

  it('is printed in grey on A4 and Letter, a sheet an attempt', async () => {
    const { page, close } = await opened(reviewPage(madeUp(), 'en'), SIZES[3], 'dark');
    for (const format of ['A4', 'Letter'] as const) {
      const pdf = (await page.pdf({ format })).toString('latin1');
      // The first sheet has the words and what to practise, then one for each of two attempts.
      expect(pdf.match(/\/Type \/Page\b(?!s)/g)).toHaveLength(3);
    }
    await page.emulateMedia({ media: 'print' });
    const looks = await page.evaluate(() => ({
      paper: getComputedStyle(document.body).backgroundColor,
      ink: getComputedStyle(document.body).color,
      sounds: [...document.querySelectorAll('audio')].filter((audio) => audio.checkVisibility()).length,
      strings: [...document.querySelectorAll('div.string')].filter((string) => string.checkVisibility())
        .length,
    }));
    expect(looks).toEqual({ paper: 'rgb(255, 255, 255)', ink: 'rgb(0, 0, 0)', sounds: 0, strings: 2 });
    await close();
  });

  it('is the same page when a browser writes it', async () => {
    const there = await visit(browser, `${inject('workshopUrl')}tests/browser/review/shown.html`);
    await there.page.waitForFunction(() => 'pageOf' in window);
    const written = await there.page.evaluate<string>('window.pageOf()');
    expect(there.errors).toEqual([]);
    expect(there.strayRequests).toEqual([]);
    const [a, b] = [await opened(written, SIZES[3]), await opened(reviewPage(madeUp(), 'en'), SIZES[3])];
    const seen = (page: Page) =>
      page.evaluate(() => ({
        text: document.body.innerText,
        tags: [...document.querySelectorAll('*')].map(({ tagName }) => tagName).join(' '),
        sounds: [...document.querySelectorAll('audio')].map((audio) => audio.src),
        policy: document.querySelector('meta[http-equiv]')?.getAttribute('content'),
      }));
    expect(await seen(a.page)).toEqual(await seen(b.page));
    expect(written).not.toMatch(/<script|<!--/);
    await Promise.all([a.close(), b.close(), there.close()]);
  });
});
