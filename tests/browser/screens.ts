/** `npm run screens`: the built page at all sizes in light and dark → dist/screens/*.png, to be looked at. */
import { mkdirSync, writeFileSync } from 'node:fs';
import { resolve } from 'node:path';
import type { Browser, Page } from 'playwright-core';
import { encodeWav } from '../../src/io/exchange/index.ts';
import { render, type RenderSpec } from '../support/render.ts';
import { openEmptyJournal, openSeededJournal } from './journal/scenes.ts';
import { serveSite } from './site.ts';
import { fixturePath, microphoneWav } from './sounds.ts';
import { openBrowser, SIZES, verdictOf, visit } from './visit.ts';

const INTO = resolve(import.meta.dirname, '../../dist/screens');

interface Scene {
  readonly name: string;
  readonly query: string;
  /** the whole page or what the screen shows */
  readonly whole: boolean;
  readonly act: (page: Page) => Promise<void>;
}

const drawn = (page: Page): Promise<void> => page.locator('.music svg').first().waitFor();
const choose = async (page: Page, key: string, ...labels: readonly string[]): Promise<void> => {
  await page.getByLabel('Key', { exact: true }).selectOption(key);
  for (const label of labels) await page.getByLabel(label, { exact: true }).check({ force: true });
};

const listenAtPiano = async (page: Page, key: string): Promise<void> => {
  await choose(page, key);
  await page.getByRole('button', { name: 'Listen', exact: true }).click();
};

/** Attempts that no fixture has: both hands and chords, with mistakes. Invented, on the development piano. */
const INVENTED: Readonly<Record<string, RenderSpec>> = {
  together: {
    seed: 11,
    piano: 'dev',
    exercise: { key: 'D major', form: 'scale', hands: 'together', octaves: 1 },
    student: {
      bpm: 84,
      jitterMs: 14,
      handsApartMs: { mean: 12, sd: 22 },
      lateCrossing: { ms: 90, kind: 'thumb-under' },
      mistakes: { wrong: 1, missed: 1, slips: 1, repeats: 0, restarts: 0 },
    },
  },
  chords: {
    seed: 12,
    piano: 'dev',
    exercise: { key: 'E major', form: 'progression', hands: 'together', octaves: 1 },
    student: {
      bpm: 58,
      jitterMs: 40,
      chordSpreadMs: 45,
      mistakes: { wrong: 1, missed: 1, slips: 0, repeats: 0, restarts: 0 },
    },
  },
};

async function openInvented(page: Page, name: string): Promise<void> {
  const { channels, sampleRateHz } = await render(INVENTED[name]!);
  await page.getByLabel('Recognise the exercise for me').check();
  await page.locator('input[type=file]').setInputFiles({
    name: `${name}.wav`,
    mimeType: 'audio/wav',
    buffer: Buffer.from(encodeWav({ channels, sampleRateHz })),
  });
  await verdictOf(page);
}

async function openAll(page: Page, ...titles: readonly string[]): Promise<void> {
  for (const title of titles) await page.locator('summary', { hasText: title }).first().click();
  await page.locator('svg.pencil').first().waitFor();
}

const IN_FULL = ['Show the detail', 'On the staff'] as const;

