import { gzipSync } from 'node:zlib';
import type { Browser, Response } from 'playwright-core';
import { beforeAll, describe, expect, inject, it } from 'vitest';
import { sharedBrowser, visit } from './visit.ts';

/** The project's own bound: what is loaded before anything is asked for, without fonts and sound. */
const MOST_BYTES = 300_000;

/** src/main.ts makes ready what comes into use later once the page has been there for a while; that is no first load. */
function neverALittleLater(): void {
  const set = window.setTimeout.bind(window);
  Object.assign(window, {
    setTimeout: (act: () => void, waitMs = 0) => (waitMs < 1000 ? set(act, waitMs) : 0),
  });
}

const site = inject('siteUrl');
let browser: Browser;
beforeAll(async () => {
  browser = await sharedBrowser();
});

const sizeOf = async (response: Response): Promise<number> => gzipSync(await response.body()).length;

describe('the first load', () => {
  it(`is at most ${MOST_BYTES / 1000} KB of code, styles and page, packed`, async () => {
    const responses: Response[] = [];
    const { page, close } = await visit(browser, site, {
      before: (page) => {
        page.on('response', (response) => responses.push(response));
        return page.addInitScript(neverALittleLater);
      },
    });
    await page.locator('#exercise').waitFor();
    await page.locator('.music svg').first().waitFor();
    await page.waitForLoadState('networkidle');
    const counted = responses.filter((response) => !/\.(woff2|wav|png|svg)$/.test(response.url()));
    const sizes = await Promise.all(
      counted.map(async (one) => ({ name: one.url().split('/').at(-1)!, bytes: await sizeOf(one) })),
    );
    const bytes = sizes.reduce((sum, one) => sum + one.bytes, 0);
    console.log(
      `first load: ${(bytes / 1000).toFixed(0)} KB packed in ${sizes.length} files: ` +
        sizes.map((one) => `${one.name} ${(one.bytes / 1000).toFixed(0)}`).join(', '),
    );
    expect(sizes.length).toBeGreaterThan(3);
    expect(sizes.map(({ name }) => name).join(' ')).not.toMatch(/worker|opus|flac|mp3|vorbis|tracks/);
    expect(bytes).toBeLessThanOrEqual(MOST_BYTES);
    await close();
  });
});
