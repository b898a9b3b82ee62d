import { mkdtempSync, readdirSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, inject, it } from 'vitest';
import { findEngines } from '../../support/engines.mjs';
import { fit, LENGTH_SEC, sample } from '../../io/decode/reference.ts';
import { openOwnSite } from '../own-site.ts';
import { fixturePath } from '../sounds.ts';
import { asFile, review } from '../student/made.ts';
import { openFirefox } from './firefox.ts';
import { give, hearInstead, play, sees, touchWords, verdictOf, visit, wentWrong } from './hand.ts';
import type { Engine, Tab } from './tab.ts';
import { openWebKit } from './webkit.ts';

const site = inject('siteUrl');
const programs = findEngines();
if (programs === undefined)
  throw new Error('Firefox or WebKit is missing: npm run test:engines fetches them.');

const ENGINES: readonly (readonly [string, () => Promise<Engine>])[] = [
  ['Firefox', () => openFirefox(programs)],
  ['WebKit', () => openWebKit(programs)],
];

/** One of every kind, and by how many samples it may be late (tests/io/decode says why). */
const KINDS: readonly (readonly [file: string, lag: number])[] = [
  ['wav-s16-stereo.wav', 0],
  ['aiff-s24.aiff', 0],
  ['caf-s16-stereo.caf', 0],
  ['pcm-in-quicktime.mov', 0],
  ['flac-s16-stereo.flac', 0],
  ['flac-in-ogg.oga', 0],
  ['mp3-stereo.mp3', 0],
  ['mp3-mono-vbr.mp3', 0],
  ['vorbis-stereo.ogg', 1],
  ['opus-stereo.ogg', 0],
  ['opus-stereo.webm', 0],
  ['opus-stereo.mp4', 0],
  ['video.webm', 0],
];
/** Left to the browser's own decoder. */
const BY_THE_BROWSER = ['aac-stereo.m4a', 'video.mp4'];

/** The bundled attempt, as it lies beside the page. */
const example = `assets/${readdirSync(join(inject('siteFolder'), 'assets')).find((name) => name.endsWith('.wav'))}`;

/** As the room of decoding reads a file; the second channel is of another pitch. */
async function readsAsItWas(tab: Tab, file: string, lag: number): Promise<void> {
  const bytes = [...new Uint8Array(sample(file))];
  const decoded = await tab.run((given, name) => window.decoding.decode(given, name), bytes, file);
  if (decoded.kind === 'refused') throw new Error(decoded.why);
  const { channels, sampleRateHz } = decoded;
  expect(channels[0]!.length / sampleRateHz, file).toBeCloseTo(LENGTH_SEC, 1);
  channels.forEach((channel, index) => {
    const found = fit(Float32Array.from(channel), index, sampleRateHz, 60);
    expect(found.lag, file).toBeGreaterThanOrEqual(0);
    expect(found.lag, file).toBeLessThanOrEqual(lag);
    expect(Math.abs(found.gainDb), file).toBeLessThan(0.5);
    expect(found.residualDb, file).toBeLessThan(-30);
  });
}

