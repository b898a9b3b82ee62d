/**
 * How fast a pile is sorted: `npm run build && npm run bench:desk-speed`. Thirty recordings of a minute, made once (minutes) and
 * kept; by the built command and by the page's workers in Chromium, two at a time. Prints wall clock, processor time of all
 * processes, peak memory and the longest task on the page's own thread. Never fails. With other programs at work the wall clock
 * says little: the load is printed beside it.
 */
import { spawnSync } from 'node:child_process';
import { existsSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { cpus, loadavg, tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import { serveWorkshop } from '../browser/site.ts';
import { mainThreadTasks } from './page-tasks.ts';
import { openBrowser, visit } from '../browser/visit.ts';
import { pile, RECORDINGS, SECONDS } from './desk-pile.ts';
import { peakMbOf } from './peak-memory.ts';
import { fixed, table } from './table.ts';

const COMMAND = resolve(import.meta.dirname, '../../dist/cli/evenfall.js');
const WORKERS = 2;
const MB = 1024 * 1024;

interface Row {
  readonly what: string;
  readonly wallSec: number;
  readonly processorSec: number | null;
  readonly peakMb: number;
  readonly attempts: number;
  readonly longestTaskMs: number | null;
}

const { folder, files } = await pile();
console.log(
  `${cpus()[0]?.model ?? 'unknown processor'}, ${cpus().length} cores, Node ${process.version}, load ${loadavg()[0]!.toFixed(1)}: ` +
    `${RECORDINGS} recordings of ${SECONDS} s, ${WORKERS} workers\n`,
);
const rows = [...(existsSync(COMMAND) ? [byCommand('--fresh'), byCommand('')] : []), await byPage()];
console.log(
  table(
    ['', 'wall clock', 'times real time', 'processor', 'peak memory', 'attempts', 'longest task of the page'],
    rows.map(({ what, wallSec, processorSec, peakMb, attempts, longestTaskMs }) => [
      what,
      `${fixed(wallSec, 1)} s`,
      fixed((RECORDINGS * SECONDS) / wallSec, 0),
      processorSec === null ? '' : `${fixed(processorSec, 1)} s`,
      `${fixed(peakMb, 0)} MB`,
      String(attempts),
      longestTaskMs === null ? '' : `${fixed(longestTaskMs, 0)} ms`,
    ]),
  ),
);
if (!existsSync(COMMAND)) console.log('\ndist/cli/evenfall.js is not there: `npm run build` first.');

/** Each process tells its own peak and its processor time when it ends; peaks are added up, though not all at one moment. */
function byCommand(fresh: '--fresh' | ''): Row {
  const aside = mkdtempSync(join(tmpdir(), 'evenfall-'));
  const told = join(aside, 'told');
  const telling =
    `import{appendFileSync}from'node:fs';process.on('exit',()=>{const r=process.resourceUsage();` +
    `appendFileSync(${JSON.stringify(told)},r.maxRSS+' '+(r.userCPUTime+r.systemCPUTime)+'\\n')})`;
  const preload = join(aside, 'telling.mjs');
  writeFileSync(preload, telling);
  const beganMs = performance.now();
  const { stdout } = spawnSync(
    process.execPath,
    [COMMAND, 'desk', folder, '--workers', String(WORKERS), '--json', ...(fresh === '' ? [] : [fresh])],
    {
      encoding: 'utf8',
      maxBuffer: 256 * MB,
      env: {
        ...process.env,
        NODE_OPTIONS: `--import ${preload}`,
        XDG_CACHE_HOME: join(folder, '../evenfall-desk-kept'),
      },
    },
  );
  const wallSec = (performance.now() - beganMs) / 1000;
  const lines = readFileSync(told, 'utf8').trim().split('\n');
  const sums = lines
    .map((line) => line.split(' ').map(Number))
    .reduce((a, b) => [a[0]! + b[0]!, a[1]! + b[1]!]);
  rmSync(aside, { recursive: true });
  const { students } = JSON.parse(stdout) as { students: { attempts: unknown[] }[] };
  return {
    what: fresh === '' ? 'the command, again (results kept)' : 'the command',
    wallSec,
    processorSec: sums[1]! / 1e6,
    peakMb: (sums[0]! * 1024) / MB,
    attempts: students.reduce((sum, { attempts }) => sum + attempts.length, 0),
    longestTaskMs: null,
  };
}

async function byPage(): Promise<Row> {
  const site = await serveWorkshop();
  const browser = await openBrowser();
  const { page, close } = await visit(
    browser,
    `${site.url}tests/browser/sorting/page.html?workers=${WORKERS}`,
  );
  await page.locator('input').setInputFiles([...files]);
  const session = await browser.newBrowserCDPSession();
  let attempts = 0;
  let wallSec = 0;
  const tasks = await mainThreadTasks(browser, async () => {
    const outcomes = await page.evaluate(() => window.sorting.sortChosen());
    wallSec = Math.max(...outcomes.map(({ doneMs }) => doneMs)) / 1000;
    attempts = outcomes.reduce((sum, { soundSec }) => sum + soundSec.length, 0);
  });
  const { processInfo } = await session.send('SystemInfo.getProcessInfo');
  // Whole processes: some 110 MB of it is Chromium's program, which all of them share.
  const peaks = processInfo.filter(({ type }) => type === 'renderer').map(({ id }) => peakMbOf(id));
  await close();
  await browser.close();
  await site.close();
  return {
    what: 'the page’s workers, Chromium',
    wallSec,
    processorSec: null,
    peakMb: Math.max(...peaks),
    attempts,
    longestTaskMs: tasks[0]?.workMs ?? null,
  };
}
