import { mkdtempSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, inject, it } from 'vitest';
import { findEngines } from '../../support/engines.mjs';
import { fixturePath } from '../sounds.ts';
import { asFile, review } from '../student/made.ts';
import { SIZES } from '../visit.ts';
import { openChromium } from './chromium.ts';
import { openFirefox } from './firefox.ts';
import { give, nothingWrong, resize, sees, touchWords, verdictOf, visit, wentWrong } from './hand.ts';
import type { Engine, Scheme, Tab } from './tab.ts';
import { openWebKit } from './webkit.ts';

const site = inject('siteUrl');
const programs = findEngines();
if (programs === undefined)
  throw new Error('Firefox or WebKit is missing: npm run test:engines fetches them.');

type Open = (scheme: Scheme) => Promise<Engine>;
const ENGINES: readonly (readonly [string, Scheme, Open])[] = (['light', 'dark'] as const).flatMap(
  (scheme) => [
    ['Chromium', scheme, openChromium] as const,
    ['Firefox', scheme, (wanted) => openFirefox(programs, wanted)] as const,
    ['WebKit', scheme, (wanted) => openWebKit(programs, wanted)] as const,
  ],
);

/** What is to be seen, and how one comes there from the screen before; all folds that it has are opened. */
const SCREENS: readonly (readonly [name: string, go: (tab: Tab) => Promise<unknown>])[] = [
  ['the first visit', (tab) => sees(tab, '.music svg')],
  [
    'the microphone, before it is asked for',
    async (tab) => {
      await touchWords(tab, 'Record');
      await sees(tab, '.bar button', 'Turn on the microphone');
    },
  ],
  [
    'a report, and what may be done with it',
    async (tab) => {
      await touchWords(tab, 'Not now');
      await give(tab, '.bar input[type=file]', fixturePath('missed-and-repeated'));
      await verdictOf(tab);
    },
  ],
  [
    'the stand',
    async (tab) => {
      await touchWords(tab, 'Put it in the journal');
      await sees(tab, '[role=status]', 'It is in the journal');
      await touchWords(tab, 'At the piano');
      await sees(tab, '.music svg');
    },
  ],
  [
    'a key',
    async (tab) => {
      await touchWords(tab, 'Keys');
      await sees(tab, '[aria-labelledby="arpeggio-title"] button');
    },
  ],
  [
    'the journal',
    async (tab) => {
      await touchWords(tab, 'Journal');
      await sees(tab, '[data-row]');
      await sees(tab, '#kept');
    },
  ],
  [
    'an attempt of the journal',
    async (tab) => {
      await tab.touch('[data-row] button');
      await verdictOf(tab);
    },
  ],
  [
    'what is sent to a teacher',
    async (tab) => {
      await touchWords(tab, 'Journal');
      await touchWords(tab, 'Send to my teacher');
      await sees(tab, 'button', 'Make the file');
    },
  ],
  [
    'a review',
    async (tab) => {
      const { name, buffer } = await asFile(review());
      const path = join(mkdtempSync(join(tmpdir(), 'evenfall-')), name);
      writeFileSync(path, buffer);
      await touchWords(tab, 'Journal');
      await sees(tab, 'button', 'Open a review');
      await give(tab, 'input[type=file]', path);
      await sees(tab, 'h1', 'From Ms Ley');
    },
  ],
  [
    'the page for teachers, with a recording',
    async (tab) => {
      await touchWords(tab, 'For teachers');
      await give(tab, 'main input[type=file][multiple]', fixturePath('late-thumb'));
      await sees(tab, '[data-playing]');
    },
  ],
  [
    'a recording, heard by a teacher',
    async (tab) => {
      await tab.touch('[data-playing]');
      await verdictOf(tab);
    },
  ],
];

/** Every fold that stands open shows what else axe is to see. */
const unfold = (tab: Tab): Promise<void> =>
  tab.run(() => {
    for (const fold of document.querySelectorAll('main details, footer details'))
      fold.setAttribute('open', '');
  });

/** Touched again where the page was still being drawn, and what was to be touched moved away. */
const speak = (tab: Tab, language: string, code: string): Promise<void> =>
  expect
    .poll(async () => {
      await touchWords(tab, language);
      return tab.run(() => document.documentElement.lang);
    })
    .toBe(code);

/** 88 looks: a bound for what never comes, not for a busy machine. */
const LONG_MS = 1_200_000;

describe.each(ENGINES)('%s, %s', (_, scheme, open) => {
  let engine: Engine;
  beforeAll(async () => {
    engine = await open(scheme);
  });
  afterAll(() => engine?.close());

  it(
    'axe finds nothing wrong on any screen, at any size, in either language; nothing lies beyond the edge',
    async () => {
      const { tab } = engine;
      await resize(tab, 1024, 768);
      await visit(tab, site);
      const isDark = await tab.run(() => matchMedia('(prefers-color-scheme: dark)').matches);
      expect(isDark).toBe(scheme === 'dark');
      for (const [screen, go] of SCREENS) {
        await go(tab);
        await unfold(tab);
        for (const [language, code] of [
          ['Deutsch', 'de'],
          ['English', 'en'],
        ] as const) {
          await speak(tab, language, code);
          for (const { name, width, height } of SIZES) {
            await resize(tab, width, height);
            await nothingWrong(tab, `${screen}, ${name}, ${language}`);
          }
        }
        await resize(tab, 1024, 768);
      }
      expect(await wentWrong(tab)).toEqual([]);
    },
    LONG_MS,
  );
});
