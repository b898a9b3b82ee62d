import { readFileSync } from 'node:fs';
import { resolve } from 'node:path';
import { describe, expect, it } from 'vitest';
import { sourcesIn } from '../../house/imports.ts';
import { sentenceIn } from '../../../src/ui/language/sentences.ts';

const SRC = resolve(import.meta.dirname, '../../../src');

/** Where the engine and the devices say something by themselves. */
const SPEAKERS: readonly (readonly [folder: string, files: RegExp])[] = [
  ['engine/listen', /^findings\.ts$/],
  ['engine/report/measures', /\.ts$/],
  ['engine/match', /^(verdicts|held)\.ts$/],
  ['engine/recheck', /^settle\.ts$/],
  ['io/microphone', /^errors\.ts$/],
  ['io/decode', /^(?!node\.ts$|aac-track\.ts$)/],
];

/** Where every string that reads as a sentence is shown: microphone, room, journal, and the page's own state. */
const SENTENCES_OF: readonly (readonly [folder: string, files: RegExp])[] = [
  ['engine', /^assess\.ts$/],
  ['engine/live', /\.ts$/],
  ['io/analysis', /\.ts$/],
  ['io/archive', /\.ts$/],
  ['io/database', /\.ts$/],
  ['io/history', /^(?!tar\.ts$)/],
  ['io/microphone', /\.ts$/],
  ['io/offline', /\.ts$/],
  ['io/pulse', /\.ts$/],
  ['io/review', /\.ts$/],
  ['io/shelf', /\.ts$/],
  ['io/sorting', /\.ts$/],
  ['io/speech', /\.ts$/],
  ['io/teaching', /\.ts$/],
  ['io/unfinished', /\.ts$/],
  ['ui/attempt', /\.ts$/],
  ['ui/practice', /\.ts$/],
  ['ui/send', /\.ts$/],
  ['ui/sitting', /\.ts$/],
  ['ui/sitting/state', /\.ts$/],
  ['ui/teacher/state', /\.ts$/],
];

/** What no user can cause, only a caller (`timeSec=…, must be …`), or is written for programmers in a schema. */
const FOR_PROGRAMMERS = /manifest\.json|\w+=\S+ is |must be|microphone=/;

/** Sentences of a source: strings that begin with a capital and hold blanks, put together where `+` parts them. */
function sentencesIn(text: string): readonly string[] {
  const code = text.replace(/\/\*[\s\S]*?\*\//g, '').replace(/(^|\s)\/\/.*$/gm, '');
  const whole = code.replace(/(['`]) \+\n\s*\1/g, '');
  return [
    ...whole.matchAll(
      /(['"`])((?:\$\{[^`}]*\}: )?(?:… )?(?:[A-Z]|and )(?:(?!\1)[^\n])* (?:(?!\1)[^\n])*)\1/g,
    ),
  ].map((found) => found[2]!);
}

/** Strings of a source that are words to somebody: what `notMeasured`, `say`, `remark` or an error is given. */
function saidIn(text: string): readonly string[] {
  const calls =
    /(?:notMeasured|DecodeError|remark|say|reason =|deviationInto\([^']+?, (?=')|\|\||return) ?\(?\s*(?:'[a-z-]+',\s*)?(?:some \? '([^']+)' : )?(['`])((?:(?!\2).)+)\2/g;
  return [...text.matchAll(calls)]
    .flatMap((found) => [found[1], found[3]])
    .filter((one) => one !== undefined);
}

const readBy = (rooms: typeof SPEAKERS, read: (text: string) => readonly string[]): readonly string[] =>
  rooms.flatMap(([folder, files]) =>
    sourcesIn(resolve(SRC, folder))
      .filter((file) => files.test(file))
      .flatMap((file) => read(readFileSync(resolve(SRC, folder, file), 'utf8'))),
  );

const SAID = [
  ...readBy(SPEAKERS, saidIn),
  ...readBy(SENTENCES_OF, sentencesIn).filter((text) => !FOR_PROGRAMMERS.test(text)),
]
  // a figure for each ${…}, plain words for what chooses between words
  .map((text) =>
    text
      .replace(/\$\{[^}]*\? '(?:is|was)' : '(are|were)'\}/g, '$1')
      .replace('${CONVERT}', 'Convert it to WAV, FLAC, MP3 or Ogg, then try again.')
      .replace(/\$\{[^}]*\}/g, '7')
      .replaceAll("\\'", "'"),
  )
  .filter((text) => text.split(' ').length > 2)
  // its three kinds are below
  .filter((text) => !text.startsWith('The device recorded with 7 on'));

describe('what the engine and the devices say by themselves', () => {
  it('is found in their sources', () => {
    expect(SAID.length).toBeGreaterThan(40);
  });

  it.each([...new Set(SAID)].map((text) => [text]))('has a German sentence: “%s”', (text) => {
    // "It is {}." and "It holds {}." are said of the things that sniff.ts and packets.ts name; those are below.
    if (/^(7: )?(7$|It (is|holds) 7\.)/.test(text)) return;
    expect(sentenceIn(text, 'de', 'german')).not.toMatch(/\b(the|is|are|its|were|and)\b/i);
  });

  it.each(
    [...readFileSync(resolve(SRC, 'io/decode/sniff.ts'), 'utf8').matchAll(/what: '([^']+)'/g)].map(
      (found) => [`It is ${found[1]!}.`],
    ),
  )('and so has what is no sound file: “%s”', (text) => {
    expect(sentenceIn(text, 'de', 'german')).toMatch(/^Sie ist/);
  });
});

it.each(['echo cancellation', 'noise suppression', 'automatic gain'])(
  'what %s may do is said in German',
  (kind) => {
    const said = `The device recorded with ${kind} on, which changes loudness and may hide soft notes.`;
    expect(sentenceIn(said, 'de', 'german')).toMatch(/^Das Gerät hat mit/);
  },
);

describe('a sentence in German', () => {
  it('keeps its figures, with a comma', () => {
    expect(
      sentenceIn(
        'Mains hum at 50 Hz lies 12.5 dB below the playing; move the device away from chargers and cables.',
        'de',
        'german',
      ),
    ).toBe(
      'Netzbrummen bei 50 Hz liegt 12,5 dB unter dem Spiel; stell das Gerät weg von Ladegeräten und Kabeln.',
    );
    expect(sentenceIn('needs 6 unbroken intervals between steps; there are 12', 'de', 'german')).toBe(
      'braucht 6 Abstände ohne Unterbrechung; es gibt 12',
    );
  });

  it('keeps the name of a file before it', () => {
    expect(sentenceIn('song.pdf: It is a PDF document.', 'de', 'german')).toBe(
      'song.pdf: Sie ist ein PDF-Dokument.',
    );
  });

  it('names its notes as the page does', () => {
    const faint = 'Bb4 was heard too faintly to say that it was struck';
    expect(sentenceIn(faint, 'de', 'german')).toMatch(/^B4 war zu schwach/);
    expect(sentenceIn(faint, 'en', 'fixed-do')).toBe('si♭4 was heard too faintly to say that it was struck');
  });

  it('that nobody has translated stays as it came', () => {
    expect(sentenceIn('Something new.', 'de', 'german')).toBe('Something new.');
  });
});
