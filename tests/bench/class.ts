/**
 * A class on the page for teachers: `npm run bench:class [-- --students 40] [--each 4]`. Short recordings, four a student, given at once
 * to the built page in Chromium. Prints when the first attempt is listed and when all are, the page's memory, the longest task of its
 * main thread meanwhile, and how long the list takes when the page is opened again. Never fails; the load is printed beside it.
 */
import { mkdtempSync, rmSync } from 'node:fs';
import { loadavg, tmpdir } from 'node:os';
import { join } from 'node:path';
import { parseArgs } from 'node:util';
import { serveSite } from '../browser/site.ts';
import { openBrowser, visit } from '../browser/visit.ts';
import { mainThreadTasks } from './page-tasks.ts';
import { peakMbOf } from './peak-memory.ts';
import { writeShort } from './short-recordings.ts';
import { fixed, table } from './table.ts';

const { values } = parseArgs({
  options: { students: { type: 'string', default: '40' }, each: { type: 'string', default: '4' } },
});
const students = Number(values.students);
const recordings = students * Number(values.each);
/** it may take as long as it takes */
const timeout = 0;

const top = mkdtempSync(join(tmpdir(), 'evenfall-class-'));
await writeShort(join(top, 'Week 48'), recordings, students);
const site = await serveSite();
const browser = await openBrowser();
const { page, close } = await visit(browser, `${site.url}#teacher`);
const session = await browser.newBrowserCDPSession();
const rows = page.locator('[data-playing]');

let beganMs = performance.now();
const sinceSec = (): number => (performance.now() - beganMs) / 1000;
let [firstSec, allSec] = [0, 0];
const given = await mainThreadTasks(browser, async () => {
  beganMs = performance.now();
  await page.getByLabel('A folder of recordings to open').setInputFiles(join(top, 'Week 48'));
  await rows.first().waitFor({ timeout });
  firstSec = sinceSec();
  await rows.nth(recordings - 1).waitFor({ timeout });
  allSec = sinceSec();
});
const again = await mainThreadTasks(browser, async () => {
  beganMs = performance.now();
  await page.reload();
  await page.locator('[data-class]').waitFor({ timeout });
});
const againSec = sinceSec();
const { processInfo } = await session.send('SystemInfo.getProcessInfo');
const peaks = processInfo.filter(({ type }) => type === 'renderer').map(({ id }) => peakMbOf(id));
await close();
await browser.close();
await site.close();
rmSync(top, { recursive: true });

console.log(`\n${students} students, ${recordings} recordings at once; load ${loadavg()[0]!.toFixed(1)}\n`);
console.log(
  table(
    ['first attempt listed', 'all listed', 'memory', 'longest task', 'opened again: list', 'longest task'],
    [
      [
        `${fixed(firstSec, 1)} s`,
        `${fixed(allSec, 0)} s`,
        `${fixed(Math.max(...peaks), 0)} MB`,
        `${fixed(given[0]?.workMs ?? 0, 0)} ms`,
        `${fixed(againSec, 1)} s`,
        `${fixed(again[0]?.workMs ?? 0, 0)} ms`,
      ],
    ],
  ),
);
