import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import type { Browser, Page } from 'playwright-core';
import { build, preview } from 'vite';
import type { PreviewServer } from 'vite';
import { afterAll, afterEach, beforeAll, describe, expect, it } from 'vitest';
import { assess } from '../../src/engine/index.ts';
import type { Assessment } from '../../src/engine/index.ts';
import { quantile } from '../../src/engine/base/statistics.ts';
import { encodeWav } from '../../src/io/exchange/index.ts';
import type { Heard } from './listening/page.ts';
import { fixtureSound } from './sounds.ts';
import { openBrowser, visit } from './visit.ts';

const ROOT = resolve(import.meta.dirname, '../..');
const folder = mkdtempSync(join(tmpdir(), 'evenfall-'));
let server: PreviewServer;
let pageUrl = '';
let browser: Browser | null = null;

beforeAll(async () => {
  const before = process.env['NODE_ENV'];
  process.env['NODE_ENV'] = 'production';
  await build({
    root: ROOT,
    mode: 'production',
    logLevel: 'warn',
    build: {
      outDir: join(folder, 'site'),
      rollupOptions: { input: resolve(import.meta.dirname, 'listening/page.html') },
    },
  });
  process.env['NODE_ENV'] = before;
  server = await preview({
    root: ROOT,
    logLevel: 'warn',
    build: { outDir: join(folder, 'site') },
    preview: { port: 0, host: '127.0.0.1', open: false },
  });
  pageUrl = `${server.resolvedUrls!.local[0]!}tests/browser/listening/page.html`;
});
afterAll(async () => {
  await server.close();
  rmSync(folder, { recursive: true });
});
afterEach(async () => {
  await browser?.close();
  browser = null;
});

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
  const path = join(folder, `${names.join('-')}.wav`);
  writeFileSync(path, Buffer.from(encodeWav({ channels: [sound], sampleRateHz }, { samples: 'float32' })));
  return path;
}

async function open(
  microphone: string | undefined,
  before?: (page: Page) => Promise<unknown>,
): Promise<{ page: Page; errors: readonly string[] }> {
  browser = await openBrowser(microphone);
  const { page, errors } = await visit(browser, pageUrl, before === undefined ? {} : { before });
  await page.waitForFunction(() => 'listening' in window);
  return { page, errors };
}
const listenFor = (page: Page, seconds: number, loseAfterSec?: number): Promise<Heard> =>
  page.evaluate(
    ([forSec, loseSec]) => window.listening.listenFor(forSec!, loseSec ?? Infinity),
    [seconds, loseAfterSec ?? null],
  );
const notesOf = (assessment: Assessment) => assessment.heard.notes;

describe('listening live in a browser, a WAV as microphone', () => {
  it('finds two attempts hands free, without a gap, and hears in each what the file gives, onset by onset', async () => {
    const names = ['late-thumb', 'clean-scale'];
    const { page, errors } = await open(await sitting(names));
    const heard = await listenFor(page, 25);
    expect(errors).toEqual([]);
    expect(heard.broken).toBe(0);
    expect(heard.troubles).toEqual([]);
    expect(heard.processing).toEqual([]);
    expect(Math.abs(heard.samples / heard.sampleRateHz - heard.seconds)).toBeLessThan(0.5);
    expect(heard.attempts.map(({ seconds }) => seconds)).toHaveLength(2);
    for (const [i, name] of names.entries()) {
      const { assessment, verdictMs } = heard.attempts[i]!;
      const file = assess(await fixtureSound(name), null);
      const live = notesOf(assessment);
      expect(live.map(({ midi }) => midi)).toEqual(notesOf(file).map(({ midi }) => midi));
      const shifts = live.map(({ timeSec }, n) => timeSec - notesOf(file)[n]!.timeSec);
      const middle = quantile(shifts, 0.5)!;
      console.log(
        `${name}: live against file, largest onset difference ` +
          `${(1000 * Math.max(...shifts.map((shift) => Math.abs(shift - middle)))).toFixed(2)} ms; verdict ${verdictMs.toFixed(0)} ms after the end was told`,
      );
      for (const shift of shifts) expect(Math.abs(shift - middle)).toBeLessThan(0.004);
      expect(assessment.kind === 'report' && file.kind === 'report').toBe(true);
      if (assessment.kind !== 'report' || file.kind !== 'report') return;
      expect(assessment.report.verdict).toEqual(file.report.verdict);
    }
    const drawn = heard.drawnMs.map(({ ms }) => ms);
    console.log(
      `pearls: ${drawn.length}, drawn ${quantile(drawn, 0.5)!.toFixed(0)} ms (median), ${quantile(drawn, 0.95)!.toFixed(0)} ms (95th) after their sample came`,
    );
    expect(drawn.length).toBeGreaterThan(20);
  });

  it('tells that the device is gone in the middle of an attempt, and keeps and analyses what came before', async () => {
    const { page } = await open(await sitting(['late-thumb', 'clean-scale']));
    const heard = await listenFor(page, 10, 4.5);
    expect(heard.troubles.map(({ kind }) => kind)).toEqual(['gone']);
    expect(heard.attempts).toHaveLength(1);
    const { assessment } = heard.attempts[0]!;
    expect(notesOf(assessment).length).toBeGreaterThan(5);
    expect(notesOf(assessment).length).toBeLessThan(25);
    expect(heard.broken).toBe(0);
  });

  it('tells what processing the device leaves on (its settings are stood in for: the fake one obeys)', async () => {
    const { page } = await open(await sitting(['late-thumb']), (one) =>
      one.addInitScript(() => {
        const settings = MediaStreamTrack.prototype.getSettings;
        MediaStreamTrack.prototype.getSettings = function (this: MediaStreamTrack) {
          return { ...settings.call(this), noiseSuppression: true, autoGainControl: true };
        };
      }),
    );
    const heard = await listenFor(page, 1);
    expect(heard.processing).toEqual(['noise suppression', 'automatic gain']);
  });

  it('says that it was refused', async () => {
    const { page } = await open('refused');
    expect(await page.evaluate(() => window.listening.open())).toBe('denied');
  });

  it('says that there is no microphone', async () => {
    const { page } = await open(undefined, (one) => one.context().grantPermissions(['microphone']));
    expect(await page.evaluate(() => window.listening.open())).toBe('none');
  });
});
