import { readFileSync } from 'node:fs';
import type { Browser } from 'playwright-core';
import { beforeAll, describe, expect, inject, it } from 'vitest';
import { encodeWav } from '../../src/io/exchange/index.ts';
import { practisedSound } from './practised.ts';
import { fixturePath } from './sounds.ts';
import { choose, seesPass, sharedBrowser, SOUNDING, verdictOf, visit } from './visit.ts';

const site = inject('siteUrl');
let browser: Browser;
beforeAll(async () => {
  browser = await sharedBrowser();
});

async function practisedFile(): Promise<{ name: string; mimeType: string; buffer: Buffer }> {
  const sound = await practisedSound();
  return { name: 'practised.wav', mimeType: 'audio/wav', buffer: Buffer.from(encodeWav(sound)) };
}

describe('the example attempt', () => {
  it('is told one touch away: verdict, next step, thirteen pearls', async () => {
    const { page, errors, strayRequests, close } = await visit(browser, site);
    await page.getByRole('button', { name: 'Example' }).click();
    await expect.poll(() => verdictOf(page)).toMatch(/The crossing comes late/);
    await expect.poll(() => page.locator('.next').innerText()).toMatch(/^Next:/);
    await page.locator('[data-spot="12"]').waitFor();
    await page.getByText('Every note, as a table').click();
    await page.locator('tbody tr').nth(12).waitFor();
    expect(errors).toEqual([]);
    expect(strayRequests).toEqual([]);
    await close();
  });

  it('is printed without buttons, which nobody presses on paper', async () => {
    const { page, close } = await visit(browser, `${site}?attempt=bundled`);
    await verdictOf(page);
    const setUp = page.getByRole('button', { name: 'Set it up' });
    await setUp.waitFor();
    await page.emulateMedia({ media: 'print' });
    await setUp.waitFor({ state: 'hidden' });
    await close();
  });

  it('tells on a phone what a figure means where its name is touched, too', async () => {
    const { page, close } = await visit(browser, `${site}?attempt=bundled`, { width: 390, height: 844 });
    await verdictOf(page);
    const name = page.locator('dt', { hasText: 'Tempo' });
    await name.scrollIntoViewIfNeeded();
    const { x, y } = (await name.boundingBox())!;
    await page.mouse.click(x + 10, y + 10);
    await page.getByText('a hesitation does not move it').waitFor();
    await close();
  });

  it('opens by its address', async () => {
    const { page, close } = await visit(browser, `${site}?attempt=bundled`);
    await expect.poll(() => verdictOf(page)).toMatch(/The crossing comes late/);
    await close();
  });
});