const SCENES: readonly Scene[] = [
  ...['together', 'chords'].map((name): Scene => ({
    name: `report-${name}`,
    query: '',
    whole: true,
    act: async (page) => {
      await openInvented(page, name);
      await openAll(page, ...IN_FULL);
    },
  })),
  {
    name: 'report-full',
    query: '?attempt=bundled',
    whole: true,
    act: async (page) => {
      await verdictOf(page);
      await page.locator('[data-spot="4"]').click();
      await openAll(page, ...IN_FULL, 'Every note');
    },
  },
  {
    name: 'compare',
    query: '?attempt=bundled',
    whole: true,
    act: async (page) => {
      await verdictOf(page);
      await page.getByLabel('Key', { exact: true }).selectOption('Ab major');
      const { channels, sampleRateHz } = await render({
        seed: 21,
        piano: 'dev',
        exercise: { key: 'Ab major', form: 'arpeggio', hands: 'right', octaves: 2 },
        student: { bpm: 84, jitterMs: 9, lateCrossing: { ms: 25, kind: 'thumb-under' } },
      });
      await page.locator('input[type=file]').setInputFiles({
        name: 'later.wav',
        mimeType: 'audio/wav',
        buffer: Buffer.from(encodeWav({ channels, sampleRateHz })),
      });
      await page.locator('summary', { hasText: 'Compare' }).click();
      await page.waitForTimeout(300);
    },
  },
  {
    name: 'sheet',
    query: '?attempt=bundled',
    whole: true,
    act: async (page) => {
      await verdictOf(page);
      await page.evaluate(() => {
        window.print = () => document.body.setAttribute('data-printed', '');
      });
      await page.getByRole('button', { name: 'Print on one sheet' }).click();
      await page.locator('body[data-printed]').waitFor();
      await page.emulateMedia({ media: 'print' });
    },
  },
  { name: 'choose', query: '', whole: false, act: drawn },
  {
    name: 'report',
    query: '?attempt=bundled',
    whole: false,
    act: async (page) => {
      await verdictOf(page);
      await drawn(page);
    },
  },
  {
    name: 'report-whole',
    query: '?attempt=bundled',
    whole: true,
    act: async (page) => {
      await verdictOf(page);
      await drawn(page);
    },
  },
  {
    name: 'practice',
    query: '?attempt=bundled',
    whole: false,
    act: async (page) => {
      await page.getByRole('button', { name: 'Set it up' }).click();
      await drawn(page);
    },
  },
  {
    name: 'together-4-octaves',
    query: '',
    whole: true,
    act: async (page) => {
      await choose(page, 'F# minor', 'Together', 'Scale', 'Melodic', '4');
      await page.waitForTimeout(800);
    },
  },
  {
    name: 'arpeggio-left-4',
    query: '',
    whole: true,
    act: async (page) => {
      await choose(page, 'Eb minor', 'Left', '4');
      await page.waitForTimeout(800);
    },
  },
  {
    name: 'progression',
    query: '',
    whole: true,
    act: async (page) => {
      await choose(page, 'A major', 'Together', 'Progression');
      await page.waitForTimeout(800);
    },
  },
  {
    name: 'keys',
    query: '#keys',
    whole: true,
    act: async (page) => {
      await page.locator('.circle input[value="Ab major"]').check({ force: true });
      await page.waitForTimeout(1200);
    },
  },
  {
    name: 'keys-german',
    query: '#keys',
    whole: true,
    act: async (page) => {
      await page.getByRole('radio', { name: 'Deutsch' }).check({ force: true });
      await page.locator('.circle input[value="G# minor"]').check({ force: true });
      await page.getByRole('radio', { name: 'Links' }).check({ force: true });
      await page.getByRole('button', { name: 'Keine', exact: true }).click();
      await page.waitForTimeout(1200);
    },
  },
  {
    name: 'report-german',
    query: '?attempt=bundled',
    whole: true,
    act: async (page) => {
      await verdictOf(page);
      await page.getByRole('radio', { name: 'Deutsch' }).check({ force: true });
      await drawn(page);
    },
  },
  {
    name: 'broken-triads',
    query: '',
    whole: true,
    act: async (page) => {
      await choose(page, 'Db major', 'Right', 'Broken triads');
      await page.waitForTimeout(800);
    },
  },
  {
    name: 'microphone',
    query: '',
    whole: false,
    act: (page) => page.getByRole('button', { name: 'Record', exact: true }).click(),
  },
  {
    name: 'recording',
    query: '',
    whole: false,
    act: async (page) => {
      await page.getByRole('button', { name: 'Record', exact: true }).click();
      await page.getByRole('button', { name: 'Turn on the microphone' }).click();
      await page.getByRole('button', { name: 'Start' }).click();
      await page.waitForTimeout(1600);
    },
  },
  {
    name: 'stand',
    query: '#stand',
    whole: true,
    act: (page) => page.locator('.music svg').first().waitFor(),
  },
  {
    name: 'stand-waiting',
    query: '#stand',
    whole: false,
    act: async (page) => {
      await listenAtPiano(page, 'Ab major');
      await page.locator('.state', { hasText: 'Waiting' }).waitFor();
    },
  },
  {
    name: 'stand-listening',
    query: '#stand',
    whole: false,
    act: async (page) => {
      await listenAtPiano(page, 'Ab major');
      await page.locator('circle.struck').nth(9).waitFor();
    },
  },
  {
    name: 'stand-told',
    query: '#stand',
    whole: false,
    act: async (page) => {
      await listenAtPiano(page, 'Ab major');
      await verdictOf(page);
    },
  },
  {
    name: 'stand-stopped',
    query: '#stand',
    whole: true,
    act: async (page) => {
      await listenAtPiano(page, 'Ab major');
      await verdictOf(page);
      await page.getByRole('button', { name: 'Stop' }).click();
      await page.locator('[data-spot="12"]').waitFor();
    },
  },
  {
    name: 'room-silence',
    query: '#stand',
    whole: false,
    act: async (page) => {
      await page.getByRole('button', { name: 'Check the room' }).click();
      await page.getByText('more seconds').waitFor();
    },
  },
  {
    name: 'room-done',
    query: '#stand',
    whole: false,
    act: async (page) => {
      await page.getByRole('button', { name: 'Check the room' }).click();
      await page.getByRole('button', { name: 'Done' }).waitFor({ timeout: 60_000 });
    },
  },
  {
    name: 'print',
    query: '?attempt=bundled',
    whole: true,
    act: async (page) => {
      await verdictOf(page);
      await page.emulateMedia({ media: 'print' });
    },
  },
  {
    name: 'trouble',
    query: '',
    whole: false,
    act: async (page) => {
      await page.locator('input[type=file]').setInputFiles({
        name: 'broken.wav',
        mimeType: 'audio/wav',
        buffer: Buffer.from('RIFF0000WAVEjunk'),
      });
      await page.locator('#trouble').waitFor();
    },
  },
  {
    name: 'wrong-note',
    query: '',
    whole: false,
    act: async (page) => {
      await choose(page, 'D major');
      await page.locator('input[type=file]').setInputFiles(fixturePath('natural-for-sharp'));
      await verdictOf(page);
    },
  },
  { name: 'journal', query: '', whole: true, act: (page) => openSeededJournal(page) },
  { name: 'journal-empty', query: '', whole: true, act: openEmptyJournal },
  {
    name: 'journal-place',
    query: '',
    whole: true,
    act: async (page) => {
      await openSeededJournal(page);
      await page.getByRole('button', { name: /^D major arpeggio: / }).click();
      await page.locator('#place').waitFor();
      await page.getByText('What counts as ready').click();
    },
  },
  {
    name: 'journal-deleted',
    query: '',
    whole: false,
    act: async (page) => {
      await openSeededJournal(page);
      await page
        .getByRole('button', { name: /^Delete/ })
        .first()
        .click();
      await page.locator('#undo').scrollIntoViewIfNeeded();
    },
  },
  {
    name: 'journal-attempt',
    query: '',
    whole: false,
    act: async (page) => {
      await openSeededJournal(page);
      await page.locator('[data-row] button').first().click();
      await verdictOf(page);
    },
  },
];

