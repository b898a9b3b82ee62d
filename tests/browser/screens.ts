/**
 * `npm run screens`: the built page at all sizes in light and dark → dist/screens/*.png, to be looked at.
 * `npm run screens -- --only journal,keys`: those alone; a name takes along all that begin with it and a dash.
 */
import { mkdirSync } from 'node:fs';
import { resolve } from 'node:path';
import { parseArgs } from 'node:util';
import type { Browser, Page } from 'playwright-core';
import { SCENES, type Scene, type Shot } from './scenes.ts';
import { serveSite } from './site.ts';
import { microphoneOf } from './sounds.ts';
import { openClass, openRemarked } from './teacher/scenes.ts';
import { openBrowser, SIZES, verdictOf, visit } from './visit.ts';

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

/** The README's picture: the report of the example attempt on a laptop, without the bar at the bottom. */
async function takeReadmePicture(browser: Browser, url: string): Promise<void> {
  const { page, close } = await visit(browser, `${url}?attempt=bundled`, { width: 1160, height: 1000 });
  await verdictOf(page);
  await page.getByText('Every note, as a table').waitFor();
  await page.evaluate(() => {
    document.querySelector<HTMLElement>('.bar')!.style.display = 'none';
    window.scrollTo(0, 0);
  });
  await page.waitForTimeout(500);
  const clip = { x: 20, y: 62, width: 1120, height: 850 };
  await page.screenshot({ path: resolve(import.meta.dirname, 'report.png'), clip });
  await close();
}

/** The README's other picture: an attempt with remarks, as a teacher sees it. */
async function takeTeachersPicture(browser: Browser, url: string): Promise<void> {
  const { page, close } = await visit(browser, `${url}#teacher`, { width: 1160, height: 1100 });
  await openClass(page);
  await openRemarked(page);
  await page.evaluate(() => window.scrollTo(0, 0));
  await page.waitForTimeout(500);
  const clip = { x: 20, y: 62, width: 1120, height: 868 };
  await page.screenshot({ path: resolve(import.meta.dirname, 'teacher.png'), clip });
  await close();
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

const { values } = parseArgs({ options: { only: { type: 'string' } } });
const only = values.only?.split(',') ?? null;
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
if (asked('readme')) {
  await takeReadmePicture(browser, url);
  await takeTeachersPicture(browser, url);
}
await browser.close();
await close();
console.log(`Screens in ${INTO}, in ${((performance.now() - beganMs) / 1000).toFixed(0)} s`);
