import { readFileSync } from 'node:fs';
import { resolve } from 'node:path';
import { describe, expect, it } from 'vitest';
import { english } from '../../../src/io/troubles/english.ts';
import { EvenfallError, tellTrouble, troubleOf } from '../../../src/io/troubles/index.ts';
import type { Trouble } from '../../../src/io/troubles/index.ts';
import { ENGLISH_WORDS } from '../../support/english.ts';
import { sourcesIn } from '../../house/imports.ts';

const inner: Trouble = { trouble: 'zip-locked' };
/** Values for whatever a trouble may hold. */
const VALUES = {
  name: 'x.wav',
  of: inner,
  because: inner,
  detail: 'X1',
  place: 'attempts.1',
  whenMs: 1_790_000_000_000,
  what: 'midi',
  container: 'AIFF',
  channels: 4,
  format: '0x55',
  rateHz: 7,
  bits: 4,
  codec: 'AC3',
  mostMb: 512,
  files: 9,
  most: 8,
  attempt: 2,
  bars: 40,
  from: 5,
  to: 8,
  staves: 4,
  more: 3,
  keeper: 'journal',
  lostSec: 0.3,
  code: 'ENOENT',
  notice: { notice: 'silence' },
} as const;
const NAMES = Object.keys(english(() => '')) as Trouble['trouble'][];

describe('a trouble', () => {
  it.each(NAMES)('%s is told in English and in German', (trouble) => {
    const whole = { trouble, ...VALUES } as Trouble;
    const [english, german] = [tellTrouble(whole), tellTrouble(whole, 'de')];
    for (const told of [english, german]) expect(told).not.toMatch(/undefined|NaN|object/);
    expect(german).not.toMatch(ENGLISH_WORDS);
    expect(german).not.toBe(english);
  });

  it('says what lies behind it', () => {
    const of: Trouble = { trouble: 'file-other', what: 'pdf' };
    expect(tellTrouble({ trouble: 'within', name: 'song.pdf', of }, 'de')).toBe(
      'song.pdf: Sie ist ein PDF-Dokument.',
    );
  });

  const attempt = new Date(2026, 10, 3, 12).getTime();
  it.each([
    [
      { trouble: 'journal-attempt', whenMs: attempt, place: 'report.notes' },
      /^An attempt of 3 November 2026, 12:00, was left out: its report is not in order\.$/,
      /^Ein Versuch vom 3\. November 2026, 12:00 Uhr, kam nicht dazu: Sein Bericht ist nicht in Ordnung\.$/,
    ],
    [
      { trouble: 'journal-attempt', whenMs: null, place: 'attempt.json' },
      /^An attempt was left out: what is written of it is not in order\.$/,
      /^Ein Versuch kam nicht dazu: Was von ihm aufgeschrieben ist, ist nicht in Ordnung\.$/,
    ],
    [
      { trouble: 'journal-no-sound', whenMs: attempt },
      /^An attempt of 3 November 2026, 12:00, is kept without its sound, which cannot be read\.$/,
      /^Ein Versuch vom 3\. November 2026, 12:00 Uhr, steht ohne seinen Klang da: Der lässt sich nicht lesen\.$/,
    ],
    [
      { trouble: 'journal-too-large', whenMs: attempt },
      /^An attempt of 3 November 2026, 12:00, was left out: it is too large\.$/,
      /^Ein Versuch vom 3\. November 2026, 12:00 Uhr, kam nicht dazu: Er ist zu groß\.$/,
    ],
  ] as const)('of an attempt in a file says when it was and what is wrong: %o', (of, english, german) => {
    expect(tellTrouble(of)).toMatch(english);
    expect(tellTrouble(of, 'de')).toMatch(german);
  });

  it('travels in an error, whose message is English', () => {
    const error = new EvenfallError({ trouble: 'no-mp3-frame' });
    expect(error.message).toMatch(/^No piece of the MP3 is whole/);
    expect(troubleOf(error)).toEqual({ trouble: 'no-mp3-frame' });
    expect(troubleOf(new TypeError('x'))).toEqual({ trouble: 'unforeseen', detail: 'x' });
    expect(troubleOf('x')).toEqual({ trouble: 'unforeseen', detail: 'x' });
  });
});

describe('no source outside the language rooms', () => {
  const SRC = resolve(import.meta.dirname, '../../../src');
  const SPEAKING = /(^|\/)(language|notices|troubles|telling|rules|criteria)\/|training\/|library\//;
  /** What no user can cause, only a caller, or stands in a published schema for programmers. */
  const FOR_PROGRAMMERS =
    /exercise\/(keys|build)|report\/types|history\/(tar|check-file)|review\/manifest|scores\/passages|pile\/json|schemas/;
  const sentences = (text: string): readonly string[] => {
    const code = text.replace(/\/\*[\s\S]*?\*\//g, '').replace(/(^|\s)\/\/.*$/gm, '');
    const script = code.includes('<script')
      ? (/<script[^>]*>([\s\S]*?)<\/script>/.exec(code)?.[1] ?? '')
      : code;
    return [...script.matchAll(/(['"`])([A-ZÄÖÜ](?:(?!\1)[^\n])* (?:(?!\1)[^\n])*[.:])\1/g)].map(
      (found) => found[2]!,
    );
  };

  it('says a sentence by itself', () => {
    const found = sourcesIn(SRC)
      .filter((file) => !SPEAKING.test(file) && !FOR_PROGRAMMERS.test(file) && /\.(ts|svelte)$/.test(file))
      .flatMap((file) =>
        sentences(readFileSync(resolve(SRC, file), 'utf8')).map((text) => `${file}: ${text}`),
      );
    expect(found).toEqual([]);
  });
});
