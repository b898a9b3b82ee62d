import { readFileSync } from 'node:fs';
import { zipSync } from 'fflate';
import type { Browser, Download, Page } from 'playwright-core';
import { beforeAll, describe, expect, inject, it } from 'vitest';
import { readReview } from '../../../src/io/review/index.ts';
import { nothingWrongAtAnySize } from '../axe.ts';
import { openEmptyJournal, openSeededJournal } from '../journal/scenes.ts';
import { fixturePath } from '../sounds.ts';
import { choose, sharedBrowser, verdictOf, visit } from '../visit.ts';
import { asFile, review } from './made.ts';

const site = inject('siteUrl');
let browser: Browser;
beforeAll(async () => {
  browser = await sharedBrowser();
});

type Made = Awaited<ReturnType<typeof asFile>>;
const openOnPlay = (page: Page, file: Made) => page.getByLabel('A recording to open').setInputFiles(file);
const openInJournal = (page: Page, file: Made) => page.getByLabel('A review to open').setInputFiles(file);
const shown = (page: Page) => page.getByRole('heading', { name: 'From Ms Ley' }).waitFor();
const back = (page: Page) => page.getByRole('button', { name: 'The journal' }).click();
const received = (page: Page) => page.locator('section[aria-labelledby="from-teacher"]');
const planned = (page: Page) => page.locator('#today ~ ol > li');

async function dropOn(page: Page, file: Made): Promise<void> {
  const transfer = await page.evaluateHandle(
    ({ name, mimeType, bytes }) => {
      const made = new DataTransfer();
      made.items.add(new File([new Uint8Array(bytes)], name, { type: mimeType }));
      return made;
    },
    { name: file.name, mimeType: file.mimeType, bytes: [...file.buffer] },
  );
  await page.dispatchEvent('body', 'drop', { dataTransfer: transfer });
}

const fileOf = async (download: Download): Promise<Blob> => new Blob([readFileSync(await download.path())]);