/** The README's picture: the report of the example attempt on a laptop, without the bar at the bottom. */
async function takeReadmePicture(browser: Browser, url: string): Promise<void> {
  const { page, close } = await visit(browser, `${url}?attempt=bundled`, { width: 1160, height: 1000 });
  await verdictOf(page);
  await page.getByText('Every note, as a table').waitFor();
  await page.evaluate(() => {
    document.querySelector<HTMLElement>('.bar')!.style.display = 'none';
    window.scrollTo(0, 0);
  });
  await page.waitForTimeout(500);
  const clip = { x: 20, y: 62, width: 1120, height: 850 };
  await page.screenshot({ path: resolve(import.meta.dirname, 'report.png'), clip });
  await close();
}

const only = process.argv.slice(2);
mkdirSync(INTO, { recursive: true });
const { url, close } = await serveSite();
const heard = resolve(INTO, 'microphone.wav');
writeFileSync(heard, await microphoneWav('late-thumb'));
const browser = await openBrowser(heard);
for (const scene of SCENES.filter(({ name }) => only.length === 0 || only.includes(name)))
  for (const { name, width, height } of SIZES)
    for (const colorScheme of ['light', 'dark'] as const) {
      const { page, close: leave } = await visit(browser, url + scene.query, { width, height, colorScheme });
      await scene.act(page);
      await page.waitForTimeout(400);
      await page.screenshot({
        path: resolve(INTO, `${scene.name}-${name}-${colorScheme}.png`),
        fullPage: scene.whole,
      });
      await leave();
    }
if (only.length === 0 || only.includes('readme')) await takeReadmePicture(browser, url);
await browser.close();
await close();
console.log(`Screens in ${INTO}`);
