import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, expect, inject, it } from 'vitest';
import { mainThreadTasks } from '../tasks.ts';
import { openBrowser } from '../visit.ts';
import { ATTEMPTS, seedJournal } from './five-years.ts';

/** The project's own bounds. */
const OPEN_MS = 300;
const FRAME_MS = 1000 / 60;

/** Opened cold so many times, for a median; and again up to so many until one is quick enough. */
const LEAST_TURNS = 7;
const MOST_TURNS = 12;

const site = inject('siteUrl');
let browser: Browser;
beforeAll(async () => {
  browser = await openBrowser();
});
afterAll(() => browser.close());

/** In the page: from asking for the journal to the frame in which its list stands, ms; nothing of it is loaded before. */
function asked(): Promise<number> {
  return new Promise((resolve) => {
    const beganMs = performance.now();
    const watch = (): void => {
      if (document.querySelector('[data-row]') !== null)
        requestAnimationFrame(() => resolve(performance.now() - beganMs));
      else requestAnimationFrame(watch);
    };
    location.hash = 'journal';
    watch();
  });
}

/** In the page: scrolls the list from its top for two seconds, 40 rows a second at first and ever faster; ms from frame to frame. */
function scrolled(): Promise<number[]> {
  return new Promise((resolve) => {
    const scroller = document.querySelector('.scroller')!;
    const frames: number[] = [];
    let lastMs = performance.now();
    const beganMs = lastMs;
    const step = (): void => {
      const nowMs = performance.now();
      frames.push(nowMs - lastMs);
      lastMs = nowMs;
      scroller.scrollTop += 50 * (1 + (nowMs - beganMs) / 200);
      if (nowMs - beganMs < 2000) requestAnimationFrame(step);
      else resolve(frames.slice(1));
    };
    requestAnimationFrame(step);
  });
}

const shareOf = (values: readonly number[], share: number): number =>
  [...values].sort((a, b) => a - b)[Math.floor(share * (values.length - 1))]!;

it(`opens five years of practice within ${OPEN_MS} ms, and scrolls through them frame by frame`, async () => {
  const context = await browser.newContext({ viewport: { width: 1024, height: 768 } });
  const freshPage = async (): Promise<Page> => {
    const page = await context.newPage();
    await page.goto(site);
    await page.locator('#exercise').waitFor();
    return page;
  };
  const first = await freshPage();
  await seedJournal(first, { attempts: ATTEMPTS, aDay: 20, reports: true });
  await first.close();

  const openedMs: number[] = [];
  let page = await freshPage();
  for (
    let turn = 0;
    turn < LEAST_TURNS || (turn < MOST_TURNS && Math.min(...openedMs) > OPEN_MS);
    turn += 1
  ) {
    if (turn > 0) {
      await page.close();
      page = await freshPage();
    }
    openedMs.push(Math.round(await page.evaluate(asked)));
  }
  await page.getByText('36,500 attempts').first().waitFor();
  await page.waitForTimeout(3000);

  let best: { frames: readonly number[]; workMs: readonly number[] } | null = null;
  for (
    let turn = 0;
    turn < MOST_TURNS && (best === null || shareOf(best.frames, 0.95) > 1.5 * FRAME_MS);
    turn += 1
  ) {
    await page.evaluate(() => (document.querySelector('.scroller')!.scrollTop = 0));
    let frames: number[] = [];
    const tasks = await mainThreadTasks(browser, async () => {
      frames = await page.evaluate(scrolled);
    });
    const workMs = tasks.map((task) => task.workMs);
    if (best === null || shareOf(frames, 0.95) < shareOf(best.frames, 0.95)) best = { frames, workMs };
  }
  const { frames, workMs } = best!;
  console.log(
    `five years (${ATTEMPTS} attempts): opened in ${openedMs.join(', ')} ms (median ${shareOf(openedMs, 0.5)}); scrolling ${frames.length} frames in 2 s, ` +
      `${shareOf(frames, 0.5).toFixed(1)} ms a frame (95 %: ${shareOf(frames, 0.95).toFixed(1)} ms), ` +
      `longest work on the main thread ${workMs[0]!.toFixed(1)} ms`,
  );
  expect(await page.locator('[data-row]').count()).toBeLessThan(40);
  // The best of a few: the others measure what else the machine does.
  expect(Math.min(...openedMs)).toBeLessThanOrEqual(OPEN_MS);
  expect(shareOf(frames, 0.5)).toBeLessThanOrEqual(1.1 * FRAME_MS);
  expect(shareOf(frames, 0.95)).toBeLessThanOrEqual(1.5 * FRAME_MS);
  // No piece of work takes up a whole frame.
  expect(workMs[0]!).toBeLessThanOrEqual(FRAME_MS);
  await context.close();
});