describe('a review from a teacher', () => {
  it('is printed from its page, a sheet an attempt', async () => {
    const { page, errors, close } = await visit(browser, site, { width: 390, height: 844 });
    await openOnPlay(page, await asFile(review()));
    await shown(page);
    await page.evaluate(() => {
      window.print = () => document.body.setAttribute('data-printed', '');
    });
    await page.getByRole('button', { name: 'Print it' }).click();
    await page.locator('body[data-printed]').waitFor();
    const pdf = (await page.pdf({ format: 'A4', preferCSSPageSize: true })).toString('latin1');
    expect(pdf.match(/\/Type\s*\/Page\b(?!s)/g)).toHaveLength(3);
    expect(errors).toEqual([]);
    await close();
  });

  it('is opened like a recording, is shown, and what it assigns comes first in the plan', async () => {
    const { page, errors, close } = await visit(browser, site);
    await openOnPlay(page, await asFile(review()));
    await shown(page);
    await expect.poll(() => page.getByText('Good work this week.').innerText()).toMatch(/\nTwo things/);
    await page.getByText('Let the thumb travel').first().waitFor();
    await page.getByRole('button', { name: 'The next one' }).click();
    await page.getByText('Hands apart again for now.').first().waitFor();
    await back(page);
    await expect.poll(() => planned(page).count()).toBe(2);
    await expect
      .poll(() => planned(page).first().innerText())
      .toMatch(
        /D major scale, 2\soctaves, right hand\s+.*♩\s=\s72\. Your teacher asks for it\. Not played since/,
      );
    await expect
      .poll(() => received(page).innerText())
      .toMatch(
        /D major scale, 2\soctaves, right hand\s+Listen to the turn at the top\.\s+♩ = 72, twice in a row, variation 6\.5\s?% at most\. Not played since\./,
      );
    expect(errors).toEqual([]);
    await page.reload();
    await expect.poll(() => planned(page).count()).toBe(2);
    await expect.poll(() => received(page).innerText()).not.toMatch(/Not read yet/);
    await received(page)
      .getByRole('button', { name: /^From Ms Ley/ })
      .click();
    await shown(page);
    await close();
  });

  it('is opened by dropping it on the journal, and the same one twice is one', async () => {
    const { page, close } = await visit(browser, site);
    await openEmptyJournal(page);
    for (let times = 0; times < 2; times += 1) {
      await dropOn(page, await asFile(review()));
      await shown(page);
      await back(page);
      await received(page).locator('button.open').first().waitFor();
      await expect.poll(() => received(page).locator('button.open').count()).toBe(1);
    }
    await close();
  });

  it('that cannot be read is told of as one, on the journal where it was chosen', async () => {
    const { page, errors, close } = await visit(browser, site);
    await openEmptyJournal(page);
    await openInJournal(page, { ...(await asFile(review())), buffer: Buffer.from('broken on its way') });
    await expect
      .poll(() => page.getByRole('alert').allInnerTexts())
      .toEqual([expect.stringMatching(/This review cannot be opened.*damaged/s)]);
    expect(new URL(page.url()).hash).toBe('#journal');
    expect(errors).toEqual([]);
    await close();
  });

  it('may come with others, which are kept to be read', async () => {
    const { page, close } = await visit(browser, site);
    await openEmptyJournal(page);
    const older = review({ id: 'two', madeMs: Date.UTC(2026, 10, 17), assignment: [] });
    const files = [await asFile(review()), await asFile(older, 'older.zip')];
    await page.getByLabel('A review to open').setInputFiles(files);
    await shown(page);
    await back(page);
    await received(page).locator('button.open').nth(1).waitFor();
    const lines = await received(page).locator('button.open').allInnerTexts();
    expect(lines[0]).not.toMatch(/Not read yet/);
    expect(lines[1]).toMatch(/17 Nov 2026\s+Not read yet\. Two attempts, four remarks/);
    await received(page).locator('button.open').nth(1).click();
    await shown(page);
    await back(page);
    await received(page).locator('button.open').nth(1).waitFor();
    await expect.poll(() => received(page).innerText()).not.toMatch(/Not read yet/);
    await close();
  });

  it('leads to playing what it asks for in one touch', async () => {
    const { page, close } = await visit(browser, site);
    await openOnPlay(page, await asFile(review()));
    await shown(page);
    await page
      .getByRole('button', { name: /^Play it/ })
      .first()
      .click();
    await page.getByRole('button', { name: 'Turn on the microphone' }).waitFor();
    await expect.poll(() => page.locator('#exercise').innerText()).toMatch(/^D major/);
    await close();
  });

  it('has what it asks for done once it is played so, and out of the plan', async () => {
    const { page, close } = await visit(browser, site);
    await openSeededJournal(page, 40);
    const exercise = { key: 'C major', form: 'arpeggio', hands: 'right', octaves: 2 } as const;
    const easy = { exercise, targetBpm: 60, inARow: 1, evennessPercent: 15, note: '' };
    const hard = { ...easy, exercise: { ...exercise, octaves: 1 }, targetBpm: 200 };
    const made = review({ madeMs: Date.now() - 3 * 86_400_000, assignment: [easy, hard] });
    await openInJournal(page, await asFile(made));
    await shown(page);
    await back(page);
    await expect.poll(() => received(page).innerText()).toMatch(/2\soctaves, right hand\s+.*Done, /);
    await expect
      .poll(() => received(page).innerText())
      .toMatch(/1\soctave, right hand\s+.*Last time it went at/);
    await expect
      .poll(() => planned(page).first().innerText())
      .toMatch(/1\soctave, right hand\s+.*Your teacher asks/);
    await expect
      .poll(() => page.locator('#today ~ ol').innerText())
      .not.toMatch(/2\soctaves, right hand\s+.*Your teacher/);
    await close();
  });

  it('that was deleted comes back with what it asked for', async () => {
    const { page, close } = await visit(browser, site);
    await openOnPlay(page, await asFile(review()));
    await shown(page);
    await back(page);
    const remove = received(page).getByRole('button', { name: /^Delete/ });
    await remove.click();
    await expect.poll(() => planned(page).first().innerText()).toMatch(/To begin with/);
    await page.getByRole('button', { name: 'Undo' }).click();
    await expect.poll(() => planned(page).first().innerText()).toMatch(/Your teacher asks/);
    await remove.click();
    await page.getByRole('button', { name: 'Undo' }).waitFor();
    await page.reload();
    await page.getByText('1 deleted review can be brought back').waitFor();
    await received(page).getByRole('button', { name: 'Bring back' }).click();
    await expect.poll(() => planned(page).first().innerText()).toMatch(/Your teacher asks/);
    await close();
  });

  it('that is damaged is refused with the reason, and nothing changes', async () => {
    const { page, errors, close } = await visit(browser, site);
    await openEmptyJournal(page);
    const whole = await asFile(review());
    const before = await received(page).innerText();
    await openInJournal(page, { ...whole, buffer: whole.buffer.subarray(0, whole.buffer.length - 400) });
    await page.getByRole('alert').getByText('could not be opened').waitFor();
    expect((await page.getByRole('alert').innerText()).length).toBeGreaterThan(60);
    await expect.poll(() => received(page).innerText()).toBe(before);
    await page.getByRole('button', { name: 'Close' }).click();
    await expect.poll(() => page.getByRole('alert').count()).toBe(0);
    expect(errors).toEqual([]);
    await close();
  });

  it('is told from attempts that somebody sends to a teacher, and from an archive of recordings', async () => {
    const { page, close } = await visit(browser, site);
    await openEmptyJournal(page);
    await openInJournal(page, await asFile(review({ kind: 'attempts' })));
    await page.getByRole('alert').getByText('For teachers').waitFor();
    await expect.poll(() => page.locator('button.open').count()).toBe(0);
    const buffer = Buffer.from(zipSync({ 'song.wav': new Uint8Array(100) }));
    const zip = { name: 'songs.zip', mimeType: 'application/zip', buffer };
    await openInJournal(page, zip);
    await page.getByText('It is a ZIP archive: unpack it first.').waitFor();
    await close();
  });
});

