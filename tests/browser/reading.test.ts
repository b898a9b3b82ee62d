import type { Page } from 'playwright-core';
import { expect, inject, it } from 'vitest';
import { fixturePath } from './sounds.ts';
import { asFile, review } from './student/made.ts';
import { sharedBrowser, verdictOf, visit } from './visit.ts';

/**
 * The page as a screen reader meets it, from the first visit to a review: what stands there, in its order, by role and name (the
 * browser's own tree of them), and where reading goes on when a step was taken. At the stand see `at-piano.test.ts`.
 */

/** By these one finds one's way. */
const LANDMARKS = /^(banner|navigation|main|region|article|contentinfo|dialog|heading|status|alert)\b/;
/** What is used and has no name is only "button". */
const NAMELESS =
  /^(button|link|radio|checkbox|combobox|textbox|searchbox|spinbutton|slider|img|figure|meter|progressbar|table)( \[.*\])?:?$/;

async function tree(page: Page): Promise<readonly string[]> {
  const lines = (await page.locator('body').ariaSnapshot()).split('\n');
  return lines.map((line) => line.trim().replace(/^- '?/, '').replace(/'?:?$/, ''));
}

/** What stands there, in its order; and nothing that is used lacks a name. */
async function outline(page: Page): Promise<readonly string[]> {
  const lines = await tree(page);
  expect(lines.filter((line) => NAMELESS.test(line))).toEqual([]);
  return lines.filter((line) => LANDMARKS.test(line));
}

/** Where reading goes on: what has the focus says this, among other things. */
async function goesOnAt(page: Page, words: string): Promise<void> {
  const focused = (): Promise<string> =>
    page.evaluate(() =>
      document.activeElement === document.body ? '' : document.activeElement!.textContent,
    );
  await expect.poll(focused).toContain(words);
}

it('is read in order, by names, from the first visit to a review', async () => {
  const { page, errors, close } = await visit(await sharedBrowser(), inject('siteUrl'));
  await page.locator('.music svg').first().waitFor();
  expect(await outline(page)).toEqual([
    'banner',
    'navigation "Pages"',
    'main',
    'region "C major · tonic arpeggio, two octaves · right hand"',
    'heading "C major · tonic arpeggio, two octaves · right hand" [level=1]',
    'heading "C major" [level=2]',
    'region "Your attempt"',
    'contentinfo',
  ]);

  await page.getByRole('button', { name: 'Record', exact: true }).press('Enter');
  await goesOnAt(page, 'Turn on the microphone');
  await page.getByRole('button', { name: 'Not now' }).press('Enter');
  await goesOnAt(page, 'Record');

  await page.locator('.bar input[type=file]').setInputFiles(fixturePath('missed-and-repeated'));
  const verdict = (await verdictOf(page)).replaceAll(/\s+/g, ' ');
  await page.locator('[data-spot="3"]').waitFor();
  await goesOnAt(page, 'One missing: A coming down');
  const report = await outline(page);
  expect(report.slice(0, 5)).toEqual([
    'banner',
    'navigation "Pages"',
    'main',
    `article "${verdict}"`,
    `heading "${verdict}" [level=1]`,
  ]);
  expect(report).toContain('region "What was heard"');
  const spots = await tree(page);
  expect(spots).toEqual(
    expect.arrayContaining(['button "F sharp 4, fourth finger"', 'button "A 4 missed, second finger"']),
  );

  await page.getByRole('button', { name: 'Put it in the journal' }).click();
  await page.getByRole('status').filter({ hasText: 'It is in the journal' }).waitFor();
  await page.getByRole('link', { name: 'Journal' }).click();
  await page.locator('[data-row]').first().waitFor();
  await page.locator('#kept').waitFor();
  const journal = (await outline(page)).filter((line) => /^(heading|status|contentinfo)/.test(line));
  expect(journal.slice(0, 6)).toEqual([
    'heading "Journal" [level=1]',
    'heading "Today" [level=2]',
    'heading "From your teacher" [level=2]',
    'heading "Attempts" [level=2]',
    'status: 1 attempt',
    'heading "Where each stands" [level=2]',
  ]);

  await page.locator('[data-row] button').first().press('Enter');
  await verdictOf(page);
  await goesOnAt(page, 'One missing: A coming down');
  await page.getByRole('button', { name: 'The journal' }).press('Enter');
  await goesOnAt(page, 'Attempts');

  await page.getByLabel('A review to open').setInputFiles(await asFile(review()));
  await page.getByRole('heading', { name: 'From Ms Ley' }).waitFor();
  await page.locator('[data-spot="12"]').waitFor();
  await goesOnAt(page, 'From Ms Ley');
  expect((await outline(page)).slice(2)).toEqual([
    'main',
    'heading "From Ms Ley" [level=1]',
    'region "Assigned"',
    'heading "Assigned" [level=2]',
    'region "Attempt 1 of 2 played 20 Nov 2026"',
    'heading "Attempt 1 of 2 played 20 Nov 2026" [level=2]',
    'article "A♭ major · tonic arpeggio, two octaves · right hand"',
    'region "What was heard"',
    'region "Remarks"',
    'heading "Remarks" [level=3]',
    'contentinfo',
  ]);
  const remarks = await tree(page);
  expect(remarks).toContain('button "1 note 5, C5 : hear this spot"');
  expect(errors).toEqual([]);
  await close();
});
