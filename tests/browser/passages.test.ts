import { resolve } from 'node:path';
import { serialize } from 'musicxml-io';
import type { Browser, Page } from 'playwright-core';
import { beforeAll, describe, expect, inject, it } from 'vitest';
import { inventedPassages } from '../support/passages.ts';
import { asMusicXml } from '../support/scores.ts';
import { asFile, review } from './student/made.ts';
import { choose, sharedBrowser, visit } from './visit.ts';

const site = inject('siteUrl');
let browser: Browser;
beforeAll(async () => {
  browser = await sharedBrowser();
});

const PLAYED = resolve(import.meta.dirname, '../../audio-fixtures/clean-scale/attempt.wav');
const [, TWO] = inventedPassages(2);
const score = {
  name: 'two.musicxml',
  mimeType: 'text/xml',
  buffer: Buffer.from(serialize(asMusicXml(TWO!))),
};
const long = {
  name: 'long.abc',
  mimeType: 'text/vnd.abc',
  buffer: Buffer.from(
    `X:1\nT:A long one\nM:4/4\nL:1/4\nK:C\n${Array.from({ length: 24 }, () => 'CEGc').join('|')}|]\n`,
  ),
};
const unfold = (page: Page): Promise<void> =>
  page.locator('summary', { hasText: 'Passages of your own' }).click();
const open = (page: Page, file: typeof score): Promise<void> =>
  page.getByLabel('A passage of your own: MusicXML, MIDI or ABC').setInputFiles(file);
const heading = (page: Page, name: string): Promise<void> => page.getByRole('heading', { name }).waitFor();

/** Another exercise is chosen and the page reloaded: the passage is in the list still. */
async function isHadFromTheList(page: Page): Promise<void> {
  await choose(page.getByLabel('Scale', { exact: true }));
  await page.getByRole('heading', { name: /scale/ }).waitFor();
  await page.reload();
  await page.getByRole('heading', { name: /scale/ }).waitFor();
  await unfold(page);
  await page.getByLabel('Choose a passage').selectOption('Passage 2');
  await heading(page, 'Passage 2 · hands together');
}

