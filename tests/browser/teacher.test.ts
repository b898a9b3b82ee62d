import {
  appendFileSync,
  copyFileSync,
  mkdirSync,
  mkdtempSync,
  readFileSync,
  rmSync,
  writeFileSync,
} from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import type { Browser, Download, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, inject, it } from 'vitest';
import { readReview } from '../../src/io/review/index.ts';
import { nothingWrongAtAnySize } from './axe.ts';
import { followSound, moreSound } from './hearing.ts';
import { fixturePath, microphoneOf } from './sounds.ts';
import { stored } from './stored.ts';
import { openBrowser, seesPass, SOUNDING, visit } from './visit.ts';

const site = inject('siteUrl');
const folder = mkdtempSync(join(tmpdir(), 'evenfall-'));
let browser: Browser;

const put = (path: string, fixture: string): void => {
  const to = join(folder, path);
  mkdirSync(dirname(to), { recursive: true });
  copyFileSync(fixturePath(fixture), to);
};

/** Too many to be listened to before somebody says stop. */
const MORE = Array.from({ length: 6 }, (_, at) => `more/${at}.wav`);

beforeAll(async () => {
  for (const path of MORE) {
    put(path, 'progression');
    // Copies of one recording would be told as such: each has something behind its sound.
    appendFileSync(join(folder, path), path);
  }
  put('Week 12/Mara/first.wav', 'late-thumb');
  put('Week 12/Mara/second.wav', 'clean-scale');
  put('Week 12/Ilse/natural.wav', 'natural-for-sharp');
  writeFileSync(join(folder, 'Week 12/broken.m4a'), 'no sound at all is in this file');
  browser = await openBrowser(await microphoneOf([{ name: 'left-hand', atSec: 0.5 }], 8));
});
afterAll(async () => {
  await browser.close();
  rmSync(folder, { recursive: true });
});

const rows = (page: Page) => page.locator('[data-playing]');
const visitTeacher = (options: Parameters<typeof visit>[2] = {}) =>
  visit(browser, `${site}#teacher`, { before: followSound, ...options });

async function give(page: Page): Promise<void> {
  await page.getByLabel('A folder of recordings to open').setInputFiles(join(folder, 'Week 12'));
}

async function allSorted(page: Page, count = 3): Promise<void> {
  await expect.poll(() => rows(page).count(), { message: 'attempts in the list' }).toBe(count);
  await page.locator('.going').waitFor({ state: 'detached' });
}

async function hear(page: Page, name: RegExp): Promise<void> {
  await rows(page).filter({ hasText: name }).first().click();
  await page.locator('[data-spot]').first().waitFor();
}

async function bytesOf(download: Download): Promise<Uint8Array<ArrayBuffer>> {
  return new Uint8Array(readFileSync(await download.path()));
}

