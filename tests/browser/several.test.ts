import type { Browser, Page } from 'playwright-core';
import { beforeAll, describe, expect, inject, it } from 'vitest';
import { encodeWav } from '../../src/io/exchange/index.ts';
import { fixturePath, fixtureSound } from './sounds.ts';
import { sharedBrowser, verdictOf, visit } from './visit.ts';

const site = inject('siteUrl');
let browser: Browser;
beforeAll(async () => {
  browser = await sharedBrowser();
});

const wav = async (name: string) => {
  const { channels, sampleRateHz } = await fixtureSound(name);
  const buffer = Buffer.from(encodeWav({ channels: [channels[0]!], sampleRateHz }));
  return { name: `${name}.wav`, mimeType: 'audio/wav', buffer };
};
const list = (page: Page) => page.locator('.several a');
const about = (page: Page, words: RegExp): Promise<void> =>
  page.locator('.where', { hasText: words }).waitFor();

/** Attempts one after the other, four seconds apart, as somebody leaves a recorder on. */
async function lesson(names: readonly string[]) {
  const sounds = await Promise.all(names.map(fixtureSound));
  const { sampleRateHz } = sounds[0]!;
  const pause = new Float32Array(4 * sampleRateHz);
  const parts = sounds.flatMap(({ channels }) => [channels[0]!, pause]);
  const whole = new Float32Array(parts.reduce((sum, { length }) => sum + length, 0));
  let at = 0;
  for (const part of parts) {
    whole.set(part, at);
    at += part.length;
  }
  const buffer = Buffer.from(encodeWav({ channels: [whole], sampleRateHz }));
  return { name: 'lesson.wav', mimeType: 'audio/wav', buffer };
}

describe('several recordings', () => {
  it('opened at once are all there: the first is told, the others at a touch, and a reload keeps them together', async () => {
    const { page, errors, close } = await visit(browser, site);
    await page
      .locator('.bar input[type=file]')
      .setInputFiles([fixturePath('late-thumb'), fixturePath('clean-scale')]);
    await about(page, /A♭ major/);
    await expect.poll(() => list(page).count()).toBe(2);
    await list(page).nth(1).click();
    await about(page, /E major · scale/);
    await page.reload();
    await about(page, /E major · scale/);
    await expect.poll(() => list(page).count()).toBe(2);
    await page.goBack();
    await about(page, /A♭ major/);
    expect(errors).toEqual([]);
    await close();
  });

  it('one of which is broken are reached all the same, and it is told which could not be opened', async () => {
    const broken = { name: 'broken.wav', mimeType: 'audio/wav', buffer: Buffer.from('RIFF0000WAVEjunk') };
    const { page, errors, close } = await visit(browser, site);
    const input = page.locator('.bar input[type=file]');
    await input.setInputFiles([broken, await wav('late-thumb')]);
    await page.locator('#trouble').waitFor();
    await list(page).filter({ hasText: 'late-thumb.wav' }).click();
    await about(page, /A♭ major/);
    await input.setInputFiles([await wav('clean-scale'), broken]);
    await about(page, /E major · scale/);
    await list(page).filter({ hasText: 'broken.wav' }).click();
    await page.locator('#trouble').waitFor();
    await expect.poll(() => list(page).nth(1).innerText()).toBe('broken.wav: could not be opened');
    await expect.poll(() => list(page).nth(0).getAttribute('aria-current')).toBe('page');
    expect(errors).toEqual([]);
    await close();
  });

  it('that lie in one file are all shown, each under its own address', async () => {
    const { page, errors, close } = await visit(browser, site);
    await page.locator('.bar input[type=file]').setInputFiles(await lesson(['late-thumb', 'clean-scale']));
    await verdictOf(page);
    await expect.poll(() => list(page).allInnerTexts()).toHaveLength(3);
    await expect
      .poll(() => list(page).allInnerTexts())
      .toEqual([
        expect.stringMatching(/^lesson\.wav/),
        expect.stringMatching(/^lesson\.wav · 0:00: A♭ major/),
        expect.stringMatching(/^lesson\.wav · 0:\d\d: E major · scale/),
      ]);
    await list(page).nth(2).click();
    await about(page, /E major · scale/);
    expect(errors).toEqual([]);
    await close();
  });

  it('that the system shares with the page are opened in it', async () => {
    const { page, errors, close } = await visit(browser, site, { keepsFiles: true });
    await page.evaluate(async () => {
      await navigator.serviceWorker.ready;
    });
    // As the system does it: a form of its own, sent to the page.
    const sender = await page.context().newPage();
    await sender.setContent(
      `<form method="post" enctype="multipart/form-data" action="${site}"><input type="file" name="files" multiple><button>Share</button></form>`,
    );
    await sender.locator('input').setInputFiles([await wav('late-thumb'), await wav('clean-scale')]);
    await sender.getByRole('button', { name: 'Share' }).click();
    await about(sender, /A♭ major.*late-thumb\.wav/);
    await expect.poll(() => list(sender).count()).toBe(2);
    expect(await sender.evaluate(() => caches.has('shared-with-evenfall'))).toBe(false);
    expect(errors).toEqual([]);
    await close();
  });
});