describe('a passage of one’s own', () => {
  it('is opened, stands on the staff, is kept, and is had again from the list', async () => {
    const { page, errors, close } = await visit(browser, site);
    await unfold(page);
    await open(page, score);
    await heading(page, 'Passage 2 · hands together');
    await page.locator('.music svg').first().waitFor();
    await expect
      .poll(() => page.evaluate(() => location.hash))
      .toMatch(/^#play\/passage-[0-9a-f]{8}-together$/);
    await choose(page.getByLabel('Right', { exact: true }));
    await heading(page, 'Passage 2 · right hand');
    await isHadFromTheList(page);
    expect(errors).toEqual([]);
    await close();
  });

  it('comes with what a teacher assigns, is played from the plan, and is had from the list after a reload', async () => {
    const { page, errors, close } = await visit(browser, site);
    const asked = { targetBpm: 60, inARow: null, evennessPercent: null, note: '' };
    const made = review({ assignment: [{ ...asked, exercise: TWO! }] });
    await page.getByLabel('A recording to open').setInputFiles(await asFile(made));
    await page.getByRole('heading', { name: 'From Ms Ley' }).waitFor();
    await page.getByRole('button', { name: 'The journal' }).click();
    const planned = page.locator('#today ~ ol > li');
    await expect.poll(() => planned.first().innerText()).toMatch(/^Passage 2, hands together/);
    await planned.first().getByRole('button', { name: 'Play it' }).click();
    await heading(page, 'Passage 2 · hands together');
    await page.locator('.music svg').first().waitFor();
    await isHadFromTheList(page);
    expect(errors).toEqual([]);
    await close();
  });

  it('is played once, laid on a staff, set right, named, and is an exercise like any other', async () => {
    const { page, errors, close } = await visit(browser, site);
    await unfold(page);
    await page.getByRole('button', { name: 'Play or write one …' }).click();
    await choose(page.getByLabel('Right', { exact: true }));
    await page.getByLabel('A recording to open').setInputFiles(PLAYED);
    const inHand = page.locator('.hand');
    await inHand.filter({ hasText: /^E\d, right hand$/ }).waitFor();
    const notes = page.locator('.staff figcaption');
    await notes.filter({ hasText: /F sharp.*G sharp/ }).waitFor({ state: 'attached' });
    await page.getByRole('button', { name: 'A semitone up' }).click();
    await inHand.filter({ hasText: /^E♯\d/ }).waitFor();
    await page.getByRole('button', { name: 'Undo' }).click();
    await inHand.filter({ hasText: /^E\d/ }).waitFor();
    await page.getByLabel('Title').fill('As I play it');
    await page.getByRole('button', { name: 'Done' }).click();
    await heading(page, 'As I play it · right hand');
    await unfold(page);
    await page.getByRole('button', { name: 'Change it …' }).click();
    await page.getByRole('button', { name: 'Throw away' }).click();
    await heading(page, 'As I play it · right hand');
    expect(errors).toEqual([]);
    await close();
  });

  it('is written by touch, and by keys alone', async () => {
    const { page, errors, close } = await visit(browser, site);
    await unfold(page);
    await page.getByRole('button', { name: 'Play or write one …' }).click();
    await page.getByRole('button', { name: 'Write it on the staff' }).click();
    const staff = page.getByRole('application');
    const svg = staff.locator('.line > svg').first();
    await svg.waitFor();
    const { width, height } = (await svg.boundingBox())!;
    const inHand = page.locator('.hand');
    await staff.focus();
    await page.keyboard.press('Enter');
    await inHand.filter({ hasText: /^C4.*right hand/ }).waitFor();
    await page.keyboard.press('Delete');
    await inHand.filter({ hasText: /^Touch the staff/ }).waitFor();
    await expect
      .poll(async () => {
        await svg.click({ position: { x: width * 0.3, y: height * 0.3 } });
        return inHand.textContent();
      })
      .toMatch(/right hand/);
    const first = await inHand.textContent();
    await staff.focus();
    await page.keyboard.press('Enter');
    await page.keyboard.press('ArrowUp');
    await expect.poll(() => inHand.textContent()).not.toBe(first);
    await page.keyboard.press('ArrowLeft');
    await expect.poll(() => inHand.textContent()).toBe(first);
    await page.keyboard.press('Delete');
    await page.keyboard.press('Enter');
    await page.getByRole('button', { name: 'Other hand' }).click();
    await inHand.filter({ hasText: 'left hand' }).waitFor();
    await page.getByRole('button', { name: 'Done' }).click();
    await heading(page, 'My passage · hands together');
    expect(errors).toEqual([]);
    await close();
  });

  it('is there again after a reload before it is done, and not once it is thrown away', async () => {
    const { page, errors, close } = await visit(browser, site);
    await unfold(page);
    await page.getByRole('button', { name: 'Play or write one …' }).click();
    await page.getByRole('button', { name: 'Write it on the staff' }).click();
    await page.getByRole('application').focus();
    await page.keyboard.press('Enter');
    await page.keyboard.press('Enter');
    await page.getByLabel('Title').fill('Half of it');
    await page.locator('.hand', { hasText: /^C4.*right hand/ }).waitFor();
    await page.reload();
    await page.locator('.hand', { hasText: /^C4.*right hand/ }).waitFor();
    await expect.poll(() => page.getByLabel('Title').inputValue()).toBe('Half of it');
    await expect.poll(() => page.getByRole('button', { name: 'Done' }).isEnabled()).toBe(true);
    // Another tab is not opened for it, and what is asked for goes before it.
    const another = await page.context().newPage();
    await another.goto(site);
    await unfold(another);
    await another.close();
    await page.goto(`${site}#keys`);
    await page.getByRole('button', { name: 'Play it' }).first().click();
    await page.getByRole('heading', { name: /^[A-G]\S* m\S+ · / }).waitFor();
    await unfold(page);
    await page.getByRole('button', { name: 'Play or write one …' }).click();
    await expect.poll(() => page.getByLabel('Title').inputValue()).toBe('Half of it');
    await page.getByRole('button', { name: 'Throw away' }).click();
    await unfold(page);
    await page.reload();
    await unfold(page);
    expect(errors).toEqual([]);
    await close();
  });

  it('is cut out of a longer piece, also one that is dropped anywhere; what is no music says why', async () => {
    const { page, errors, close } = await visit(browser, site);
    await unfold(page);
    await open(page, { ...score, name: 'none.txt', buffer: Buffer.from('hello') });
    await page.getByRole('alert').filter({ hasText: 'no music that is read here' }).waitFor();
    const dropped = await page.evaluateHandle(
      ({ name, text }) => {
        const data = new DataTransfer();
        data.items.add(new File([text], name));
        return data;
      },
      { name: long.name, text: long.buffer.toString() },
    );
    await page.dispatchEvent('body', 'drop', { dataTransfer: dropped });
    await page.getByRole('alert').filter({ hasText: '24 bars' }).waitFor();
    await page.getByLabel('From bar').fill('5');
    await page.getByLabel('to bar').fill('6');
    await page.getByRole('button', { name: 'Take these bars' }).click();
    await heading(page, 'A long one · right hand');
    expect(errors).toEqual([]);
    await close();
  });
});
