/**
 * `npm run screens`: the built page at all sizes in light and dark → dist/screens/*.png, to be looked at.
 * `npm run screens -- --only journal,keys`: those alone; a name takes along all that begin with it and a dash.
 * `npm run screens -- --readme`: the README's pictures alone, beside this file.
 */
import { mkdirSync, writeFileSync } from 'node:fs';
import { resolve } from 'node:path';
import { parseArgs } from 'node:util';
import type { Browser, Page } from 'playwright-core';
import { PICTURES, shownIn } from './readme.ts';
import { SCENES, type Scene, type Shot } from './scenes.ts';
import { serveSite } from './site.ts';
import { microphoneOf } from './sounds.ts';
import { openBrowser, SIZES, visit } from './visit.ts';

const INTO = resolve(import.meta.dirname, '../../dist/screens');
const SCHEMES = ['light', 'dark'] as const;
/** until what a new size or scheme changes is drawn, ms */
const SETTLED_MS = 120;

interface Look {
  readonly size: (typeof SIZES)[number];
  readonly colorScheme: (typeof SCHEMES)[number];
}
const LOOKS: readonly Look[] = SIZES.flatMap((size) =>
  SCHEMES.map((colorScheme): Look => ({ size, colorScheme })),
);

/** The README's pictures, and beside them what they show in words and figures, for the test that tells when they are old. */
async function takeReadmePictures(browser: Browser, url: string): Promise<void> {
  const shown: Record<string, readonly string[]> = {};
  for (const { file, clip, open } of PICTURES) {
    const { page, close } = await open(browser, url);
    await page.screenshot({ path: resolve(import.meta.dirname, file), clip });
    shown[file] = await shownIn(page, clip);
    await close();
  }
  writeFileSync(resolve(import.meta.dirname, 'readme.json'), `${JSON.stringify(shown, null, 2)}\n`);
}

async function take(page: Page, shot: Shot, looks: readonly Look[]): Promise<void> {
  for (const { size, colorScheme } of looks) {
    await page.setViewportSize({ width: size.width, height: size.height });
    await page.emulateMedia({ colorScheme });
    await page.waitForTimeout(SETTLED_MS);
    // What sticks to the edge of the screen would lie across the middle of the whole page.
    await page.evaluate((flat) => {
      const bar = document.querySelector<HTMLElement>('.bar');
      if (bar !== null) bar.style.position = flat ? 'static' : '';
    }, shot.whole);
    const path = resolve(INTO, `${shot.name}-${size.name}-${colorScheme}.png`);
    await page.screenshot({ path, fullPage: shot.whole });
  }
}

/** One visit, seen in `looks`; what nobody asked for is done all the same, up to the last shot that is wanted. */
async function walk(
  browser: Browser,
  url: string,
  scene: Scene,
  looks: readonly Look[],
  wanted: (shot: Shot) => boolean,
): Promise<void> {
  const { size, colorScheme } = looks[0]!;
  const { page, close } = await visit(browser, url + scene.query, { ...size, colorScheme });
  const last = scene.shots.findLastIndex(wanted);
  for (const shot of scene.shots.slice(0, last + 1)) {
    await shot.act(page);
    if (wanted(shot)) await take(page, shot, looks);
  }
  await close();
}

const { values } = parseArgs({ options: { only: { type: 'string' }, readme: { type: 'boolean' } } });
const only = values.readme ? [] : (values.only?.split(',') ?? null);
const asked = (name: string): boolean =>
  only === null || only.some((one) => name === one || name.startsWith(`${one}-`));

mkdirSync(INTO, { recursive: true });
const { url, close } = await serveSite();
// Three seconds of a still room before the first note: the ear needs one to be there, the room check three.
const browser = await openBrowser(await microphoneOf([{ name: 'late-thumb', atSec: 3.5 }], 12));
const beganMs = performance.now();
for (const scene of SCENES.filter(({ shots }) => shots.some(({ name }) => asked(name)))) {
  const startMs = performance.now();
  const visits = scene.passing ? SIZES.map((one) => LOOKS.filter(({ size }) => size === one)) : [LOOKS];
  for (const looks of visits) await walk(browser, url, scene, looks, ({ name }) => asked(name));
  console.log(
    `${((performance.now() - startMs) / 1000).toFixed(1)} s  ${scene.shots.map(({ name }) => name).join(', ')}`,
  );
}
if (only === null || values.readme) await takeReadmePictures(browser, url);
await browser.close();
await close();
console.log(`Screens in ${INTO}, in ${((performance.now() - beganMs) / 1000).toFixed(0)} s`);
