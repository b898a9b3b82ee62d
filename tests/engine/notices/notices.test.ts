import { readFileSync } from 'node:fs';
import { resolve } from 'node:path';
import * as v from 'valibot';
import { describe, expect, it } from 'vitest';
import { NOTICE, tellKept, tellNotice } from '../../../src/engine/notices/index.ts';
import type { Notice } from '../../../src/engine/notices/index.ts';
import { ENGLISH_WORDS } from '../../support/english.ts';

const GERMAN = { language: 'de', naming: 'german' } as const;

/** Values for whatever a notice may hold. */
const VALUES = {
  lastsSec: 0.42,
  samples: 7,
  peakDb: -41.2,
  times: 12,
  channels: 4,
  lostDb: 9.3,
  aboveDb: 12.6,
  mainsHz: 50,
  belowDb: 31.4,
  places: 4,
  minutes: 30,
  readSec: 1.2,
  wholeSec: 2.5,
  afterSec: 3.1,
  read: 2,
  thereSec: 1,
  by: 'automatic-gain',
  lostSec: 0.3,
  errorDb: 1.7,
  needed: 6,
  there: 2,
  which: 'turn',
  of: 'chords',
  name: 'Bb4',
} as const;

const NAMES = NOTICE.options.map(({ entries }) => entries.notice.literal);
const noticeOf = (notice: string): Notice => v.parse(NOTICE, { notice, ...VALUES }) as Notice;

describe('a notice', () => {
  it.each(NAMES)('%s is told in English and in German', (name) => {
    const notice = noticeOf(name);
    const [english, german] = [tellNotice(notice), tellNotice(notice, GERMAN)];
    for (const told of [english, german]) expect(told).not.toMatch(/undefined|NaN|object/);
    expect(german).not.toMatch(ENGLISH_WORDS);
    expect(german).not.toBe(english);
  });

  // What is newer was never kept as a sentence.
  const NEWER = [
    'one-channel-taken',
    'not-certain',
    'within-own-error',
    'hand-not-known',
    'pedal-held',
    'levels-cut',
  ];
  it.each(NAMES.filter((name) => !NEWER.includes(name)))(
    '%s is known again by the sentence that version 0.1 kept in its place',
    (name) => {
      const notice = noticeOf(name);
      // Names of notes stood as computers write them.
      const kept = tellNotice(notice).replace('B♭4', 'Bb4');
      expect(tellKept(kept, GERMAN)).toBe(tellNotice(notice, GERMAN));
    },
  );

  it('has its figures with a comma in German, and its notes as the page calls them', () => {
    expect(tellNotice({ notice: 'breaks-off', thereSec: 1.25, wholeSec: 2 }, GERMAN)).toBe(
      'Die Datei bricht ab: 1,3 s von 2,0 s sind da.',
    );
    expect(tellNotice({ notice: 'too-faint', name: 'Bb4' }, GERMAN)).toMatch(/^B4 war/);
    expect(tellNotice({ notice: 'too-faint', name: 'Bb4' }, { language: 'en', naming: 'fixed-do' })).toMatch(
      /^si♭4 was heard too faintly/,
    );
  });
});

describe('what version 0.1 kept', () => {
  const reports = readFileSync(resolve(import.meta.dirname, '../../version-0.1/reports.jsonl'), 'utf8');
  const sentences = [...reports.matchAll(/"(?:notMeasured|detail|reason)":"([^"]+)"/g)].map(
    ([, sentence]) => sentence!,
  );

  it('of its real reports is told in German, every sentence', () => {
    expect(sentences.length).toBeGreaterThan(10);
    for (const sentence of sentences) expect(tellKept(sentence, GERMAN)).not.toMatch(ENGLISH_WORDS);
  });

  it('and is no sentence of ours stays as it is', () => {
    expect(tellKept('Something else.', GERMAN)).toBe('Something else.');
    expect(tellKept('The recording lasts long s; record from before.', GERMAN)).toMatch(/^The recording/);
  });
});