describe('recordings that are given to a teacher', () => {
  it('are listed by student; a broken one says why and stops none, also when they are dropped', async () => {
    const { page, errors, strayRequests, close } = await visitTeacher();
    await give(page);
    await allSorted(page);
    await expect.poll(() => page.locator('.students h2').allInnerTexts()).toEqual(['Ilse', 'Mara']);
    await expect
      .poll(() => rows(page).allInnerTexts())
      .toEqual([
        expect.stringMatching(/^D major arpeggio.*\n*to be heard\s+.*F natural instead of F♯/s),
        expect.stringMatching(/^E major scale.*second\.wav/s),
        // Nobody said which hand: what is late are notes, not a crossing of its fingers.
        expect.stringMatching(/^A♭ major arpeggio.*C going up in the (lower|upper) octave.*first\.wav/s),
      ]);
    await page.getByText('Week 12/broken.m4a').first().waitFor();
    await page.getByText('It is not a sound file of a known kind').waitFor();
    await page.evaluate(
      async ([bytes]) => {
        const files = new DataTransfer();
        files.items.add(new File([new Uint8Array(bytes!)], 'Jo - again.wav'));
        window.dispatchEvent(new DragEvent('drop', { dataTransfer: files, cancelable: true }));
      },
      [[...readFileSync(fixturePath('left-hand'))]],
    );
    await allSorted(page, 4);
    await expect.poll(() => page.locator('.students h2').allInnerTexts()).toEqual(['Ilse', 'Jo', 'Mara']);
    expect([errors, strayRequests]).toEqual([[], []]);
    await close();
  });

  it('go on where they were after a reload, and after they were stopped, without one that was taken out', async () => {
    const { page, errors, close } = await visitTeacher();
    await give(page);
    // Each counts once it is kept.
    await page.getByText('of 4 recordings listened to').waitFor();
    await page.reload();
    await allSorted(page);
    await page
      .getByLabel('Recordings to open', { exact: true })
      .setInputFiles(MORE.map((path) => join(folder, path)));
    await page.getByRole('button', { name: 'Stop', exact: true }).click();
    await page.getByText(/^Stopped\./).waitFor();
    await page.getByText(/^\d recordings? waits?/).click();
    await page.getByRole('button', { name: /^Delete\s*: 5\.wav/ }).click();
    await page.getByRole('button', { name: 'Go on' }).click();
    await allSorted(page, 3 + MORE.length - 1);
    expect(errors).toEqual([]);
    await close();
  });

  it('end in a reason where a transfer broke off and left zeros, after a reload too, and stop none', async () => {
    const { page, errors, close } = await visitTeacher();
    const whole = readFileSync(join(import.meta.dirname, '../io/decode/samples/opus-mono.webm'));
    writeFileSync(join(folder, 'zeros.webm'), whole.fill(0, 0.4 * whole.length));
    await page
      .getByLabel('Recordings to open', { exact: true })
      .setInputFiles([join(folder, 'zeros.webm'), join(folder, MORE[0]!)]);
    await allSorted(page, 1);
    await page.reload();
    await allSorted(page, 1);
    expect(errors).toEqual([]);
    await close();
  });

  it('are deleted with their student, and brought back', async () => {
    const { page, close } = await visitTeacher();
    await give(page);
    await allSorted(page);
    await page.getByRole('button', { name: /^Delete everything\s*: Mara/ }).click();
    await expect.poll(() => rows(page).count()).toBe(1);
    await page.getByRole('button', { name: 'Undo' }).click();
    await expect.poll(() => rows(page).count()).toBe(3);
    await page.getByRole('button', { name: /^Delete everything\s*: Mara/ }).click();
    await page.getByText('Deleted: everything of Mara.').waitFor();
    // The student is marked last of all that is hers.
    await expect
      .poll(() => stored(page, 'evenfall-teaching', 'students'), { message: 'students as they are stored' })
      .toContainEqual(expect.objectContaining({ name: 'Mara', deletedMs: expect.any(Number) as number }));
    await page.reload();
    await allSorted(page, 1);
    // Ilse, and the nobody of the broken file.
    for (const [store, left] of [
      ['students', 2],
      ['playings', 1],
      ['reports', 1],
      ['sounds', 1],
    ] as const)
      await expect
        .poll(() => stored(page, 'evenfall-teaching', store), { message: `what is left of ${store}` })
        .toHaveLength(left);
    await close();
  });

  it('are given to another student, and a student is called otherwise', async () => {
    const { page, close } = await visitTeacher();
    await give(page);
    await allSorted(page);
    await page.getByRole('button', { name: /^Change the name\s*: Ilse/ }).click();
    await page.getByLabel('Student', { exact: true }).fill('Ilse B.');
    await page.getByRole('button', { name: 'Save', exact: true }).click();
    await page.getByRole('heading', { name: 'Ilse B.' }).waitFor();
    await page.getByText('Whose recordings').click();
    await page.getByLabel('Choose Week 12/Mara/first.wav').check();
    await page.getByLabel('Choose Week 12/Mara/second.wav').check();
    await page.getByLabel('Name of the student').fill('Jo');
    await page.getByRole('button', { name: 'Give 2 recordings to this student' }).click();
    await page.getByRole('heading', { name: 'Jo' }).waitFor();
    await expect.poll(() => page.locator('.students h2').allInnerTexts()).toEqual(['Ilse B.', 'Jo']);
    await close();
  });
});

