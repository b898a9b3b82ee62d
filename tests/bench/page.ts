/**
 * How quick the page is: `npm run bench:page`. In Chromium, on the built page: first touch answered, recording opened → report and
 * the longest task meanwhile, a journal of five years opened and scrolled, hammer → pearl and attempt over → verdict with a WAV as
 * microphone. Prints; never fails. With other programs at work the figures say little: the load is printed beside them.
 */
import { mkdtempSync, writeFileSync } from 'node:fs';
import { cpus, loadavg, tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Browser } from 'playwright-core';
import { encodeWav } from '../../src/io/exchange/index.ts';
import { ATTEMPTS, seedJournal } from '../browser/journal/five-years.ts';
import { serveSite } from '../browser/site.ts';
import { fixtureSound, lengthened, microphoneOf } from '../browser/sounds.ts';
import { openBrowser, verdictOf, visit } from '../browser/visit.ts';
import { spyOnListening, whatWasSpied, wholeAttempts } from './page-spy.ts';
import { mainThreadTasks } from './page-tasks.ts';
import { fixed, table } from './table.ts';

const TURNS = 6;
/** until what the page makes ready by itself is over, ms */
const SETTLED_MS = 4000;

interface Row {
  readonly what: string;
  readonly ms: readonly number[];
  /** what the project asks of itself, ms, and of which of the figures */
  readonly aim: string;
}

const rankOf = (values: readonly number[], share: number): number =>
  values.toSorted((a, b) => a - b)[Math.floor(share * (values.length - 1))] ?? NaN;

const { url, close } = await serveSite();
const browser = await openBrowser();
const rows: readonly Row[] = [
  await firstTouch(),
  ...(await opened()),
  ...(await fiveYears()),
  ...(await atThePiano()),
];
await browser.close();
await close();
console.log(
  `\n${cpus()[0]?.model ?? 'unknown processor'}, ${cpus().length} cores, load ${loadavg()[0]!.toFixed(1)}; ms\n`,
);
console.log(
  table(
    ['', 'of', 'least', 'median', '95 %', 'most', 'aim'],
    rows.map(({ what, ms, aim }) => [
      what,
      String(ms.length),
      ...[0, 0.5, 0.95, 1].map((share) => fixed(rankOf(ms, share), 0)),
      aim,
    ]),
  ),
);

/** From navigation to the answer to a touch that comes as soon as there is something to touch. */
async function firstTouch(): Promise<Row> {
  const ms: number[] = [];
  for (let turn = 0; turn < TURNS; turn++) {
    const { page, close } = await visit(browser, url, { before: (one) => one.addInitScript(touchFirst) });
    const html = page.locator('html[data-answered-ms]');
    await html.waitFor();
    ms.push(Number(await html.getAttribute('data-answered-ms')));
    await close();
  }
  return { what: 'first screen answers a touch', ms, aim: 'median 1000' };
}

/** In the page, from its beginning. */
function touchFirst(): void {
  const watch = (): void => {
    const left = document.querySelector<HTMLInputElement>('input[value=left]');
    if (left !== null && !left.checked) left.click();
    const answered = document.querySelector('#exercise')?.textContent.includes('left hand') === true;
    if (answered) document.documentElement.dataset['answeredMs'] = String(performance.now());
    else requestAnimationFrame(watch);
  };
  requestAnimationFrame(watch);
}

/** A recording of 20 s: from its being chosen to the frame in which its report stands, and what held the page up meanwhile. */
async function opened(): Promise<readonly Row[]> {
  const { channels, sampleRateHz } = await fixtureSound('missed-and-repeated');
  const path = join(mkdtempSync(join(tmpdir(), 'evenfall-')), 'long.wav');
  const sound = lengthened(channels[0]!, sampleRateHz, 20);
  writeFileSync(path, new Uint8Array(encodeWav({ channels: [sound], sampleRateHz })));
  const { page, close } = await visit(browser, url);
  await page.locator('.music svg').first().waitFor();
  await page.waitForTimeout(SETTLED_MS);
  const ms: number[] = [];
  const tasks = await mainThreadTasks(browser, async () => {
    while (ms.length < TURNS) {
      const told = page.evaluate(openedToTold);
      await page.locator('input[type=file]').setInputFiles(path);
      ms.push(await told);
      await verdictOf(page);
    }
  });
  await close();
  return [
    { what: 'recording of 20 s opened → report', ms, aim: 'median 1000' },
    { what: 'tasks of the page meanwhile, work', ms: tasks.map(({ workMs }) => workMs), aim: 'most 50' },
  ];
}

/** In the page. */
function openedToTold(): Promise<number> {
  return new Promise((resolve) => {
    const chosen = (): void => {
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
    document.addEventListener('change', chosen, { once: true, capture: true });
  });
}

/** Five years of practice, twenty attempts a day: opened cold, then scrolled ever faster for two seconds. */
async function fiveYears(): Promise<readonly Row[]> {
  const context = await browser.newContext({ viewport: { width: 1024, height: 768 } });
  // As every visit has it: tsx wraps named functions in a helper of its own.
  await context.addInitScript('globalThis.__name = (one) => one');
  const freshPage = async () => {
    const page = await context.newPage();
    await page.goto(url);
    await page.locator('#exercise').waitFor();
    return page;
  };
  const first = await freshPage();
  await seedJournal(first, { attempts: ATTEMPTS, aDay: 20, reports: true });
  await first.close();
  const openedMs: number[] = [];
  let page = await freshPage();
  while (openedMs.length < TURNS) {
    openedMs.push(await page.evaluate(asked));
    await page.close();
    page = await freshPage();
  }
  await page.evaluate(asked);
  await page.waitForTimeout(SETTLED_MS);
  let frames: readonly number[] = [];
  const tasks = await mainThreadTasks(browser, async () => {
    frames = await page.evaluate(scrolled);
  });
  await context.close();
  return [
    { what: `journal of ${ATTEMPTS} attempts opened`, ms: openedMs, aim: 'median 300' },
    { what: 'a frame while it is scrolled', ms: frames, aim: '95 % 25' },
    { what: 'tasks of the page meanwhile, work', ms: tasks.map(({ workMs }) => workMs), aim: 'most 17' },
  ];
}

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

/** In the page: 40 rows a second at first and ever faster; ms from frame to frame. */
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

/** From the hammer to its pearl, without what the audio stack adds; and from the end of an attempt to its verdict. */
async function atThePiano(): Promise<readonly Row[]> {
  const attempts = Array.from({ length: TURNS }, (_, index) => ({
    name: 'late-thumb',
    atSec: 3 + index * 11,
  }));
  const listening: Browser = await openBrowser(await microphoneOf(attempts, 80));
  const { page } = await visit(listening, `${url}#stand`, { before: spyOnListening });
  await page.getByLabel('Key', { exact: true }).selectOption('Ab major');
  await page.getByRole('button', { name: 'Listen', exact: true }).click();
  await page.locator('.state', { hasText: `Attempt ${TURNS}. Ready` }).waitFor({ timeout: 120_000 });
  const { notes, verdictMs } = await whatWasSpied(page);
  await listening.close();
  const whole = wholeAttempts(notes, 13);
  const delays = (some: readonly (typeof notes)[]): readonly number[] =>
    some.flat().map(({ delayMs }) => delayMs);
  return [
    { what: 'hammer → pearl', ms: delays(whole), aim: 'median 90, 95 % 150' },
    { what: 'the first three notes of an attempt', ms: delays(whole.map((one) => one.slice(0, 3))), aim: '' },
    { what: 'attempt over → verdict', ms: verdictMs, aim: 'most 1000' },
  ];
}
