import { readFileSync } from 'node:fs';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, inject, it } from 'vitest';
import { readReview, writeReview, type Review } from '../../../src/io/review/index.ts';
import { followSound, moreSound } from '../hearing.ts';
import { fixturePath, microphoneOf } from '../sounds.ts';
import { stored } from '../stored.ts';
import { choose, openBrowser, seesPass, SOUNDING, verdictOf, visit } from '../visit.ts';
import { ASSIGNMENT, tone } from './made.ts';

const site = inject('siteUrl');
let browser: Browser;
beforeAll(async () => {
  browser = await openBrowser(await microphoneOf([{ name: 'left-hand', atSec: 0.5 }], 8));
});
afterAll(() => browser.close());

/** Puts a recording into the journal and sends it → the file that the student saves. */
async function sentBy(page: Page, withSound: boolean): Promise<Buffer> {
  await page.getByLabel('Key', { exact: true }).selectOption('Ab major');
  await page.getByLabel('A recording to open').setInputFiles(fixturePath('late-thumb'));
  await verdictOf(page);
  await page.getByRole('button', { name: 'Put it in the journal' }).click();
  await page.getByRole('button', { name: 'Send this to my teacher' }).click();
  await page.getByLabel('Your name').fill('Mira Ohm');
  await page.getByLabel('A few words').fill('Is the thumb better?');
  if (!withSound) await choose(page.getByRole('radio', { name: 'Without sound' }));
  await page.getByRole('button', { name: 'Make the file' }).click();
  const downloading = page.waitForEvent('download');
  await page.getByRole('button', { name: 'Save the file' }).click();
  return readFileSync(await (await downloading).path());
}

/** What a teacher makes of attempts that were sent: every field has something in it. */
function reviewOf(sent: Review, withSound: boolean): Review {
  const [attempt] = sent.attempts;
  const thumb = attempt!.report.notes.find(({ step }) => step === 4)!;
  return {
    kind: 'review',
    id: 'round-trip',
    madeMs: Date.now(),
    student: sent.student,
    teacher: 'Ms Ley',
    words: 'Better, yes.\nSee “thumb” – and <b>rest</b> in between.',
    attempts: [
      {
        ...attempt!,
        sound: withSound ? attempt!.sound : null,
        recognisedAs: { key: 'Ab major', form: 'scale', hands: 'right', octaves: 2 },
        remarks: [
          {
            id: 'on-a-note',
            place: { kind: 'note', step: 4, midi: thumb.midi, timeSec: thumb.timeSec },
            text: 'Here it still waits.',
            voice: tone(0.8, 220),
          },
          {
            id: 'on-a-stretch',
            place: { kind: 'stretch', fromStep: 6, toStep: 9 },
            text: 'Even!',
            voice: null,
          },
          { id: 'on-the-attempt', place: { kind: 'attempt' }, text: '', voice: tone(0.5, 330) },
        ],
        corrections: [
          {
            place: { kind: 'note', step: 4, midi: thumb.midi, timeSec: thumb.timeSec },
            verdict: 'correct',
            why: 'I hear it in time.',
          },
          { place: { kind: 'attempt' }, verdict: 'mistaken', why: 'You breathed there.' },
        ],
      },
    ],
    assignment: ASSIGNMENT,
  };
}

/** What lies on the shelf of this page, bytes as numbers. */
const shelved = (page: Page): Promise<unknown> => stored(page, 'evenfall-shelf', 'reviews');
const plain = (made: Review): unknown =>
  JSON.parse(JSON.stringify(made, (_, value: unknown) => (value instanceof Uint8Array ? [...value] : value)));

