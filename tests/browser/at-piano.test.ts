import type { Page } from 'playwright-core';
import { describe, inject } from 'vitest';
import { violations } from './axe.ts';
import { hearWhole, it, play } from './hearing.ts';
import { microphoneOf } from './sounds.ts';
import { followStages, stagesUntilTold } from './stages.ts';
import { stored } from './stored.ts';
import { seesPass, visit } from './visit.ts';

const site = `${inject('siteUrl')}#stand`;
const state = (page: Page, words: RegExp): Promise<void> =>
  page.locator('.state', { hasText: words }).waitFor();
const listen = (page: Page): Promise<void> =>
  page.getByRole('button', { name: 'Listen', exact: true }).click();

const alert = (page: Page, words: RegExp): Promise<void> =>
  page.getByRole('alert').filter({ hasText: words }).waitFor();
/** Listens, and lets the WAV of `hearWhole` sound once the page waits for it. */
async function listenAndPlay(page: Page): Promise<void> {
  await page.getByLabel('Key', { exact: true }).selectOption('Ab major');
  await listen(page);
  await state(page, /Waiting for your first note/);
  await play(page);
}

const ATTEMPTS = 3;

// Side by side: most of their time they wait for sound to be over.
describe.concurrent('at the piano', () => {
  it('hears three attempts in a row after three touches from the first visit, draws their pearls, and tells each', async ({
    hearing,
    expect,
  }) => {
    const path = await microphoneOf([{ name: 'late-thumb', atSec: 0 }], 7);
    const browser = await hearing(path);
    const { page, errors, strayRequests, close } = await visit(browser, inject('siteUrl'), {
      before: async (fresh) => {
        await hearWhole(fresh, path, true);
        await followStages(fresh);
      },
    });
    await page.getByRole('link', { name: 'At the piano' }).click();
    await page.getByLabel('Key', { exact: true }).selectOption('Ab major');
    await page.getByText('then only play').waitFor();
    await listen(page);
    await state(page, /Waiting for your first note/);
    await expect.poll(() => violations(page)).toEqual([]);
    for (let number = 1; number <= ATTEMPTS; number++) {
      // What its first guesses are drawn as is said beside the string that grows.
      await seesPass(page, '.ring', () => play(page), 'Empty ring: not sure yet');
      const stages = await stagesUntilTold(page, number);
      const { alerts, verdict, next } = stages.at(-1)!;
      const heard = stages.findLast(({ state }) => state === 'Listening');
      expect(heard!.pearls).toBeGreaterThanOrEqual(12);
      expect(verdict).toMatch(/The crossing comes late going up to C/);
      expect(next).toMatch(/^Next:/);
      expect(alerts).toEqual([]);
    }
    await expect.poll(() => violations(page)).toEqual([]);
    // Whoever does not see it is told, its signs written out.
    await expect
      .poll(() => page.locator('dialog p.unseen[role=status]').textContent())
      .toMatch(/The crossing comes late going up to C.* Next: only A flat, C, E flat, A flat/);
    await page.keyboard.press('Escape');
    await page.locator('[data-spot="12"]').waitFor();
    expect(errors).toEqual([]);
    expect(strayRequests).toEqual([]);
    await close();
  });

  it('that is refused says so plainly, with the way out', async ({ hearing, expect }) => {
    const browser = await hearing('refused');
    const { page, errors, close } = await visit(browser, site);
    await listen(page);
    await alert(page, /not allowed.*Allow it for this page/s);
    await page.getByRole('button', { name: 'Listen', exact: true }).waitFor();
    expect(errors).toEqual([]);
    await close();
  });

  it('without a microphone says that there is none', async ({ hearing }) => {
    const browser = await hearing();
    const { page, close } = await visit(browser, site);
    await listen(page);
    await alert(page, /No microphone was found/);
    await close();
  });

  it('with processing that cannot be switched off flags the attempt', async ({ hearing }) => {
    const path = await microphoneOf([{ name: 'late-thumb', atSec: 0 }], 7);
    const browser = await hearing(path);
    const { page, close } = await visit(browser, site, {
      before: async (fresh) => {
        await hearWhole(fresh, path, true);
        await fresh.addInitScript(() => {
          const settings = MediaStreamTrack.prototype.getSettings;
          MediaStreamTrack.prototype.getSettings = function () {
            return { ...settings.call(this), noiseSuppression: true };
          };
        });
      },
    });
    await listenAndPlay(page);
    await state(page, /Attempt 1/);
    await page.getByRole('button', { name: 'Stop' }).click();
    await page.getByText('The device recorded with noise suppression on').waitFor();
    await close();
  });

  it('whose microphone is unplugged in the middle tells what was heard, and goes on when it is back', async ({
    hearing,
    expect,
  }) => {
    const path = await microphoneOf([{ name: 'late-thumb', atSec: 0 }], 7);
    const browser = await hearing(path);
    const { page, errors, close } = await visit(browser, site, {
      before: async (fresh) => {
        await hearWhole(fresh, path, true);
        await fresh.addInitScript(() => {
          const ask = navigator.mediaDevices.getUserMedia.bind(navigator.mediaDevices);
          navigator.mediaDevices.getUserMedia = async (constraints) => {
            const stream = await ask(constraints);
            (window as unknown as { track: MediaStreamTrack }).track = stream.getAudioTracks()[0]!;
            return stream;
          };
        });
      },
    });
    await listenAndPlay(page);
    await page.locator('circle.struck').nth(6).waitFor();
    // As the system does it when a plug is pulled (Media Capture and Streams, W3C): the track ends and says so.
    await page.evaluate(() => {
      const { track, hush } = window as unknown as { track: MediaStreamTrack; hush: () => void };
      hush();
      track.stop();
      track.dispatchEvent(new Event('ended'));
    });
    await state(page, /Not listening/);
    await alert(page, /microphone is gone/);
    await page.locator('#verdict').waitFor();
    await expect.poll(() => page.locator('#verdict').innerText()).not.toBe('');
    await page.evaluate(() => navigator.mediaDevices.dispatchEvent(new Event('devicechange')));
    await state(page, /Attempt 1\. Ready for the next/);
    expect(errors).toEqual([]);
    await close();
  });

  it('checks the room by silence and notes, says how the place is, and remembers the piano', async ({
    hearing,
    expect,
  }) => {
    // Silence, then three notes of an arpeggio that is played too fast for the check: it asks anew for each.
    const path = await microphoneOf(
      [
        { name: 'late-thumb', atSec: 0 },
        { name: 'left-hand', atSec: 7 },
        { name: 'clean-scale', atSec: 14 },
      ],
      22,
    );
    const browser = await hearing(path);
    const { page, errors, close } = await visit(browser, site, {
      before: (fresh) => hearWhole(fresh, path, true),
    });
    await page.getByRole('button', { name: 'Check the room' }).click();
    await page.getByText('Be quite still').waitFor();
    await page.getByText('Play one low note').waitFor();
    await page.getByText('Note 1 of 3').waitFor();
    expect(await page.locator('dialog [role=meter]').count()).toBe(1);
    await play(page);
    await page.getByRole('button', { name: 'Done' }).waitFor();
    await expect.poll(() => page.locator('.title').innerText()).toMatch(/good place|can be better/);
    await expect.poll(() => violations(page)).toEqual([]);
    await page.getByRole('button', { name: 'Done' }).click();
    await page.getByText(/The piano stands at A = /).waitFor();
    await page.reload();
    await page.getByText(/The piano stands at A = /).waitFor();
    await page.getByRole('button', { name: 'Another piano' }).click();
    await expect.poll(() => page.getByText(/The piano stands at A = /).count()).toBe(0);
    expect(errors).toEqual([]);
    await close();
  });

  it('reloaded in the middle of an attempt loses nothing of it', async ({ hearing, expect }) => {
    // It breaks off after ten of its thirteen notes, and the rest is waited for: a slow machine too is still in the middle of it.
    const path = await microphoneOf([{ name: 'late-thumb', atSec: 0 }], 4);
    const browser = await hearing(path);
    const { page, errors, close } = await visit(browser, site, {
      before: (fresh) => hearWhole(fresh, path, true),
    });
    await listenAndPlay(page);
    const heard = page.locator('circle.struck');
    await heard.nth(8).waitFor();
    const before = await heard.count();
    // The music stays while the string grows.
    expect(await page.locator('dialog .music svg').count()).toBe(1);
    await page.reload();
    await page.locator('article #verdict').waitFor();
    await page.getByText('The page was closed during this attempt').waitFor();
    await expect.poll(() => page.locator('.where').innerText()).toMatch(/A♭ major/);
    await page.locator('[data-spot]').first().waitFor();
    await page.getByText('Every note, as a table').click();
    const rows = page.locator('tbody tr').filter({ hasNotText: 'missed' });
    await rows.nth(before - 1).waitFor();
    // It is told once: nothing is left behind for another page to find.
    const leftBehind = (): Promise<unknown> => stored(page, 'evenfall-unfinished', 'attempts');
    await expect.poll(leftBehind, { message: 'attempts left behind' }).toEqual([]);
    await page.reload();
    await page.getByRole('heading', { name: 'At the piano' }).waitFor();
    await expect.poll(() => page.locator('article').count()).toBe(0);
    expect(errors).toEqual([]);
    await close();
  });
});