describe('a recording', () => {
  it('is opened by the file picker and sorted to the exercise chosen', async () => {
    const { page, errors, close } = await visit(browser, site);
    await page.getByLabel('Key', { exact: true }).selectOption('E major');
    await choose(page.getByLabel('Scale', { exact: true }));
    await choose(page.locator('.row').getByLabel('1', { exact: true }));
    await page.locator('input[type=file]').setInputFiles(fixturePath('clean-scale'));
    await expect.poll(() => verdictOf(page)).not.toBe('');
    await expect
      .poll(() => page.locator('.where').innerText())
      .toMatch(/E major · scale, one octave · right hand/);
    expect(errors).toEqual([]);
    await close();
  });

  it('of another exercise than chosen is said to be so and measured as that, and the one chosen at one touch', async () => {
    const { page, close } = await visit(browser, site);
    await page.getByLabel('Key', { exact: true }).selectOption('C major');
    await page.locator('input[type=file]').setInputFiles(fixturePath('clean-scale'));
    await expect.poll(() => verdictOf(page)).toMatch(/^You played .*E major.*that is what is measured here/);
    await page.locator('.where', { hasText: 'E major · scale, one octave · right hand' }).waitFor();
    await page.getByRole('button', { name: /^No, I meant C major/ }).click();
    await page.locator('.where', { hasText: 'C major · tonic arpeggio' }).waitFor();
    await close();
  });

  it('is recognised until somebody has chosen, the example notwithstanding; what is chosen outlives page and example', async () => {
    const { page, close } = await visit(browser, site);
    const chosen = page.getByLabel('Key', { exact: true });
    const opened = async (where: RegExp): Promise<void> => {
      await page.locator('input[type=file]').setInputFiles(fixturePath('clean-scale'));
      await page.locator('.where', { hasText: where }).waitFor();
    };
    const example = async (): Promise<void> => {
      await page.getByRole('button', { name: 'Example', exact: true }).click();
      await page.locator('.where', { hasText: /example attempt/ }).waitFor();
    };
    await example();
    await opened(/E major · scale, one octave/);
    await expect.poll(() => verdictOf(page)).not.toMatch(/^You played/);
    await chosen.selectOption('G major');
    await page.reload();
    await expect.poll(() => chosen.inputValue()).toBe('G major');
    await example();
    expect(await chosen.inputValue()).toBe('G major');
    await opened(/E major · scale, one octave/);
    await expect.poll(() => verdictOf(page)).toMatch(/^You played .*E major/);
    await close();
  });

  it('is recognised where that is asked for', async () => {
    const { page, close } = await visit(browser, site);
    await page.getByLabel('Recognise the exercise for me').check();
    await page.locator('input[type=file]').setInputFiles(fixturePath('left-hand'));
    await verdictOf(page);
    await expect
      .poll(() => page.locator('.where').innerText())
      .toMatch(/C minor · tonic arpeggio, two octaves · left hand/);
    await close();
  });

  it('gives a next step that sets up the stretch to practise and its tempo, and undoes it', async () => {
    const { page, close } = await visit(browser, site);
    await page.getByLabel('Recognise the exercise for me').check();
    await page.locator('input[type=file]').setInputFiles(fixturePath('missed-and-repeated'));
    await verdictOf(page);
    await page.getByRole('button', { name: 'Set it up' }).click();
    await page.getByText(/How to practise: Only/).waitFor();
    await page.locator('.music line.stretch').first().waitFor({ state: 'attached' });
    await expect.poll(() => page.getByLabel('Tempo aim').inputValue()).not.toBe('80');
    await page.getByRole('button', { name: 'The whole again' }).click();
    await page.locator('.music line.stretch').first().waitFor({ state: 'detached' });
    await expect.poll(() => page.getByLabel('Tempo aim').inputValue()).toBe('80');
    await close();
  });

  it('of what was set up is judged by that: done, and back to the whole', async () => {
    const { page, errors, close } = await visit(browser, site);
    await page.getByRole('button', { name: 'Example' }).click();
    await expect.poll(() => verdictOf(page)).toMatch(/The crossing comes late/);
    await page.getByRole('button', { name: 'Set it up' }).click();
    await page.getByText(/Your next attempt is judged by that/).waitFor();
    await page.locator('input[type=file]').setInputFiles(await practisedFile());
    await expect.poll(() => verdictOf(page)).toMatch(/^Done: three times in a row every note right\.$/);
    await expect.poll(() => page.locator('.next').innerText()).toMatch(/^Next: now the whole/);
    await page.getByRole('button', { name: 'Set it up' }).click();
    await page.getByText(/How to practise: As written, ♩ =/).waitFor();
    expect(errors).toEqual([]);
    await close();
  });

  it('may be dropped anywhere', async () => {
    const { page, close } = await visit(browser, site);
    const bytes = readFileSync(fixturePath('late-thumb')).toString('base64');
    const transfer = await page.evaluateHandle((base64) => {
      const data = Uint8Array.from(atob(base64), (letter) => letter.charCodeAt(0));
      const dropped = new DataTransfer();
      dropped.items.add(new File([data], 'dropped.wav', { type: 'audio/wav' }));
      return dropped;
    }, bytes);
    await page.dispatchEvent('body', 'dragover', { dataTransfer: transfer });
    await expect.poll(() => page.getByText('Drop the recording').isVisible()).toBe(true);
    await page.dispatchEvent('body', 'drop', { dataTransfer: transfer });
    await verdictOf(page);
    await expect.poll(() => page.locator('.where').innerText()).toMatch(/dropped\.wav/);
    await close();
  });

  it('that is broken is said to be so, and the page goes on', async () => {
    const { page, close } = await visit(browser, site);
    await page.locator('input[type=file]').setInputFiles({
      name: 'broken.wav',
      mimeType: 'audio/wav',
      buffer: Buffer.from('RIFF\u0000\u0000\u0000\u0000WAVEjunk'),
    });
    await page.getByRole('heading', { name: 'This file could not be opened' }).waitFor();
    await expect.poll(() => page.locator('.trouble').innerText()).toMatch(/broken\.wav/);
    await page.getByRole('button', { name: 'Example' }).click();
    await expect.poll(() => verdictOf(page)).not.toBe('');
    await close();
  });

  it('without playing says so and keeps the sound', async () => {
    const { page, close } = await visit(browser, site);
    const silence = encodeWav({ channels: [new Float32Array(44_100 * 3)], sampleRateHz: 44_100 });
    await page
      .locator('input[type=file]')
      .setInputFiles({ name: 'silence.wav', mimeType: 'audio/wav', buffer: Buffer.from(silence) });
    await page.getByRole('heading', { name: 'No playing was found in this recording' }).waitFor();
    expect(await page.getByRole('button', { name: 'Measure it as' }).count()).toBe(0);
    const download = page.waitForEvent('download');
    await page.getByRole('button', { name: 'Save the sound' }).click();
    expect((await download).suggestedFilename()).toMatch(/\.wav$/);
    await close();
  });
});

describe('a pearl', () => {
  it('plays its spot when touched, and the pearl sounding is marked', async () => {
    const { page, errors, close } = await visit(browser, `${site}?attempt=bundled`);
    await verdictOf(page);
    await seesPass(page, `:has(${SOUNDING}) circle.sounding`, () => page.locator('[data-spot="4"]').click());
    await page.getByRole('button', { name: 'Play it all' }).click();
    await page.getByRole('button', { name: 'Stop' }).click();
    await page.getByRole('button', { name: 'Play it all' }).waitFor();
    await expect.poll(() => page.locator('circle.sounding').count()).toBe(0);
    expect(errors).toEqual([]);
    await close();
  });
});
