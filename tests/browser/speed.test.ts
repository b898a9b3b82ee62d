import { mkdtempSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, expect, inject, it } from 'vitest';
import { encodeWav } from '../../src/io/exchange/index.ts';
import { fixtureSound, lengthened } from './sounds.ts';
import { mainThreadTasks } from './tasks.ts';
import { openBrowser, verdictOf, visit } from './visit.ts';

/** The project's own bounds: what a hand notices (RAIL's 50 ms, web.dev) and "within a second of the last note". */
const LONGEST_TASK_MS = 50;
const REPORT_MS = 1000;

const MOST_TURNS = 6;

/** In the page: from the file's being chosen to the frame in which its report stands, ms. */
function openedToTold(): Promise<number> {
  return new Promise((resolve) => {
    const opened = (): void => {
      const beganMs = performance.now();
      let listening = false;
      const watch = (): void => {
        const busy = document.querySelector('progress') !== null;
        listening ||= busy;
        if (listening && !busy) requestAnimationFrame(() => resolve(performance.now() - beganMs));
        else requestAnimationFrame(watch);
      };
      watch();
    };
    document.addEventListener('change', opened, { once: true, capture: true });
  });
}

const site = inject('siteUrl');
let browser: Browser;
beforeAll(async () => {
  browser = await openBrowser();
});
afterAll(() => browser.close());

it('tells a recording of 20 s within a second and never holds the page up for 50 ms', async () => {
  const { channels, sampleRateHz } = await fixtureSound('missed-and-repeated');
  const path = join(mkdtempSync(join(tmpdir(), 'evenfall-')), 'long.wav');
  const sound = lengthened(channels[0]!, sampleRateHz, 20);
  writeFileSync(path, new Uint8Array(encodeWav({ channels: [sound], sampleRateHz })));
  const { page, close } = await visit(browser, site);
  await page.locator('.music svg').first().waitFor();
  await page.waitForTimeout(4000);
  const toldMs: number[] = [];
  const held = await mainThreadTasks(browser, async () => {
    while (toldMs.length < MOST_TURNS && Math.min(...toldMs) > REPORT_MS) {
      const told = page.evaluate(openedToTold);
      await page.locator('input[type=file]').setInputFiles(path);
      toldMs.push(Math.round(await told));
      await verdictOf(page);
      await page.waitForTimeout(500);
    }
  });
  const longest = held[0] ?? { wallMs: 0, workMs: 0 };
  console.log(
    `20 s recording opened → report: ${toldMs.join(', ')} ms; longest task on the main thread ` +
      `${longest.workMs.toFixed(0)} ms of work (${longest.wallMs.toFixed(0)} ms by the clock)`,
  );
  expect(held.length).toBeGreaterThan(20);
  expect(longest.workMs).toBeLessThanOrEqual(LONGEST_TASK_MS);
  // The best of a few: the others measure what else the machine does.
  expect(Math.min(...toldMs)).toBeLessThanOrEqual(REPORT_MS);
  await close();
});
