import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Browser, Page } from 'playwright-core';
import { afterAll, describe, inject } from 'vitest';
import { assess } from '../../src/engine/index.ts';
import type { Assessment } from '../../src/engine/index.ts';
import { quantile } from '../../src/engine/base/statistics.ts';
import { encodeFloatWav } from '../support/float-wav.ts';
import { hearWhole, it } from './hearing.ts';
import type { Heard, Until } from './listening/page.ts';
import { fixtureSound } from './sounds.ts';
import { visit } from './visit.ts';

const pageUrl = `${inject('workshopUrl')}tests/browser/listening/page.html`;
const folder = mkdtempSync(join(tmpdir(), 'evenfall-'));
afterAll(() => rmSync(folder, { recursive: true }));

/** Fixtures one after the other as a microphone hears them, four seconds of silence after each; and where each begins. */
async function sitting(names: readonly string[]): Promise<string> {
  const parts = await Promise.all(names.map(fixtureSound));
  const { sampleRateHz } = parts[0]!;
  const pause = 4 * sampleRateHz;
  const length = parts.reduce((sum, { channels }) => sum + channels[0]!.length + pause, sampleRateHz);
  const sound = new Float32Array(length);
  let at = sampleRateHz;
  for (const { channels } of parts) {
    sound.set(channels[0]!, at);
    at += channels[0]!.length + pause;
  }
  const path = join(mkdtempSync(join(folder, 'sitting-')), 'microphone.wav');
  writeFileSync(path, Buffer.from(encodeFloatWav({ channels: [sound], sampleRateHz })));
  return path;
}

/** Where in a sound the file's begins, sample by sample, each as near as `off`; −1: nowhere. */
function foundAt(sound: readonly number[], part: Float32Array, off = 0): number {
  return sound.findIndex((_, at) => part.every((value, j) => Math.abs(value - sound[at + j]!) <= off));
}

/**
 * A buffer that the page itself plays begins at a time in seconds, and one start in thirteen is not a whole sample after rounding:
 * Chromium then goes 1e-12 of the way to the next sample. Less than any device's converter tells apart (24 bits) is no change.
 */
const PLAYED = 2 ** -24;

async function open(
  browser: Browser,
  before: (page: Page) => Promise<unknown> = () => Promise.resolve(),
): Promise<{ page: Page; errors: readonly string[] }> {
  const { page, errors } = await visit(browser, pageUrl, { before });
  await page.waitForFunction(() => 'listening' in window);
  return { page, errors };
}
const listenUntil = (page: Page, until: Partial<Until>): Promise<Heard> =>
  page.evaluate((one) => window.listening.listenUntil(one), {
    attempts: 1000,
    seconds: 25,
    loseAfterSec: null,
    ...until,
  });
const notesOf = (assessment: Assessment) => assessment.heard.notes;

// Side by side: most of their time they wait for sound to be over.
describe.concurrent('listening live in a browser, a WAV as microphone', () => {
  it('finds two attempts hands free, without a gap, and hears in each what the file gives, onset by onset', async ({
    hearing,
    expect,
  }) => {
    const names = ['late-thumb', 'clean-scale'];
    const files = await Promise.all(names.map(fixtureSound));
    const path = await sitting(names);
    const { page, errors } = await open(await hearing(path), (one) => hearWhole(one, path));
    const heard = await listenUntil(page, { attempts: names.length });
    expect(errors).toEqual([]);
    expect(heard.broken).toBe(0);
    expect(heard.processing).toEqual([]);
    expect(heard.attempts).toHaveLength(names.length);
    files.forEach((file, i) => {
      const { assessment, sound } = heard.attempts[i]!;
      const fromFile = assess(file, null);
      const live = notesOf(assessment);
      // From its first loud sample on, until the attempt is over: 0.8 s after its last note and more.
      const overSec = Math.max(...notesOf(fromFile).map(({ timeSec }) => timeSec)) + 0.8;
      const [samples] = file.channels;
      const first = samples!.findIndex((value) => Math.abs(value) > 0.05);
      expect(
        foundAt(sound, samples!.slice(first, overSec * file.sampleRateHz), PLAYED),
      ).toBeGreaterThanOrEqual(0);
      expect(live.map(({ midi }) => midi)).toEqual(notesOf(fromFile).map(({ midi }) => midi));
      const shifts = live.map(({ timeSec }, n) => timeSec - notesOf(fromFile)[n]!.timeSec);
      const middle = quantile(shifts, 0.5)!;
      const largestMs = 1000 * Math.max(...shifts.map((shift) => Math.abs(shift - middle)));
      expect(largestMs).toBeLessThan(1);
      if (assessment.kind !== 'report' || fromFile.kind !== 'report')
        throw new Error(`${names[i]}: ${assessment.kind}, from the file ${fromFile.kind}`);
      expect(assessment.report.words.verdict).toBe(fromFile.report.words.verdict);
    });
    expect(heard.early.length).toBeGreaterThan(20);
  });

  it('takes what the device gives as it is, bit by bit', async ({ hearing, expect }) => {
    const [file] = await Promise.all(['late-thumb'].map(fixtureSound));
    const { page } = await open(await hearing(await sitting(['late-thumb'])));
    const { attempts } = await listenUntil(page, { attempts: 1 });
    // The browser's own stand-in for a device drops a moment now and then on a busy machine: the others are as they were.
    const moments = Array.from({ length: 20 }, (_, at) =>
      file!.channels[0]!.slice(44_100 + at * 8820, 44_100 + at * 8820 + 2205),
    );
    const whole = moments.filter((moment) => foundAt(attempts[0]!.sound, moment) >= 0);
    expect(whole.length).toBeGreaterThanOrEqual(moments.length / 2);
  });

  it('tells that the device is gone in the middle of an attempt, and keeps and analyses what came before', async ({
    hearing,
    expect,
  }) => {
    const { page } = await open(await hearing(await sitting(['late-thumb', 'clean-scale'])));
    const heard = await listenUntil(page, { loseAfterSec: 4.5 });
    expect(heard.troubles.map(({ kind }) => kind)).toEqual(['gone']);
    expect(heard.attempts).toHaveLength(1);
    const { assessment } = heard.attempts[0]!;
    expect(notesOf(assessment).length).toBeGreaterThan(5);
    expect(notesOf(assessment).length).toBeLessThan(25);
    expect(heard.broken).toBe(0);
  });

  it('tells what processing the device leaves on (its settings are stood in for: the fake one obeys)', async ({
    hearing,
    expect,
  }) => {
    const { page } = await open(await hearing(await sitting(['late-thumb'])), (one) =>
      one.addInitScript(() => {
        const settings = MediaStreamTrack.prototype.getSettings;
        MediaStreamTrack.prototype.getSettings = function (this: MediaStreamTrack) {
          return { ...settings.call(this), noiseSuppression: true, autoGainControl: true };
        };
      }),
    );
    const heard = await listenUntil(page, { seconds: 1 });
    expect(heard.processing).toEqual([
      { notice: 'device-processing', by: 'noise-suppression' },
      { notice: 'device-processing', by: 'automatic-gain' },
    ]);
  });

  it('says that it was refused', async ({ hearing, expect }) => {
    const { page } = await open(await hearing('refused'));
    expect(await page.evaluate(() => window.listening.open())).toBe('microphone-denied');
  });

  it('says that there is no microphone', async ({ hearing, expect }) => {
    const { page } = await open(await hearing(), (one) => one.context().grantPermissions(['microphone']));
    expect(await page.evaluate(() => window.listening.open())).toBe('microphone-none');
  });
});