describe.each([
  ['with', true],
  ['without', false],
] as const)('attempts sent %s their sound', (_name, withSound) => {
  it('come to a teacher in another browser, whose review comes back whole', async () => {
    const student = await visit(browser, site);
    const buffer = await sentBy(student.page, withSound);
    const sent = await readReview(new Blob([new Uint8Array(buffer)]));
    expect(sent).toMatchObject({ kind: 'attempts', student: 'Mira Ohm', words: 'Is the thumb better?' });
    expect(sent.attempts).toHaveLength(1);
    expect(sent.attempts[0]!.sound !== null).toBe(withSound);

    const made = reviewOf(sent, withSound);
    const file = {
      name: 'review.zip',
      mimeType: 'application/zip',
      buffer: Buffer.from(await (await writeReview(made)).arrayBuffer()),
    };

    const { page, errors, strayRequests } = student;
    await page.getByRole('link', { name: 'Play', exact: true }).click();
    await page.getByLabel('A recording to open').setInputFiles(file);
    await page.getByRole('heading', { name: 'From Ms Ley' }).waitFor();
    await expect.poll(() => shelved(page)).toEqual([plain(made)]);

    const main = page.locator('main');
    for (const words of [
      'Better, yes.',
      '<b>rest</b>',
      'Here it still waits.',
      'Even!',
      'I hear it in time.',
      'You breathed there.',
      'D major scale, 2 octaves, right hand',
      'Listen to the turn at the top.',
    ])
      await main.getByText(words).first().waitFor();
    // Both spoken remarks can be heard, and so can she: by the sound that came, or by her own.
    for (const about of [/^Hear the remark.*note 5/, /^Hear the remark.*whole attempt/]) {
      const hear = page.getByRole('button', { name: about });
      await seesPass(page, 'main button', () => hear.click(), '■');
      await hear.waitFor();
    }
    await expect.poll(() => page.getByText('cannot be played here').count()).toBe(0);
    await expect.poll(() => page.getByText('you hear your own recording').count()).toBe(withSound ? 0 : 1);
    await seesPass(page, SOUNDING, () => page.locator('[data-spot="3"]').click());

    // Another profile has nothing of it.
    const other = await visit(browser, `${site}#journal`);
    await other.page.locator('#kept').waitFor();
    await expect.poll(() => other.page.locator('button.open').count()).toBe(0);
    await other.page.getByLabel('A review to open').setInputFiles(file);
    await other.page.getByRole('heading', { name: 'From Ms Ley' }).waitFor();
    await expect.poll(() => shelved(other.page)).toEqual([plain(made)]);
    const silent = other.page.getByText('this device does not keep it either');
    await expect.poll(() => silent.count()).toBe(withSound ? 0 : 1);

    await page.reload();
    await page.getByRole('link', { name: 'Journal' }).click();
    await page.locator('#kept').waitFor();
    const planned = page.locator('#today ~ ol > li');
    await expect
      .poll(() => planned.first().innerText())
      .toMatch(/D major scale.*\s+.*♩\s=\s72\. Your teacher asks/);
    await page.getByRole('button', { name: /^From Ms Ley/ }).click();
    await main.getByText('Here it still waits.').first().waitFor();
    await expect.poll(() => shelved(page)).toEqual([plain(made)]);
    expect([...errors, ...strayRequests, ...other.errors, ...other.strayRequests]).toEqual([]);
    await Promise.all([student.close(), other.close()]);
  });
});

