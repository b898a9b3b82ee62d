import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, inject, it } from 'vitest';
import { encodeWav } from '../../src/io/encode/index.ts';
import type { Outcome } from './sorting/page.ts';
import { fixturePath, fixtureSound } from './sounds.ts';
import { sharedBrowser, visit } from './visit.ts';

const SAMPLES = resolve(import.meta.dirname, '../io/decode/samples');
const folder = mkdtempSync(join(tmpdir(), 'evenfall-'));
let browser: Browser;
const pageUrl = `${inject('workshopUrl')}tests/browser/sorting/page.html`;

beforeAll(async () => {
  browser = await sharedBrowser();
});
afterAll(async () => {
  rmSync(folder, { recursive: true });
});

/** Two attempts with three seconds of silence between them, as a WAV. */
async function twoInOne(): Promise<string> {
  const [first, second] = [await fixtureSound('clean-scale'), await fixtureSound('left-hand')];
  const pause = 3 * first.sampleRateHz;
  const a = first.channels[0]!;
  const b = second.channels[0]!;
  const sound = new Float32Array(a.length + pause + b.length);
  sound.set(a, 0);
  sound.set(b, a.length + pause);
  const path = join(folder, 'two.wav');
  writeFileSync(path, new Uint8Array(encodeWav({ channels: [sound], sampleRateHz: first.sampleRateHz })));
  return path;
}

/** A copy in which only the first half is there. */
function broken(): string {
  const path = join(folder, 'broken.m4a');
  writeFileSync(path, readFileSync(join(SAMPLES, 'aac-mono.m4a')).subarray(40, 600));
  return path;
}

describe('the sorters in the browser', () => {
  it('find the attempts of files of many kinds, and one bad file stops none of them', async () => {
    const { page, errors, close } = await visit(browser, pageUrl);
    const samples = [
      'aac-mono.m4a',
      'aac-stereo.m4a',
      'opus-stereo.webm',
      'mp3-stereo.mp3',
      'video.mp4',
      'flac-s24.flac',
    ];
    const files = [
      fixturePath('late-thumb'),
      broken(),
      await twoInOne(),
      fixturePath('progression'),
      ...samples.map((name) => join(SAMPLES, name)),
    ];
    await page.locator('input').setInputFiles(files);
    const outcomes = await page.evaluate(() => window.sorting.sortChosen());
    const [thumb, bad, two, progression, ...others] = outcomes as readonly Outcome[];
    expect(thumb!.titles).toEqual(['A♭ major · tonic arpeggio, two octaves · right hand']);
    expect(thumb!.shares.at(-1)).toBe(1);
    expect(bad!.titles).toMatch(/^broken\.m4a: /);
    expect(two!.titles).toHaveLength(2);
    expect(two!.titles[0]).toMatch(/^E major · scale/);
    expect(two!.titles[1]).toMatch(/left hand$/);
    for (const sec of two!.soundSec) expect(sec).toBeLessThan(two!.durationSec - 3);
    expect(progression!.titles[0]).toMatch(/progression/);
    for (const one of others) {
      expect(one.titles, one.name).toBeInstanceOf(Array);
      expect(one.durationSec, one.name).toBeGreaterThan(0.2);
    }
    expect(errors).toEqual([]);
    await close();
  });

  it('stop at once when called off, say so of each file, and go on when asked again', async () => {
    const { page, close } = await visit(browser, pageUrl);
    const files = ['late-thumb', 'progression', 'left-hand', 'restart', 'clean-scale'].map(fixturePath);
    const copies = files.map((file, index) => {
      const path = join(folder, `${index}.wav`);
      writeFileSync(path, readFileSync(file));
      return path;
    });
    await page.locator('input').setInputFiles(copies);
    const stopped = await page.evaluate(() => window.sorting.sortAndCancel());
    expect(stopped.at(-1)!.titles).toMatch(/called off/);
    const again = await page.evaluate(() => window.sorting.sortChosen());
    for (const { titles } of again) expect(titles).toHaveLength(1);
    await close();
  });
});
