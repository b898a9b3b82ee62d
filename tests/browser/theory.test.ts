import type { Browser, Page } from 'playwright-core';
import { beforeAll, describe, expect, inject, it } from 'vitest';
import { nothingWrongAtAnySize } from './axe.ts';
import { choose, sharedBrowser, verdictOf, visit } from './visit.ts';

const inGerman = (page: Page): Promise<unknown> =>
  page.addInitScript(() => {
    if (localStorage.getItem('evenfall-language') === null) localStorage.setItem('evenfall-language', 'de');
  });

/** Notes down of each sound whether it was stopped or came to its end. */
const followEnds = (page: Page): Promise<unknown> =>
  page.addInitScript(() => {
    const ends: string[] = [];
    Object.assign(window, { ends });
    const stopped = new WeakSet<AudioScheduledSourceNode>();
    const { start, stop } = AudioBufferSourceNode.prototype;
    AudioBufferSourceNode.prototype.start = function (...rest: number[]) {
      this.addEventListener('ended', () => {
        if (!stopped.has(this)) ends.push('ended');
      });
      return start.apply(this, rest as []);
    };
    AudioBufferSourceNode.prototype.stop = function (...rest: number[]) {
      if (!stopped.has(this)) ends.push('stopped');
      stopped.add(this);
      return stop.apply(this, rest as []);
    };
  });

/** The page of a key is there, its music drawn. */
async function drawn(page: Page): Promise<void> {
  await page.locator('#key-title').waitFor();
  await page.locator('.staff svg').nth(3).waitFor();
}

const site = inject('siteUrl');
let browser: Browser;
beforeAll(async () => {
  browser = await sharedBrowser();
});

describe.each(['en', 'de'] as const)('the page of a key, in %s', (language) => {
  it('has nothing wrong that axe finds at any size, light or dark', async () => {
    const { page, errors, close } = await visit(
      browser,
      `${site}#keys`,
      language === 'de' ? { before: inGerman } : {},
    );
    await drawn(page);
    await choose(page.locator('.circle input[value="G# minor"]'));
    await drawn(page);
    await nothingWrongAtAnySize(page);
    expect(errors).toEqual([]);
    await close();
  });
});

describe('the page of a key', () => {
  it('is used by the keyboard alone: the key, its sound, and the drill', async () => {
    const { page, close } = await visit(browser, `${site}#keys`, { before: followEnds });
    await drawn(page);
    await page.locator('.circle input:checked').focus();
    await page.keyboard.press('ArrowRight');
    await page.getByRole('heading', { name: 'G major', exact: true }).waitFor();
    const hear = page.locator('section[aria-labelledby="scale-title"] button').first();
    await hear.focus();
    await page.keyboard.press('Enter');
    const stop = page.locator('section[aria-labelledby="scale-title"]').getByRole('button', { name: 'Stop' });
    await stop.waitFor();
    await page.keyboard.press('Enter');
    await stop.waitFor({ state: 'detached' });
    await expect
      .poll(() => page.evaluate(() => (window as unknown as { ends: readonly string[] }).ends))
      .toEqual(['stopped']);
    await page.getByLabel('Your answer').focus();
    await page.keyboard.type('f#');
    await page.keyboard.press('Enter');
    await page.getByText('Yes: F♯.').waitFor();
    await page.keyboard.press('Enter');
    await page.getByText('Spell the tonic triad of G major.').waitFor();
    await expect
      .poll(() => page.evaluate(() => document.activeElement?.textContent))
      .toBe('Spell the tonic triad of G major.');
    await close();
  });

  it('answers touches with kind words, to the last question and on to the next key', async () => {
    const { page, close } = await visit(browser, `${site}#keys`);
    await drawn(page);
    const touch = async (...names: readonly string[]): Promise<void> => {
      for (const name of names)
        await page.locator('.palette').getByRole('button', { name, exact: true }).click();
      await page.getByRole('button', { name: 'Is that it?' }).click();
    };
    const back = page.getByRole('button', { name: 'Take one back' });
    const next = page.getByRole('button', { name: 'The next question' });
    await touch('F sharp');
    await page.getByText('F♯ does not belong. The others?').waitFor();
    await page.getByRole('button', { name: 'None', exact: true }).click();
    await page.getByText('Yes: no sharps or flats.').waitFor();
    await next.click();
    await touch('C', 'E flat');
    await page.getByText('Right letter, but not E♭.').waitFor();
    await back.click();
    await touch('E');
    await page.getByText('One is still missing.').waitFor();
    await touch('G');
    await page.getByText('Yes: C E G.').waitFor();
    for (const chord of [
      ['C', 'E', 'G'],
      ['F', 'A', 'C'],
    ]) {
      await next.click();
      await touch(...chord);
    }
    await next.click();
    await page.getByRole('button', { name: 'Show me' }).click();
    await page.getByText('It is G B D F.').waitFor();
    await page.getByRole('button', { name: 'Go on with G major' }).click();
    await page.getByText('Which sharps or flats does G major have, in their order?').waitFor();
    await close();
  });

  it('shows the shapes of a triad two and two where two have room', async () => {
    const { page, close } = await visit(browser, `${site}#keys`, { width: 1024, height: 768 });
    await drawn(page);
    const shapes = page.locator('section[aria-labelledby="triads-title"] .keyboards figure');
    const tops = (): Promise<readonly number[]> =>
      shapes.evaluateAll((figures) => figures.map((figure) => figure.getBoundingClientRect().top));
    await expect.poll(async () => new Set(await tops()).size).toBe(2);
    await close();
  });

  it('offers double sharps where an answer needs one, and nowhere else', async () => {
    const { page, close } = await visit(browser, `${site}#keys/d-minor`);
    await drawn(page);
    const offered = page.locator('.palette button');
    await expect.poll(() => offered.count()).toBe(21);
    await choose(page.locator('.circle input[value="G# minor"]'));
    await expect.poll(() => offered.count()).toBe(28);
    await close();
  });

  it('leads to the exercise', async () => {
    const { page, close } = await visit(browser, `${site}#keys`);
    await drawn(page);
    await choose(page.locator('.circle input[value="Eb minor"]'));
    await page.getByRole('button', { name: 'Also written D♯ minor' }).click();
    await choose(page.getByRole('radio', { name: 'Left', exact: true }));
    await page
      .locator('section[aria-labelledby="arpeggio-title"]')
      .getByRole('button', { name: 'Play it' })
      .click();
    await page.getByRole('heading', { name: 'D♯ minor · tonic arpeggio, two octaves · left hand' }).waitFor();
    await expect.poll(() => page.getByLabel('Key', { exact: true }).inputValue()).toBe('D# minor');
    await close();
  });
});

