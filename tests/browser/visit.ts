import { chromium, type Browser, type Locator, type Page } from 'playwright-core';
import { findChromium } from '../support/chromium.mjs';

/** Sizes at which the page must read: phone, tablet both ways, laptop. */
export const SIZES = [
  { name: 'phone', width: 390, height: 844 },
  { name: 'tablet', width: 768, height: 1024 },
  { name: 'tablet-wide', width: 1024, height: 768 },
  { name: 'laptop', width: 1440, height: 900 },
] as const;

const FLAGS = [
  '--no-sandbox',
  '--disable-gpu',
  '--disable-quic',
  '--no-first-run',
  '--disable-background-networking',
  '--disable-component-update',
  '--disable-sync',
  '--autoplay-policy=no-user-gesture-required',
];

/** How long anything that is waited for may take, ms: a bound for what never comes, not for what is slow. */
const NEVER_MS = 60_000;

let shared: Promise<Browser> | null = null;

/** The browser that all files of a worker share, without a microphone; it ends with the worker. Each visit is a profile of its own. */
export async function sharedBrowser(): Promise<Browser> {
  if (shared !== null && !(await shared).isConnected()) shared = null;
  return (shared ??= openBrowser());
}

/** Leaves all that is still open in it. */
export async function closeVisits(): Promise<void> {
  if (shared !== null) await Promise.all((await shared).contexts().map((context) => context.close()));
}

/** `microphone`: a WAV that the browser hears as its microphone, 'refused' to refuse it. `more`: flags that only one bench wants. */
export async function openBrowser(microphone?: string, more: readonly string[] = []): Promise<Browser> {
  const executablePath = findChromium();
  if (executablePath === undefined) throw new Error('No Chromium found: install it, or set CHROMIUM.');
  const hearing =
    microphone === undefined
      ? []
      : microphone === 'refused'
        ? ['--use-fake-device-for-media-stream', '--use-fake-ui-for-media-stream=deny']
        : [
            '--use-fake-device-for-media-stream',
            '--use-fake-ui-for-media-stream',
            `--use-file-for-fake-audio-capture=${microphone}%noloop`,
          ];
  return chromium.launch({ executablePath, args: [...FLAGS, ...hearing, ...more] });
}

/** A page and what went wrong on it while it was open. */
export interface Visit {
  readonly page: Page;
  /** uncaught errors and console errors */
  readonly errors: string[];
  /** requests that left the origin */
  readonly strayRequests: string[];
  readonly close: () => Promise<void>;
}

export async function visit(
  browser: Browser,
  url: string,
  options: {
    readonly width?: number;
    readonly height?: number;
    readonly colorScheme?: 'light' | 'dark';
    /** lets the page keep its files, to open without a network: all of them are fetched once more for it */
    readonly keepsFiles?: boolean;
    readonly before?: (page: Page) => Promise<unknown>;
  } = {},
): Promise<Visit> {
  const context = await browser.newContext({
    viewport: { width: options.width ?? 1024, height: options.height ?? 768 },
    colorScheme: options.colorScheme ?? 'light',
    reducedMotion: 'reduce',
    serviceWorkers: options.keepsFiles === true ? 'allow' : 'block',
  });
  context.setDefaultTimeout(NEVER_MS);
  const page = await context.newPage();
  const errors: string[] = [];
  const strayRequests: string[] = [];
  const { origin } = new URL(url);
  page.on('pageerror', (error) => errors.push(error.message));
  page.on('console', (message) => {
    if (message.type() === 'error') errors.push(message.text());
  });
  page.on('request', (request) => {
    const address = request.url();
    if (!address.startsWith(origin) && !/^(data|blob):/.test(address)) strayRequests.push(address);
  });
  // Benches run by tsx, which wraps named functions in a helper of its own: those that run in the page want it there.
  await page.addInitScript('globalThis.__name = (one) => one');
  await options.before?.(page);
  await page.goto(url);
  return { page, errors, strayRequests, close: () => context.close() };
}

/** Waits for the report of an attempt; returns its verdict. */
export async function verdictOf(page: Page): Promise<string> {
  const heading = page.locator('#verdict');
  await heading.waitFor();
  // No line's end between a number and its unit: for whoever reads of it here a space is a space.
  return (await heading.innerText()).replaceAll('\u00a0', ' ').trim();
}

/** Shows a page at every size, light and dark, and looks at each. */
export async function atEverySize(page: Page, look: (seen: string) => Promise<void>): Promise<void> {
  for (const { name, width, height } of SIZES)
    for (const colorScheme of ['light', 'dark'] as const) {
      await page.setViewportSize({ width, height });
      await page.emulateMedia({ colorScheme });
      await drawnAnew(page);
      await look(`${name}, ${colorScheme}`);
    }
}

/**
 * Does something and sees what it brings to the page, however soon that is gone again: a note that sounds, a button while it does.
 * `words`: what it says, among other things.
 */
export async function seesPass(
  page: Page,
  selector: string,
  act: () => Promise<unknown>,
  words = '',
): Promise<void> {
  const passed = page.evaluate(
    ([wanted, says]) =>
      new Promise<void>((resolve) => {
        const look = (): void => {
          const there = [...document.querySelectorAll(wanted)];
          if (!there.some(({ textContent }) => textContent.includes(says))) return;
          observer.disconnect();
          resolve();
        };
        const observer = new MutationObserver(look);
        observer.observe(document, { subtree: true, childList: true, attributes: true, characterData: true });
        look();
      }),
    [selector, words] as const,
  );
  await Promise.all([passed, act()]);
}

/** Chooses a radio button by its label, which lies over it: by what a hand touches, once it stands still. */
export async function choose(radio: Locator): Promise<void> {
  await radio.locator('xpath=..').click();
}

/** A pearl that sounds. */
export const SOUNDING = '[data-spot][aria-current=true]';

/** The next frame is drawn: what a change of size, scheme or state does to the page is to be seen. */
export function drawnAnew(page: Page): Promise<void> {
  return page.evaluate(
    () => new Promise<void>((resolve) => requestAnimationFrame(() => requestAnimationFrame(() => resolve()))),
  );
}
