import type { Browser, Page } from 'playwright-core';
import { openClass, openRemarked } from './teacher/scenes.ts';
import { drawnAnew, verdictOf, visit, type Visit } from './visit.ts';

interface Clip {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

/** A picture of the README: its file beside this one, the part of the page that it shows, and how the page is brought there. */
export interface Picture {
  readonly file: string;
  readonly clip: Clip;
  readonly open: (browser: Browser, url: string) => Promise<Visit>;
}

export const PICTURES: readonly Picture[] = [
  {
    // The report of the example attempt on a laptop, without the bar at the bottom.
    file: 'report.png',
    clip: { x: 20, y: 62, width: 1120, height: 850 },
    open: async (browser, url) => {
      const seen = await visit(browser, `${url}?attempt=bundled`, { width: 1160, height: 1000 });
      await verdictOf(seen.page);
      await seen.page.getByText('Every note, as a table').waitFor();
      await seen.page.evaluate(() => (document.querySelector<HTMLElement>('.bar')!.style.display = 'none'));
      return atTheTop(seen);
    },
  },
  {
    // An attempt with remarks, as a teacher sees it.
    file: 'teacher.png',
    clip: { x: 20, y: 62, width: 1120, height: 868 },
    open: async (browser, url) => {
      const seen = await visit(browser, `${url}#teacher`, { width: 1160, height: 1100 });
      await openClass(seen.page);
      await openRemarked(seen.page);
      return atTheTop(seen);
    },
  },
];

async function atTheTop(seen: Visit): Promise<Visit> {
  await seen.page.evaluate(async () => {
    window.scrollTo(0, 0);
    await document.fonts.ready;
  });
  await drawnAnew(seen.page);
  return seen;
}

/** Fonts of another machine may carry a line over the edge of a picture: what lies so near to it is not told, px. */
const EDGE_PX = 40;

/** Words and figures that a part of the page shows, in the order of the page. */
export function shownIn(page: Page, { y, height }: Clip): Promise<readonly string[]> {
  return page.evaluate(
    ({ top, bottom }) => {
      const texts: string[] = [];
      const walk = document.createTreeWalker(document.body, NodeFilter.SHOW_TEXT);
      for (let node = walk.nextNode(); node !== null; node = walk.nextNode()) {
        // What is folded away has a box too.
        if (node.parentElement?.checkVisibility() !== true) continue;
        const text = (node.textContent ?? '').replaceAll(/\s+/g, ' ').trim();
        const range = document.createRange();
        range.selectNodeContents(node);
        const box = range.getBoundingClientRect();
        if (text !== '' && box.width > 0 && box.top >= top && box.bottom <= bottom) texts.push(text);
      }
      return texts;
    },
    { top: y, bottom: y + height - EDGE_PX },
  );
}
