import type { Page } from 'playwright-core';
import { classFolder } from './class.ts';

/** The page for teachers, with what an invented class handed in, once all of it is listened to. */
export async function openClass(page: Page): Promise<void> {
  await page.locator('input[webkitdirectory]').setInputFiles(await classFolder());
  await page.locator('.passed-over').waitFor();
  await page.locator('.going').waitFor({ state: 'detached' });
}

/** The student's part of the page. */
export const partOf = (page: Page, student: string) =>
  page.locator('.students > section').filter({ has: page.getByRole('heading', { name: student }) });

/** Opens Mara's newest arpeggio, says which hand it was, and remarks on its second crossing and on the whole. */
export async function openRemarked(page: Page): Promise<void> {
  await partOf(page, 'Mara')
    .locator('[data-playing]')
    .filter({ hasText: '2026-11-25 arpeggio' })
    .first()
    .click();
  await page.getByRole('button', { name: 'It was the right' }).click();
  await page.getByRole('button', { name: 'It was the right' }).waitFor({ state: 'detached' });
  const next = page.getByRole('button', { name: 'Next trouble' });
  await next.click();
  await next.click();
  await page.getByLabel('Your remark').fill('Let the thumb travel as soon as the second finger plays.');
  await page.getByRole('button', { name: 'Add the remark' }).click();
  await page.locator('label', { hasText: 'The attempt' }).click();
  await page.getByLabel('Your remark').fill('Much calmer than last week.');
  await page.getByRole('button', { name: 'Add the remark' }).click();
  await page.getByText('Much calmer than last week.').waitFor();
  // The trouble spot is heard to its end.
  await page.getByRole('button', { name: 'Play it all' }).waitFor();
}

/** Back in the list, with Mara's review begun. */
export async function beginReview(page: Page): Promise<void> {
  await page.getByRole('button', { name: 'All attempts' }).click();
  const mara = partOf(page, 'Mara');
  await mara.getByText('Next exercises').click();
  await mara
    .getByRole('button', { name: /^Assign/ })
    .first()
    .click();
  await mara.getByText('Make the review').click();
  await mara.getByLabel('To the student, about all of it').fill('Good work this week.');
  await mara.getByLabel('Your name, as you sign').fill('Ms Ley');
  await mara.getByLabel('Your name, as you sign').blur();
}

/** What could not be told, opened. */
export async function openUntold(page: Page): Promise<void> {
  await partOf(page, 'Jonas').locator('[data-playing]').first().click();
  await page.locator('#verdict').waitFor();
}

/** What the teacher plays as an example beside the attempt, at the piano in the test's microphone. */
export async function playExample(page: Page): Promise<void> {
  await page.getByText('Play it as an example').click();
  await page.getByRole('button', { name: 'Play it now' }).click();
  await page.getByText('Listening, up to three minutes').waitFor();
  await page.waitForTimeout(PLAYED_MS);
  await page.locator('.example').getByRole('button', { name: 'Stop' }).click();
  await page.locator('.example [data-spot]').first().waitFor();
}
/** as long as the test's microphone plays */
const PLAYED_MS = 11_000;
