import { readFileSync } from 'node:fs';
import { parseMidi } from 'midi-file';
import { parse } from 'musicxml-io';
import type { Browser, Page } from 'playwright-core';
import { beforeAll, describe, expect, inject, it } from 'vitest';
import type { Report } from '../../src/engine/index.ts';
import { schemaFaults } from '../support/report-schema.ts';
import { nothingBeyondItsEdge, nothingWrongAtAnySize } from './axe.ts';
import { fixturePath } from './sounds.ts';
import { seesPass, sharedBrowser, SOUNDING, verdictOf, visit } from './visit.ts';

const site = inject('siteUrl');
let browser: Browser;
beforeAll(async () => {
  browser = await sharedBrowser();
});

const SECTIONS = ['Show the detail', 'On the staff', 'Every note, as a table', 'Compare'] as const;

async function openSections(page: Page, sections: readonly string[] = SECTIONS): Promise<void> {
  for (const title of sections) await page.locator('summary', { hasText: title }).first().click();
  if (sections.includes('On the staff')) await page.locator('svg.pencil').first().waitFor();
  if (sections.includes('Show the detail')) await page.locator('[data-point]').first().waitFor();
}

/** The example, and the same sound opened as a file: two attempts of one exercise. */
async function twoAttempts(page: Page): Promise<void> {
  await verdictOf(page);
  await page.locator('input[type=file]').setInputFiles(fixturePath('late-thumb'));
  await page.locator('.where', { hasText: 'attempt.wav' }).waitFor();
  await page.locator('summary', { hasText: 'Compare' }).waitFor();
}

async function download(page: Page, button: string): Promise<{ name: string; bytes: Buffer }> {
  const coming = page.waitForEvent('download');
  await page.getByRole('button', { name: button }).click();
  const file = await coming;
  return { name: file.suggestedFilename(), bytes: readFileSync(await file.path()) };
}

describe('the report in full', () => {
  it('marks a note everywhere, wherever it is touched', async () => {
    const { page, errors, close } = await visit(browser, `${site}?attempt=bundled`);
    await verdictOf(page);
    await openSections(page, ['Show the detail', 'On the staff', 'Every note, as a table']);
    await seesPass(page, SOUNDING, () => page.locator('[data-point="3"]').first().click());
    await expect.poll(() => page.locator('.spot.chosen').getAttribute('data-spot')).toBe('4');
    await expect.poll(() => page.locator('.graph rect.chosen').count()).toBe(3);
    await expect.poll(() => page.locator('svg.pencil rect.chosen').count()).toBe(1);
    await expect.poll(() => page.locator('tr.chosen').count()).toBeGreaterThan(0);
    await page.locator('tbody button').nth(7).click();
    await expect.poll(() => page.locator('.spot.chosen').getAttribute('data-spot')).toBe('7');
    expect(errors).toEqual([]);
    await close();
  });

  it('is used by keyboard alone: a figure, a stretch, its speed, and hearing it even', async () => {
    const { page, close } = await visit(browser, `${site}?attempt=bundled`);
    await verdictOf(page);
    await openSections(page, ['Show the detail']);
    await page.locator('[data-point="0"]').first().focus();
    await page.keyboard.press('ArrowRight');
    await seesPass(page, SOUNDING, () => page.keyboard.press('Enter'));
    await page.locator('.spot.chosen[data-spot="2"]').waitFor();
    await page.locator('[data-spot="2"]').focus();
    await page.keyboard.press('Shift+ArrowRight');
    await page.keyboard.press('Shift+ArrowRight');
    await expect.poll(() => page.getByLabel('from', { exact: true }).inputValue()).toBe('2');
    await expect.poll(() => page.getByLabel('to', { exact: true }).inputValue()).toBe('4');
    await page.getByRole('slider').focus();
    for (let i = 0; i < 6; i += 1) await page.keyboard.press('ArrowLeft');
    await expect.poll(() => page.getByRole('slider').getAttribute('aria-valuetext')).toMatch(/^70/);
    await page.getByLabel('As played', { exact: true }).focus();
    await page.keyboard.press('ArrowRight');
    // Once the note is over.
    await page.getByRole('button', { name: 'Play the stretch' }).focus();
    await page.keyboard.press('Enter');
    await page.getByText('this is the re-timed sound').waitFor();
    await close();
  });

  it('lets a stretch be drawn along the string, and be given up again', async () => {
    const { page, close } = await visit(browser, `${site}?attempt=bundled`);
    await verdictOf(page);
    const [from, to] = await Promise.all(
      [5, 8].map(async (spot) => (await page.locator(`[data-spot="${spot}"]`).boundingBox())!),
    );
    await page.mouse.move(from!.x + from!.width / 2, from!.y + from!.height / 2);
    await page.mouse.down();
    await page.mouse.move(to!.x + to!.width / 2, to!.y + to!.height / 2, { steps: 6 });
    await page.mouse.up();
    await expect.poll(() => page.getByLabel('from', { exact: true }).inputValue()).toBe('5');
    await expect.poll(() => page.getByLabel('to', { exact: true }).inputValue()).toBe('8');
    await expect.poll(() => page.getByRole('button', { name: 'Stop' }).count()).toBe(0);
    await page.getByRole('button', { name: 'The whole' }).click();
    await page.getByRole('button', { name: 'Play it all' }).waitFor();
    await close();
  });

  it('compares with another attempt, in words and side by side', async () => {
    const { page, errors, close } = await visit(browser, `${site}?attempt=bundled`);
    await twoAttempts(page);
    await openSections(page, ['Compare']);
    await page.getByText('No difference worth telling.').waitFor();
    await expect
      .poll(() => page.getByRole('img', { name: 'No difference' }).locator('svg').count())
      .toBeGreaterThan(0);
    await expect
      .poll(() => page.getByLabel('Compare with').locator('option').allInnerTexts())
      .toEqual(['the best so far: example attempt', 'attempt 1: example attempt']);
    expect(errors).toEqual([]);
    await close();
  });
});

