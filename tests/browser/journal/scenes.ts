import type { Page } from 'playwright-core';
import { seedJournal, type Seeding } from './five-years.ts';

/** Half a year of invented practice, and the journal open on it. */
export async function openSeededJournal(
  page: Page,
  attempts = 1200,
  seeding: Partial<Seeding> = {},
): Promise<void> {
  await seedJournal(page, { attempts, aDay: 7, reports: true, ...seeding });
  // Anew: a page that has been there for a while has read its journal already.
  await page.evaluate(() => (location.hash = 'journal'));
  await page.reload();
  await page.locator('[data-row]').first().waitFor();
  await page.locator('#kept').waitFor();
}

/** The journal with nothing in it. */
export async function openEmptyJournal(page: Page): Promise<void> {
  await page.evaluate(() => (location.hash = 'journal'));
  await page.locator('#kept').waitFor();
}
