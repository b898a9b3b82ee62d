/**
 * What the page needs while somebody goes on playing at the piano: `npm run bench:memory -- [MINUTES]` (three; twenty is a day's
 * practice). In Chromium on the built page a sitting of short attempts sounds round and round in the microphone's place; after each
 * sixth of the time garbage is collected everywhere and what is left is counted. Prints; never fails.
 */
import { mkdtempSync, readFileSync, writeFileSync } from 'node:fs';
import { loadavg, tmpdir } from 'node:os';
import { join } from 'node:path';
import { setTimeout as pause } from 'node:timers/promises';
import type { Page } from 'playwright-core';
import { encodeFloatWav } from '../support/float-wav.ts';
import { hearWhole, play } from '../browser/sounding.ts';
import { serveSite } from '../browser/site.ts';
import { openBrowser, visit } from '../browser/visit.ts';
import { render } from '../support/render.ts';
import { joinSession } from '../support/session.ts';
import { spyOnListening, whatWasSpied } from './page-spy.ts';
import { fixed, table } from './table.ts';

const LOOKS = 6;
/** of different playing: even, uneven, with a late thumb */
const PLAYED = [
  { bpm: 120 },
  { bpm: 132, jitterMs: 22 },
  { bpm: 112, lateCrossing: { ms: 110, kind: 'thumb-under' } },
] as const;

interface Look {
  readonly minutes: number;
  readonly attempts: number;
  /** of the page: objects, and the bytes that they own */
  readonly heapMb: number;
  readonly buffersMb: number;
  /** the renderer with all its workers, as the system counts it */
  readonly residentMb: number;
  readonly nodes: number;
  readonly listeners: number;
  /** verdicts since the last look, ms */
  readonly verdictMs: readonly number[];
}

const minutes = Number(process.argv[2] ?? 3);
const site = await serveSite();
const wav = await sittingWav();
const browser = await openBrowser(wav, ['--js-flags=--expose-gc']);
const { page } = await visit(browser, `${site.url}#stand/c-major-arpeggio-right-1`, {
  before: async (fresh) => {
    await hearWhole(fresh, wav, true, true);
    await spyOnListening(fresh);
  },
});
await page.getByRole('button', { name: 'Listen', exact: true }).click();
await page.locator('.state', { hasText: 'Waiting for your first note' }).waitFor();
await play(page);
const beganMs = Date.now();
const looks: Look[] = [];
for (let look = 1; look <= LOOKS; look++) {
  await pause(beganMs + (look * minutes * 60_000) / LOOKS - Date.now());
  looks.push(await lookAt(page));
}
await browser.close();
await site.close();

console.log(`\nload ${loadavg()[0]!.toFixed(1)}; MB of 2^20 bytes, after collecting garbage\n`);
console.log(
  table(
    ['minutes', 'attempts', 'heap', 'buffers', 'resident', 'nodes', 'listeners', 'verdict, median ms'],
    looks.map((one) => [
      fixed(one.minutes, 1),
      String(one.attempts),
      ...[one.heapMb, one.buffersMb, one.residentMb].map((mb) => fixed(mb, 1)),
      String(one.nodes),
      String(one.listeners),
      fixed(one.verdictMs.toSorted((a, b) => a - b)[Math.floor(one.verdictMs.length / 2)], 0),
    ]),
  ),
);

/** Three attempts with a household between them → a WAV that can go round. */
async function sittingWav(): Promise<string> {
  const attempts = await Promise.all(
    PLAYED.map((student, seed) =>
      render({
        seed: 700 + seed,
        piano: 'dev',
        exercise: { key: 'C major', form: 'arpeggio', hands: 'right', octaves: 1 },
        student: { leadInSec: 0.3, leadOutSec: 0.4, ...student },
        home: { noises: [], peakDb: -8 },
      }),
    ),
  );
  const { channel, sampleRateHz } = joinSession(attempts, { seed: 3, pauseSec: { least: 2.6, most: 3 } });
  const path = join(mkdtempSync(join(tmpdir(), 'evenfall-')), 'sitting.wav');
  writeFileSync(path, new Uint8Array(encodeFloatWav({ channels: [channel], sampleRateHz })));
  return path;
}

async function lookAt(seen: Page): Promise<Look> {
  const session = await seen.context().newCDPSession(seen);
  await Promise.all(
    seen.workers().map((worker) => worker.evaluate(() => (globalThis as unknown as { gc: () => void }).gc())),
  );
  await session.send('HeapProfiler.collectGarbage');
  const heap = (await session.send('Runtime.getHeapUsage')) as {
    readonly usedSize: number;
    readonly backingStorageSize?: number;
  };
  await session.send('Performance.enable');
  const { metrics } = await session.send('Performance.getMetrics');
  const metric = (name: string): number => metrics.find((one) => one.name === name)?.value ?? NaN;
  await session.detach();
  const { verdictMs } = await whatWasSpied(seen);
  const told = looks.reduce((sum, one) => sum + one.verdictMs.length, 0);
  const inMb = (bytes: number): number => bytes / 2 ** 20;
  return {
    minutes: (Date.now() - beganMs) / 60_000,
    attempts: verdictMs.length,
    heapMb: inMb(heap.usedSize),
    buffersMb: inMb(heap.backingStorageSize ?? NaN),
    residentMb: await residentMb(),
    nodes: metric('Nodes'),
    listeners: metric('JSEventListeners'),
    verdictMs: verdictMs.slice(told),
  };
}

/** Of the largest process that draws a page (Linux). */
async function residentMb(): Promise<number> {
  const session = await browser.newBrowserCDPSession();
  const { processInfo } = await session.send('SystemInfo.getProcessInfo');
  await session.detach();
  const renderers = processInfo.filter(({ type }) => type === 'renderer');
  return Math.max(
    ...renderers.map(({ id }) => {
      const line = /VmRSS:\s+(\d+) kB/.exec(readFileSync(`/proc/${id}/status`, 'utf8'));
      return Number(line?.[1] ?? NaN) / 1024;
    }),
  );
}