describe('attempts for a teacher', () => {
  it('go into one file: the newest of each exercise of late, without anything being sent', async () => {
    const { page, errors, strayRequests, close } = await visit(browser, site);
    await openSeededJournal(page, 60);
    await page.getByRole('button', { name: 'Send to my teacher' }).click();
    await page.getByRole('heading', { name: 'Send to my teacher' }).waitFor();
    const chosen = await page.getByRole('checkbox', { checked: true }).count();
    expect(chosen).toBeGreaterThan(1);
    await page
      .getByRole('checkbox')
      .nth(chosen + 3)
      .check();
    await page.getByLabel('Your name').fill('Mira Ohm');
    await page.getByLabel('A few words').fill('The left hand was hard.');
    await page.getByRole('button', { name: 'Make the file' }).click();
    await page.locator('#made').waitFor();
    const downloading = page.waitForEvent('download');
    await page.getByRole('button', { name: 'Save the file' }).click();
    const download = await downloading;
    expect(download.suggestedFilename()).toMatch(/^attempts-mira-ohm-\d{4}-\d\d-\d\d\.zip$/);
    const sent = await readReview(await fileOf(download));
    expect(sent).toMatchObject({
      kind: 'attempts',
      student: 'Mira Ohm',
      teacher: '',
      words: 'The left hand was hard.',
      assignment: [],
    });
    expect(sent.attempts).toHaveLength(chosen + 1);
    const times = sent.attempts.map(({ whenMs }) => whenMs ?? 0);
    expect(times).toEqual([...times].sort((a, b) => a - b));
    // What was changed after the file was made is not in it.
    await page.getByLabel('A few words').fill('');
    await expect.poll(() => page.getByRole('button', { name: 'Save the file' }).count()).toBe(0);
    expect([...errors, ...strayRequests]).toEqual([]);
    // Where it was left: what was begun is gone on with.
    await page.reload();
    await expect.poll(() => page.getByLabel('Your name').inputValue()).toBe('Mira Ohm');
    await close();
  });

  it('are handed to the system where it can pass files on', async () => {
    const { page, close } = await visit(browser, site, {
      before: (there) =>
        there.addInitScript(() => {
          const shared: string[] = [];
          Object.assign(navigator, {
            canShare: ({ files }: ShareData) => files?.length === 1,
            share: ({ files }: ShareData) => {
              shared.push(`${files![0]!.name} ${files![0]!.type}`);
              document.title = shared.join();
              return Promise.resolve();
            },
          });
        }),
    });
    await openSeededJournal(page, 20);
    await page.getByRole('button', { name: 'Send to my teacher' }).click();
    // Of these no sound is kept, so nobody is asked about it.
    await page.getByText(/with the report, without sound\./).waitFor();
    await expect.poll(() => page.getByRole('radio', { name: 'Without sound' }).count()).toBe(0);
    await page.getByRole('button', { name: 'Make the file' }).click();
    await page.getByRole('button', { name: 'Pass it on' }).click();
    await page.getByText('Handed to the system').waitFor();
    await expect.poll(() => page.title()).toMatch(/^attempts-[\d-]+\.zip application\/zip$/);
    await close();
  });

  it('can be one alone, from its report', async () => {
    const { page, close } = await visit(browser, site);
    await page.getByLabel('A recording to open').setInputFiles(fixturePath('late-thumb'));
    await verdictOf(page);
    await page.getByRole('button', { name: 'Put it in the journal' }).click();
    await page.getByRole('button', { name: 'Send this to my teacher' }).click();
    await page.getByText('1 attempt chosen').waitFor();
    await expect.poll(() => page.getByRole('checkbox', { checked: true }).count()).toBe(1);
    await page.getByRole('button', { name: 'Make the file' }).click();
    const downloading = page.waitForEvent('download');
    await page.getByRole('button', { name: 'Save the file' }).click();
    const sent = await readReview(await fileOf(await downloading));
    expect(sent.attempts).toHaveLength(1);
    expect(sent.attempts[0]!.sound?.bytes.length).toBeGreaterThan(10_000);
    await back(page);
    await page.locator('[data-row] button').first().click();
    await verdictOf(page);
    await page.getByRole('button', { name: 'Send this to my teacher' }).click();
    await page.getByText('1 attempt chosen').waitFor();
    await close();
  });
});