describe('a review', () => {
  it('is made of remarks typed and spoken, a correction, another exercise and an assignment, and read back whole', async () => {
    const { page, errors, close } = await visitTeacher();
    await give(page);
    await allSorted(page);
    await hear(page, /A♭ major/);
    await seesPass(page, SOUNDING, () => page.getByRole('button', { name: 'Next trouble' }).click());
    await page.getByLabel('Your remark').fill('Let the thumb go <b>under</b> earlier.');
    await page.getByRole('button', { name: 'Add the remark' }).click();
    await page.getByRole('button', { name: /^Remark 1/ }).waitFor();
    await page.locator('label', { hasText: 'The attempt' }).click();
    await page.getByRole('button', { name: 'Speak it' }).click();
    await page.getByText('Recording, up to three minutes').waitFor();
    await moreSound(page, 1.5);
    await page.getByRole('button', { name: 'Stop', exact: true }).last().click();
    await page.getByRole('button', { name: 'Speak it again' }).waitFor();
    await page.getByRole('button', { name: 'Add the remark' }).click();
    await seesPass(
      page,
      'main button',
      () => page.getByRole('button', { name: /^Hear it\s*, spoken/ }).click(),
      'Stop it',
    );
    await page.getByText('Correct the tool').click();
    await page.locator('label', { hasText: 'it was wrong' }).click();
    await page.getByLabel('Why').fill('It was a D.');
    await page.getByRole('button', { name: 'Mark as mistaken' }).click();
    await page.getByText('You say: it was wrong. It was a D.').waitFor();
    // The tool's own word stands as it was.
    await expect
      .poll(() => page.locator('#verdict').innerText())
      .toMatch(/C going up in the (lower|upper) octave/);

    await page.getByRole('button', { name: 'Attempt before' }).click();
    await page.locator('.where', { hasText: 'E major' }).waitFor();
    await page.getByRole('button', { name: 'Next attempt' }).click();
    await page.getByText('You say: it was wrong. It was a D.').waitFor();
    await page.getByRole('button', { name: 'All attempts' }).click();
    await page.getByText('heard, 3 remarks').waitFor();
    const mara = page
      .locator('section')
      .filter({ has: page.getByRole('heading', { name: 'Mara' }) })
      .last();
    await mara.getByText('Next exercises').click();
    await mara.getByRole('button', { name: /^Assign\s*: A♭ major arpeggio/ }).click();
    await mara.getByLabel('Beats a minute').fill('72');
    await mara.getByLabel('In a row').fill('3');
    await mara.getByLabel('A sentence about it').fill('Slowly, please.');
    await mara.getByLabel('A sentence about it').blur();
    await mara.getByText('Make the review').click();
    await mara.getByLabel('To the student, about all of it').fill('Much better this week.');
    await mara.getByLabel('Your name, as you sign').fill('A teacher');
    await mara.getByLabel('Your name, as you sign').blur();
    const [saved] = await Promise.all([
      page.waitForEvent('download'),
      mara.getByRole('button', { name: 'Save the review' }).click(),
    ]);
    expect(saved.suggestedFilename()).toMatch(/^Mara-review-\d{4}-\d\d-\d\d\.zip$/);
    await mara.getByText(/^Saved as Mara-review-.* Nothing was sent/).waitFor();
    const review = await readReview(new Blob([await bytesOf(saved)]));
    expect(review).toMatchObject({
      kind: 'review',
      student: 'Mara',
      teacher: 'A teacher',
      words: 'Much better this week.',
      assignment: [{ targetBpm: 72, inARow: 3, evennessPercent: null, note: 'Slowly, please.' }],
    });
    const [attempt] = review.attempts;
    expect(review.attempts).toHaveLength(1);
    expect(attempt!.remarks.map(({ text, voice, place }) => [text, voice?.mime ?? null, place.kind])).toEqual(
      [
        ['Let the thumb go <b>under</b> earlier.', null, 'note'],
        ['', expect.stringMatching(/^audio\//), 'attempt'],
      ],
    );
    expect(attempt!.corrections).toMatchObject([
      { verdict: 'wrong', why: 'It was a D.', place: { kind: 'note' } },
    ]);
    expect(attempt!.sound?.mime).toMatch(/^audio\//);

    const [sheet] = await Promise.all([
      page.waitForEvent('download'),
      mara.getByRole('button', { name: 'Save as a web page' }).click(),
    ]);
    const html = new TextDecoder().decode(await bytesOf(sheet));
    expect(html).toContain('&lt;b&gt;under&lt;/b&gt;');
    expect(html).not.toMatch(/<script|<b>under/);
    await page.locator('label', { hasText: /^\s*All\s*$/ }).click();
    await page.getByText('answered').first().waitFor();

    await page.reload();
    await page.locator('label', { hasText: /^\s*All\s*$/ }).click();
    await hear(page, /A♭ major/);
    await page.getByRole('button', { name: /^Remark 1/ }).waitFor();
    expect(errors).toEqual([]);
    await close();
  });

  it('may be of another exercise than the tool took it for; both readings are kept', async () => {
    const { page, errors, close } = await visitTeacher();
    await give(page);
    await allSorted(page);
    await hear(page, /E major scale/);
    const before = await page.locator('#verdict').innerText();
    await page.getByText('Correct the tool').click();
    await page.locator('label', { hasText: /^\s*Left\s*$/ }).click();
    await page.getByRole('button', { name: 'Measure it as this' }).click();
    await page.getByText('You chose the exercise.').waitFor();
    await page.locator('.where', { hasText: 'left hand' }).waitFor();
    await page.getByRole('button', { name: 'Back to what the tool took it for' }).click();
    await page.locator('.where', { hasText: 'right hand' }).waitFor();
    await expect.poll(() => page.locator('#verdict').innerText()).toBe(before);
    expect(errors).toEqual([]);
    await close();
  });
});

describe('the page for teachers', () => {
  it('is gone through by the keyboard alone, from the list to a remark and back', async () => {
    const { page, errors, close } = await visitTeacher();
    await give(page);
    await allSorted(page);
    await page.getByRole('button', { name: 'Choose files' }).focus();
    for (let presses = 0; presses < 40; presses += 1) {
      if (await page.evaluate(() => document.activeElement?.hasAttribute('data-playing') === true)) break;
      await page.keyboard.press('Tab');
    }
    await page.keyboard.press('Enter');
    await page.locator('[data-spot]').first().waitFor();
    await expect.poll(() => page.evaluate(() => document.activeElement?.id)).toBe('verdict');
    await page.keyboard.press('l');
    await expect.poll(() => page.getByLabel('again and again').isChecked()).toBe(true);
    await seesPass(page, SOUNDING, () => page.keyboard.press('ArrowRight'));
    await page.keyboard.press('h');
    await expect.poll(() => page.getByLabel('half speed').isChecked()).toBe(true);
    await page.keyboard.press('Space');
    await page.getByRole('button', { name: 'Play it all' }).waitFor();
    await page.keyboard.press('r');
    await page.keyboard.type('hello, a little later');
    await expect.poll(() => page.getByLabel('Your remark').inputValue()).toBe('hello, a little later');
    await page.keyboard.press('Tab');
    await page.keyboard.press('Tab');
    await page.keyboard.press('Enter');
    await page.getByText('hello, a little later').waitFor();
    await page.keyboard.press('Shift+ArrowRight');
    await page.getByText('Attempt 2 of 3').waitFor();
    await page.locator('[data-spot]').first().waitFor();
    await page.keyboard.press('r');
    await page.keyboard.type('one more');
    // Left before the remark can be stored: it is kept, and nothing of it is begun.
    await page.evaluate(() => {
      document.querySelector<HTMLTextAreaElement>('[data-remark]')!.form!.requestSubmit();
      document.body.dispatchEvent(new KeyboardEvent('keydown', { key: 'Escape', bubbles: true }));
    });
    await page.getByRole('heading', { name: 'For teachers' }).waitFor();
    await expect
      .poll(() => page.evaluate(() => document.activeElement?.hasAttribute('data-playing')))
      .toBe(true);
    await page.keyboard.press('Enter');
    await page.getByText('one more').waitFor();
    await expect.poll(() => page.getByLabel('Your remark').inputValue()).toBe('');
    expect(errors).toEqual([]);
    await close();
  });

  it.each(['en', 'de'] as const)(
    'fits all sizes, light and dark, and axe finds nothing, in %s',
    async (language) => {
      const { page, close } = await visitTeacher({
        before: (fresh) =>
          fresh.addInitScript((chosen) => localStorage.setItem('evenfall-language', chosen), language),
      });
      const folderInput = page.locator('input[webkitdirectory]');
      await folderInput.setInputFiles(join(folder, 'Week 12'));
      await allSorted(page);
      for (const fold of await page.locator('.students summary').all()) await fold.click();
      await nothingWrongAtAnySize(page);
      await hear(page, /A(♭|s)/);
      for (const fold of await page.locator('article > details > summary').all()) await fold.click();
      await nothingWrongAtAnySize(page);
      await close();
    },
  );
});
