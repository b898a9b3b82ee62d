import type { Browser } from 'playwright-core';
import { afterEach, expect, inject, it } from 'vitest';
import { microphoneOf } from './sounds.ts';
import { spyOnListening, whatWasSpied } from './spy.ts';
import type { DrawnNote } from './spy.ts';
import { openBrowser, visit } from './visit.ts';

/** The project's own bounds: from the hammer to its pearl, without what the audio stack adds; and from the end of an attempt to its verdict. */
const PEARL_MS = { median: 90, most: 150 } as const;
const VERDICT_MS = 1000;

/** heard whole, of so many played: a machine that is busy with other things loses sound now and then */
const ATTEMPTS = { whole: 3, played: 6 } as const;
/** the fixture's notes, and how far apart attempts lie at least, seconds */
const NOTES = 13;
const APART_SEC = 2;
/** the first notes of an attempt, of which the ear is less sure */
const FIRST = 3;

let browser: Browser | null = null;
afterEach(async () => {
  await browser?.close();
  browser = null;
});

/** Notes in order of time → attempts of which every note was heard. */
function wholeOf(notes: readonly DrawnNote[]): (readonly DrawnNote[])[] {
  const inOrder = [...notes].sort((a, b) => a.timeSec - b.timeSec);
  const starts = inOrder.flatMap(({ timeSec }, i) =>
    i === 0 || timeSec - inOrder[i - 1]!.timeSec > APART_SEC ? [i] : [],
  );
  return starts
    .map((from, i) => inOrder.slice(from, starts[i + 1] ?? inOrder.length))
    .filter((attempt) => attempt.length === NOTES);
}

const quantilesOf = (notes: readonly DrawnNote[]) => {
  const delays = notes.map(({ delayMs }) => delayMs).sort((a, b) => a - b);
  const at = (share: number): number => delays[Math.floor(delays.length * share)]!;
  return { median: at(0.5), most: at(0.95), longest: delays.at(-1)! };
};
const told = (notes: readonly DrawnNote[]): string => {
  const { median, most, longest } = quantilesOf(notes);
  return `${notes.length} notes: median ${median.toFixed(0)} ms, 95th ${most.toFixed(0)} ms, longest ${longest.toFixed(0)} ms`;
};

/** A machine that is busy with other things is late however quick the page is; then it is measured again. */
const MEASURED_AGAIN = { retry: 2 };

it(
  'a pearl stands within 90 ms of its hammer (median; 95 in 100 within 150 ms), the verdict within a second',
  MEASURED_AGAIN,
  async () => {
    const attempts = Array.from({ length: ATTEMPTS.played }, (_, index) => ({
      name: 'late-thumb',
      atSec: 3 + index * 11,
    }));
    browser = await openBrowser(await microphoneOf(attempts, 80));
    const { page, errors, close } = await visit(browser, `${inject('siteUrl')}#stand`, {
      before: spyOnListening,
    });
    await page.getByLabel('Key', { exact: true }).selectOption('Ab major');
    await page.waitForTimeout(2000);
    await page.getByRole('button', { name: 'Listen', exact: true }).click();
    let spied = await whatWasSpied(page);
    for (
      let number = 1;
      number <= ATTEMPTS.played && wholeOf(spied.notes).length < ATTEMPTS.whole;
      number++
    ) {
      await page.locator('.state', { hasText: `Attempt ${number}.` }).waitFor({ timeout: 30_000 });
      await page.waitForTimeout(500);
      spied = await whatWasSpied(page);
    }
    const whole = wholeOf(spied.notes);
    const notes = whole.flat();
    const { verdictMs } = spied;
    console.log(
      `hammer → pearl, ${told(notes)} (first three of an attempt: ${told(whole.flatMap((one) => one.slice(0, FIRST)))}); ` +
        `attempt over → verdict: ${verdictMs.map((ms) => ms.toFixed(0)).join(', ')} ms`,
    );
    expect(whole.length).toBeGreaterThanOrEqual(ATTEMPTS.whole);
    const { median, most } = quantilesOf(notes);
    expect(median).toBeLessThanOrEqual(PEARL_MS.median);
    expect(most).toBeLessThanOrEqual(PEARL_MS.most);
    expect(verdictMs.length).toBeGreaterThanOrEqual(ATTEMPTS.whole);
    expect(Math.max(...verdictMs)).toBeLessThanOrEqual(VERDICT_MS);
    expect(errors).toEqual([]);
    await close();
  },
);
