import { readFileSync } from 'node:fs';
import type { Browser, Page } from 'playwright-core';
import { beforeAll, describe, expect, inject, it } from 'vitest';
import { readReview } from '../../../src/io/review/index.ts';
import { violations } from '../axe.ts';
import { fixturePath } from '../sounds.ts';
import { sharedBrowser, visit } from '../visit.ts';
import { beginReview, openClass, openRemarked, partOf } from './scenes.ts';

const site = inject('siteUrl');
let browser: Browser;
beforeAll(async () => {
  browser = await sharedBrowser();
});

const visitTeacher = () => visit(browser, `${site}#teacher`);

async function savedBy(page: Page): Promise<string> {
  const [saved] = await Promise.all([
    page.waitForEvent('download'),
    partOf(page, 'Mara').getByRole('button', { name: 'Save the review' }).click(),
  ]);
  const bytes = new Uint8Array(readFileSync(await saved.path()));
  return (await readReview(new Blob([bytes]))).id;
}

describe('what a class handed in', () => {
  it('is listed by its days; other files are passed over, and nothing found is said gently', async () => {
    const { page, errors, close } = await visitTeacher();
    await openClass(page);
    await expect
      .poll(() => page.locator('.passed-over').innerText())
      .toMatch(/^2 other files were passed over/);
    await expect.poll(() => page.locator('.failed').count()).toBe(0);
    const mara = await partOf(page, 'Mara').innerText();
    expect(mara).toMatch(/Since 18 Nov 2026: more even/);
    expect(mara).not.toMatch(/00:00/);
    await expect
      .poll(() => partOf(page, 'Lena').innerText())
      .toMatch(/No exercise was found in these recordings/);
    // Once something is here, students come first on the screen.
    expect((await page.locator('.intake').boundingBox())!.height).toBeLessThan(90);
    expect(errors).toEqual([]);
    await close();
  });

  it('may hold what cannot be told: it says why, and is measured at a touch', async () => {
    const { page, errors, close } = await visitTeacher();
    await openClass(page);
    const jonas = partOf(page, 'Jonas');
    const untold = jonas.locator('li').filter({ hasText: 'Cannot tell what was played' });
    await expect.poll(() => untold.count()).toBe(1);
    await expect.poll(() => untold.innerText()).toMatch(/leaves open which.*F major scale.*F♯ major scale/s);
    await jonas.getByText('Other playing (2)').waitFor();
    await expect.poll(() => violations(page)).toEqual([]);
    await untold.locator('[data-playing]').click();
    await page.getByRole('heading', { name: 'Cannot tell what was played' }).waitFor();
    await expect.poll(() => violations(page)).toEqual([]);
    await page.getByRole('button', { name: /^F♯ major scale/ }).click();
    await page.locator('[data-spot]').first().waitFor();
    await page.locator('.where', { hasText: 'F♯ major scale' }).waitFor();
    expect(errors).toEqual([]);
    await close();
  });
});

describe('a review', () => {
  it('is printed from the page, a sheet an attempt, on A4 and Letter', async () => {
    const { page, errors, close } = await visitTeacher();
    await openClass(page);
    await openRemarked(page);
    await beginReview(page);
    const mara = partOf(page, 'Mara');
    for (const tick of await mara.locator('fieldset input').all()) await tick.check();
    await page.emulateMedia({ colorScheme: 'dark' });
    for (const format of ['A4', 'Letter'] as const) {
      await page.evaluate(() => {
        window.print = () => document.body.setAttribute('data-printed', '');
      });
      await mara.getByRole('button', { name: 'Print it' }).click();
      await page.locator('body[data-printed]').waitFor();
      const sheet = page.locator('.sheet');
      await expect.poll(() => sheet.locator('article').count()).toBe(3);
      await sheet.getByText('Let the thumb travel').first().waitFor({ state: 'attached' });
      const pdf = (await page.pdf({ format, preferCSSPageSize: true })).toString('latin1');
      // The first sheet has the words and what to practise, then one for each of three attempts.
      expect(pdf.match(/\/Type\s*\/Page\b(?!s)/g)).toHaveLength(4);
      await page.evaluate(() => {
        document.body.removeAttribute('data-printed');
        window.dispatchEvent(new Event('afterprint'));
      });
      await expect.poll(() => sheet.count()).toBe(0);
    }
    expect(errors).toEqual([]);
    await close();
  });

  it('made again takes the place of the first until something new comes in', async () => {
    const { page, close } = await visitTeacher();
    await openClass(page);
    await openRemarked(page);
    await beginReview(page);
    const first = await savedBy(page);
    const mara = partOf(page, 'Mara');
    await mara.getByText('what you save now takes its place').waitFor();
    expect(await savedBy(page)).toBe(first);
    await page.getByLabel('Recordings to open', { exact: true }).setInputFiles({
      name: 'Mara - later.wav',
      mimeType: 'audio/wav',
      buffer: readFileSync(fixturePath('clean-scale')),
    });
    await mara.getByText('Mara - later.wav').first().waitFor();
    await expect.poll(() => mara.getByText('what you save now takes its place').count()).toBe(0);
    expect(await savedBy(page)).not.toBe(first);
    await close();
  });
});