describe('taken out', () => {
  it('are a picture, the notes, MIDI, the sound, and a report as the published schema says', async () => {
    const { page, errors, close } = await visit(browser, `${site}?attempt=bundled`, { colorScheme: 'dark' });
    await verdictOf(page);
    const json = await download(page, 'Report (JSON)');
    expect(json.name).toBe('ab-major-arpeggio-right-2.json');
    const report = JSON.parse(json.bytes.toString()) as Report;
    expect(schemaFaults(report)).toEqual([]);

    const png = await download(page, 'Picture of the string');
    expect(png.bytes.subarray(1, 4).toString()).toBe('PNG');
    expect(png.bytes.readUInt32BE(16)).toBe(2 * (1080 + 48));
    expect(png.bytes.length).toBeGreaterThan(10_000);

    const csv = (await download(page, 'Notes (CSV)')).bytes.toString().trimEnd().split('\r\n');
    expect(csv).toHaveLength(1 + report.notes.length);

    const midi = parseMidi((await download(page, 'What was played')).bytes);
    const struck = midi.tracks[1]!.flatMap((event) => (event.type === 'noteOn' ? [event.noteNumber] : []));
    expect(struck).toEqual(report.notes.map((note) => note.midi));

    const score = parse((await download(page, 'Sheet music (MusicXML)')).bytes.toString());
    expect(score.metadata.workTitle).toBe('A♭ major · tonic arpeggio, two octaves · right hand');
    expect(score.parts).toHaveLength(2);

    const wav = await download(page, 'Sound (WAV)');
    expect(wav.bytes.subarray(0, 4).toString()).toBe('RIFF');
    expect(errors).toEqual([]);
    await close();
  });

  it.each(['late-thumb', 'missed-and-repeated', 'progression'])(
    'the report of %s prints on one sheet, string and staff and figures',
    async (name) => {
      const { page, errors, close } = await visit(browser, site, { width: 390, height: 844 });
      await page.getByLabel('Recognise the exercise for me').check();
      await page.locator('input[type=file]').setInputFiles(fixturePath(name));
      await verdictOf(page);
      await page.evaluate(() => {
        window.print = () => document.body.setAttribute('data-printed', '');
      });
      await page.getByRole('button', { name: 'Print on one sheet' }).click();
      await page.locator('body[data-printed]').waitFor();
      await expect.poll(() => page.locator('.sheet .string svg').count()).toBeGreaterThan(0);
      await expect.poll(() => page.locator('.sheet .music svg').count()).toBeGreaterThan(0);
      const pdf = (await page.pdf({ format: 'A4', preferCSSPageSize: true })).toString('latin1');
      expect(pdf.match(/\/Type\s*\/Page\b/g)).toHaveLength(1);
      expect(errors).toEqual([]);
      await close();
    },
  );
});

it('with everything open, at every size, light and dark, axe finds nothing wrong, and nothing scrolls sideways', async () => {
  const { page, close } = await visit(browser, `${site}?attempt=bundled`);
  await twoAttempts(page);
  await openSections(page);
  for (const more of await page.locator('details details summary, section details summary').all())
    await more.click();
  await nothingWrongAtAnySize(page);
  await close();
});

// A page of 1024 px at 200 % lays out as one of 512; WCAG 1.4.10 asks for 320.
it.each([512, 320])(
  'at %i px, as under a zoom of 200 %, nothing is cut off or scrolls sideways',
  async (width) => {
    const { page, close } = await visit(browser, `${site}?attempt=bundled`, { width, height: 600 });
    await twoAttempts(page);
    await openSections(page);
    await nothingBeyondItsEdge(page);
    await close();
  },
);