/** A teacher's page, in a browser profile of its own: attempts in, a review out, with something of everything. */
async function reviewedBy(page: Page, attempts: Buffer): Promise<Buffer> {
  await page
    .getByLabel('Recordings to open', { exact: true })
    .setInputFiles({ name: 'attempts.zip', mimeType: 'application/zip', buffer: attempts });
  await page.getByRole('heading', { name: 'Mira Ohm' }).waitFor();
  await page.locator('[data-playing]').first().click();
  await seesPass(page, SOUNDING, () => page.getByRole('button', { name: 'Next trouble' }).click());
  await page.getByLabel('Your remark').fill('Let the thumb go earlier.');
  await page.getByRole('button', { name: 'Add the remark' }).click();
  await page.getByRole('button', { name: /^Remark 1/ }).waitFor();
  await page.locator('label', { hasText: 'The attempt' }).click();
  await page.getByRole('button', { name: 'Speak it' }).click();
  await page.getByText('Recording, up to three minutes').waitFor();
  await moreSound(page, 1.5);
  await page.getByRole('button', { name: 'Stop', exact: true }).last().click();
  await page.getByRole('button', { name: 'Speak it again' }).waitFor();
  await page.getByRole('button', { name: 'Add the remark' }).click();
  await page.getByRole('button', { name: /^Hear it\s*, spoken/ }).waitFor();
  await page.getByText('Correct the tool').click();
  await page.locator('label', { hasText: 'it was wrong' }).click();
  await page.getByLabel('Why').fill('It was a D.');
  await page.getByRole('button', { name: 'Mark as mistaken' }).click();
  await page.getByText('You say: it was wrong. It was a D.').waitFor();
  await page.getByRole('button', { name: 'All attempts' }).click();
  await page.getByText('Next exercises').click();
  await page
    .getByRole('button', { name: /^Assign\s*: A♭ major arpeggio/ })
    .first()
    .click();
  await page.getByLabel('Beats a minute').fill('72');
  await page.getByLabel('In a row').fill('2');
  await page.getByLabel('A sentence about it').fill('Slowly, please.');
  await page.getByLabel('A sentence about it').blur();
  await page.getByText('Make the review').click();
  await page.getByLabel('To the student, about all of it').fill('Much better this week.');
  await page.getByLabel('Your name, as you sign').fill('Ms Ley');
  await page.getByLabel('Your name, as you sign').blur();
  const saving = page.waitForEvent('download');
  await page.getByRole('button', { name: 'Save the review' }).click();
  return readFileSync(await (await saving).path());
}

describe('two people, each with a browser of their own', () => {
  it('send attempts, review them, and find everything again, to the last byte', async () => {
    const student = await visit(browser, site);
    const teacher = await visit(browser, `${site}#teacher`, { before: followSound });
    const attempts = await sentBy(student.page, true);
    const buffer = await reviewedBy(teacher.page, attempts);
    const [sent, made] = await Promise.all(
      [attempts, buffer].map((bytes) => readReview(new Blob([new Uint8Array(bytes)]))),
    );
    expect(made).toMatchObject({
      kind: 'review',
      student: 'Mira Ohm',
      teacher: 'Ms Ley',
      words: 'Much better this week.',
      assignment: [{ targetBpm: 72, inARow: 2, note: 'Slowly, please.' }],
    });
    // What she sent came back as she sent it: report, name, time, and the sound not packed a second time.
    const { remarks, corrections, ...came } = made!.attempts[0]!;
    const { remarks: none, corrections: nor, ...went } = sent!.attempts[0]!;
    expect(came).toEqual(went);
    expect([none, nor, remarks.length, corrections.length]).toEqual([[], [], 2, 1]);

    const { page } = student;
    await page.getByRole('link', { name: 'Journal' }).click();
    const file = { name: 'review.zip', mimeType: 'application/zip', buffer };
    await page.getByRole('button', { name: 'The journal' }).click();
    await page.getByLabel('A review to open').setInputFiles(file);
    await page.getByRole('heading', { name: 'From Ms Ley' }).waitFor();
    await expect.poll(() => shelved(page)).toEqual([plain(made!)]);
    const main = page.locator('main');
    for (const words of ['Much better', 'Let the thumb go earlier.', 'It was a D.', 'Slowly, please.'])
      await main.getByText(words).first().waitFor();
    const hear = page.getByRole('button', { name: /^Hear the remark/ });
    await seesPass(page, 'main button', () => hear.click(), '■');

    await page.reload();
    await page.getByRole('link', { name: 'Journal' }).click();
    await expect
      .poll(() => page.locator('#today ~ ol > li').first().innerText())
      .toMatch(/A♭ major arpeggio.*\s+.*♩\s=\s72\. Your teacher asks/);
    await expect.poll(() => shelved(page)).toEqual([plain(made!)]);
    const wrong = [student, teacher].flatMap(({ errors, strayRequests }) => [...errors, ...strayRequests]);
    expect(wrong).toEqual([]);
    await Promise.all([student.close(), teacher.close()]);
  });
});