describe('the language', () => {
  it('is chosen at the foot of the page, changes what is shown, and is remembered', async () => {
    const { page, errors, close } = await visit(browser, `${site}?attempt=bundled`);
    await expect
      .poll(() => verdictOf(page))
      .toMatch(/^Every note right\. The crossing comes late going up to C/);
    await choose(page.getByRole('radio', { name: 'Deutsch', exact: true }));
    await page.getByText('Jeder Ton richtig. Der Untersatz aufwärts zu C kommt').waitFor();
    await expect.poll(() => page.evaluate(() => document.documentElement.lang)).toBe('de');
    await page.getByRole('heading', { name: 'As-Dur · Tonika-Arpeggio' }).waitFor();
    await choose(page.getByRole('radio', { name: 'do re mi … si', exact: true }));
    await page.getByText('Der Untersatz aufwärts zu do kommt').waitFor();
    // The choice does not carry the reader away from where it was made.
    await expect
      .poll(() => page.evaluate(() => document.activeElement?.closest('footer') !== null))
      .toBe(true);
    await page.reload();
    await page.getByText('Der Untersatz aufwärts zu do kommt').waitFor();
    await choose(page.getByRole('radio', { name: 'C D E … H', exact: true }));
    await page.getByText('Der Untersatz aufwärts zu C kommt').waitFor();
    expect(errors).toEqual([]);
    await close();
  });

  it('a file that does not open is told in German too', async () => {
    const { page, close } = await visit(browser, site, { before: inGerman });
    await page.locator('input[type=file]').setInputFiles({
      name: 'noten.pdf',
      mimeType: 'application/pdf',
      buffer: Buffer.from('%PDF-1.7'),
    });
    await page.getByText('Diese Datei ließ sich nicht öffnen').waitFor();
    await page.getByText('noten.pdf: Sie ist ein PDF-Dokument.').waitFor();
    await close();
  });

  it('has a report in German with nothing wrong that axe finds at any size', async () => {
    const { page, close } = await visit(browser, `${site}?attempt=bundled`, { before: inGerman });
    await verdictOf(page);
    await page.locator('.music svg').first().waitFor();
    await nothingWrongAtAnySize(page);
    await close();
  });
});
