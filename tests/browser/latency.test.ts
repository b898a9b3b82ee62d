import type { Browser } from 'playwright-core';
import { afterEach, expect, inject, it } from 'vitest';
import { microphoneOf } from './sounds.ts';
import { spyOnListening, whatWasSpied } from './spy.ts';
import { openBrowser, visit } from './visit.ts';

/** Issue 4: from the hammer to its pearl, without what the audio stack adds; and from the end of an attempt to its verdict. */
const PEARL_MS = { median: 90, most: 150 } as const;
const VERDICT_MS = 1000;

const ATTEMPTS = 3;

let browser: Browser | null = null;
afterEach(async () => {
  await browser?.close();
  browser = null;
});

/** A machine that is busy with other things loses sound, and then notes come twice; then it is played again. */
const PLAYED_AGAIN = { retry: 2 };

it(
  'a pearl stands within 90 ms of its hammer (median; 95 in 100 within 150 ms), the verdict within a second',
  PLAYED_AGAIN,
  async () => {
    const attempts = Array.from({ length: ATTEMPTS }, (_, index) => ({
      name: 'late-thumb',
      atSec: 3 + index * 11,
    }));
    browser = await openBrowser(await microphoneOf(attempts, 60));
    const { page, errors, close } = await visit(browser, `${inject('siteUrl')}#stand`, {
      before: spyOnListening,
    });
    await page.getByLabel('Key', { exact: true }).selectOption('Ab major');
    await page.waitForTimeout(2000);
    await page.getByRole('button', { name: 'Listen', exact: true }).click();
    await page.locator('.state', { hasText: `Attempt ${ATTEMPTS}` }).waitFor({ timeout: 60_000 });
    await page.waitForTimeout(500);
    const { notes, verdictMs } = await whatWasSpied(page);
    const delays = notes.map(({ delayMs }) => delayMs).sort((a, b) => a - b);
    const at = (share: number): number => delays[Math.floor(delays.length * share)]!;
    console.log(
      `hammer → pearl, ${delays.length} notes: median ${at(0.5).toFixed(0)} ms, 95th ${at(0.95).toFixed(0)} ms, ` +
        `longest ${at(0.999).toFixed(0)} ms; attempt over → verdict: ${verdictMs.map((ms) => ms.toFixed(0)).join(', ')} ms`,
    );
    expect(delays).toHaveLength(13 * ATTEMPTS);
    expect(at(0.5)).toBeLessThanOrEqual(PEARL_MS.median);
    expect(at(0.95)).toBeLessThanOrEqual(PEARL_MS.most);
    expect(verdictMs).toHaveLength(ATTEMPTS);
    expect(Math.max(...verdictMs)).toBeLessThanOrEqual(VERDICT_MS);
    expect(errors).toEqual([]);
    await close();
  },
);