describe.each(ENGINES)('%s', (_, open) => {
  let engine: Engine;
  let tab: Tab;
  beforeAll(async () => {
    engine = await open();
    ({ tab } = engine);
    console.log(`${engine.name} ${engine.version}`);
    await tab.resize(1024, 768);
  });
  afterAll(() => engine?.close());

  it('opens the page, hears its example, shows the report and plays a spot of it', async () => {
    await visit(tab, site);
    await sees(tab, '.music svg');
    await touchWords(tab, 'Example');
    expect(await verdictOf(tab)).toMatch(/late going up to C/);
    await sees(tab, '[data-spot="12"]');
    const sounded = tab.run(
      () =>
        new Promise<void>((resolve) => {
          const look = (): void => {
            if (document.querySelector('[data-spot][aria-current=true]') !== null) resolve();
          };
          new MutationObserver(look).observe(document, { subtree: true, attributes: true });
        }),
    );
    await Promise.all([sounded, tab.touch('[data-spot="3"]')]);
    expect(await wentWrong(tab)).toEqual([]);
  });

  it('reads every kind of file as another implementation wrote it', async () => {
    await tab.open(`${inject('workshopUrl')}tests/browser/engines/door.html`);
    await expect.poll(() => tab.run(() => 'decoding' in window)).toBe(true);
    for (const [file, lag] of KINDS) await readsAsItWas(tab, file, lag);
  });

  it('reads AAC, or says beforehand that it does not, and again where such a file is opened', async () => {
    await tab.open(`${inject('workshopUrl')}tests/browser/engines/door.html`);
    await expect.poll(() => tab.run(() => 'decoding' in window)).toBe(true);
    const reads = await tab.run(() => window.decoding.readsAac());
    console.log(`${engine.name} reads ${reads ? '' : 'no '}AAC`);
    if (reads) for (const file of BY_THE_BROWSER) await readsAsItWas(tab, file, 0);
    await visit(tab, site);
    await sees(tab, '.bar', reads ? 'or drop a recording' : 'reads no M4A');
    if (!reads) {
      await give(
        tab,
        '.bar input[type=file]',
        join(import.meta.dirname, '../../io/decode/samples/aac-stereo.m4a'),
      );
      await sees(tab, '.trouble', 'Convert it to WAV, FLAC, MP3 or Ogg');
    }
    expect(await wentWrong(tab)).toEqual([]);
  });

  it('puts an opened file into the journal, and finds it there after a reload', async () => {
    await visit(tab, site);
    await give(tab, '.bar input[type=file]', fixturePath('late-thumb'));
    const verdict = await verdictOf(tab);
    await touchWords(tab, 'Put it in the journal');
    await sees(tab, '[role=status]', 'It is in the journal');
    expect(await wentWrong(tab)).toEqual([]);
    await touchWords(tab, 'Journal');
    await sees(tab, '[data-row]', 'A♭ major arpeggio');
    await tab.reload();
    await sees(tab, '[data-row]', 'A♭ major arpeggio');
    await sees(tab, '#kept', 'Kept on this device');
    const warned = (): Promise<boolean> =>
      tab.run(() => document.body.textContent.includes('seven days of use without a visit'));
    await expect
      .poll(warned, { message: 'that it clears what is not visited' })
      .toBe(engine.name === 'WebKit');
    await tab.touch('[data-row] button');
    expect(await verdictOf(tab)).toBe(verdict);
  });

  it('shows a key, and its exercise set up', async () => {
    await visit(tab, `${site}#keys/eb-minor`);
    await sees(tab, 'h2', 'E♭ minor');
    await sees(tab, '[aria-labelledby="arpeggio-title"] button');
    await touchWords(tab, 'Play it');
    await sees(tab, 'h1', 'E♭ minor');
    expect(await wentWrong(tab)).toEqual([]);
  });

  it('opens a review from a teacher, and has it after a reload', async () => {
    const { name, buffer } = await asFile(review());
    const path = join(mkdtempSync(join(tmpdir(), 'evenfall-')), name);
    writeFileSync(path, buffer);
    await visit(tab, `${site}#journal`);
    await sees(tab, 'button', 'Open a review');
    await give(tab, 'input[type=file]', path);
    await sees(tab, 'h1', 'From Ms Ley');
    expect(await wentWrong(tab)).toEqual([]);
    await tab.reload();
    await sees(tab, 'h1', 'From Ms Ley');
  });

  it('turns the microphone on and shows its level', async () => {
    await visit(tab, `${site}#play/ab-major-arpeggio-right-2`);
    await touchWords(tab, 'Record');
    await touchWords(tab, 'Turn on the microphone');
    await sees(tab, '.bar', 'The level is good.');
    await touchWords(tab, 'Start');
    await touchWords(tab, 'Throw away');
    await sees(tab, '.bar button', 'Record');
    expect(await wentWrong(tab)).toEqual([]);
  });

  it('listens at the piano and tells the attempt without another touch', async () => {
    await visit(tab, `${site}#stand/ab-major-arpeggio-right-2`);
    await hearInstead(tab, example);
    await touchWords(tab, 'Listen');
    await sees(tab, '.state', 'Waiting for your first note');
    await play(tab);
    await sees(tab, '.state', 'Attempt 1. Ready for the next');
    expect(await verdictOf(tab)).toMatch(
      /late going up to C|come late, most C going up|C going up comes late/,
    );
    expect(await wentWrong(tab)).toEqual([]);
  });

  it('goes on without a network', async () => {
    const own = await openOwnSite();
    await tab.open(own.url);
    const kept = (): Promise<boolean> =>
      tab.run(async () => (await navigator.serviceWorker.getRegistration())?.active?.state === 'activated');
    await expect.poll(kept, { message: 'its files are kept' }).toBe(true);
    await tab.open('about:blank');
    own.close();
    await visit(tab, own.url);
    await touchWords(tab, 'Example');
    expect(await verdictOf(tab)).toMatch(/late going up to C/);
    await sees(tab, '.music svg');
    expect(await wentWrong(tab)).toEqual([]);
  });
});