describe('the keyboard alone', () => {
  const tabTo = async (page: Page, name: RegExp): Promise<void> => {
    for (let presses = 0; presses < 120; presses += 1) {
      const at = await page.evaluate(() => {
        const here = document.activeElement as HTMLElement | null;
        if (here === null || here === document.body) return '';
        const label =
          here.closest('label')?.textContent ?? (here as HTMLInputElement).labels?.[0]?.textContent;
        return (label ?? here.textContent ?? '').replace(/\s+/g, ' ').trim();
      });
      if (name.test(at)) return;
      await page.keyboard.press('Tab');
    }
    throw new Error(`Tab never came to ${String(name)}`);
  };
  const focused = (page: Page) => page.evaluate(() => document.activeElement?.id ?? '');

  it('sends an attempt', async () => {
    const { page, close } = await visit(browser, site);
    await openSeededJournal(page, 12);
    await tabTo(page, /^Send to my teacher/);
    await page.keyboard.press('Enter');
    await expect.poll(() => focused(page)).toBe('send');
    await tabTo(page, /arpeggio/);
    await page.keyboard.press('Space');
    await tabTo(page, /^Your name/);
    await page.keyboard.type('Mira');
    await tabTo(page, /^Make the file/);
    await page.keyboard.press('Enter');
    await expect.poll(() => focused(page)).toBe('made');
    const downloading = page.waitForEvent('download');
    await tabTo(page, /^Save the file/);
    await page.keyboard.press('Enter');
    expect((await downloading).suggestedFilename()).toMatch(/^attempts-mira-/);
    await page.locator('#send').focus();
    await page.keyboard.press('Shift+Tab');
    await page.keyboard.press('Enter');
    await expect.poll(() => focused(page)).toBe('from-teacher');
    await close();
  });

  it('opens a review, goes through it, and comes back', async () => {
    const { page, close } = await visit(browser, site);
    await openEmptyJournal(page);
    const choosing = page.waitForEvent('filechooser');
    await tabTo(page, /^Open a review/);
    await page.keyboard.press('Enter');
    await (await choosing).setFiles(await asFile(review()));
    await expect.poll(() => focused(page)).toBe('review');
    await tabTo(page, /^The next one/);
    await page.keyboard.press('Enter');
    await expect.poll(() => focused(page)).toBe('attempt');
    await page.getByText('Hands apart again for now.').first().waitFor();
    await page.locator('#review').focus();
    await page.keyboard.press('Shift+Tab');
    // Past the button that prints.
    await page.keyboard.press('Shift+Tab');
    await page.keyboard.press('Enter');
    await expect.poll(() => focused(page)).toBe('from-teacher');
    await tabTo(page, /^From Ms Ley/);
    await page.keyboard.press('Enter');
    await expect.poll(() => focused(page)).toBe('review');
    await close();
  });
});

it('axe finds nothing wrong at any size, light or dark, and nothing lies beyond the edge', async () => {
  const { page, errors, close } = await visit(browser, site);
  const nothing = (): Promise<void> => nothingWrongAtAnySize(page);
  await openSeededJournal(page, 40);
  await openInJournal(page, await asFile(review()));
  await shown(page);
  await page.getByText('Let the thumb travel').first().waitFor();
  await nothing();
  await back(page);
  await received(page).locator('button.open').waitFor();
  await nothing();
  await page.getByRole('button', { name: 'Send to my teacher' }).click();
  await page.getByRole('button', { name: 'Make the file' }).click();
  await page.locator('#made').waitFor();
  await nothing();
  await choose(page.getByRole('radio', { name: 'Deutsch' }));
  await nothing();
  expect(errors).toEqual([]);
  await close();
});
