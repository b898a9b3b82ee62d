import { describe, expect, it } from 'vitest';
import { HELPS, MESSAGES, REPORTS } from '../../src/terminal/language/index.ts';
import { parseCommand } from '../../src/terminal/arguments.ts';
import { Problem } from '../../src/terminal/problems.ts';
import { ENGLISH_WORDS } from '../support/english.ts';

/** Every text of a table, functions called with words and figures that are of no language. */
function textsOf(value: unknown): readonly string[] {
  if (typeof value === 'string') return [value];
  if (typeof value === 'function') {
    const tell = value as (...values: readonly unknown[]) => string;
    // A list of one reads as its word, and stands for a figure as well.
    const told = ['1', 'X'].map((one) => tell(...Array.from({ length: tell.length }, () => [one])));
    return told.map(String);
  }
  return value === null || typeof value !== 'object' ? [] : Object.values(value).flatMap(textsOf);
}

/** Words of the command itself, which are the same in every language. */
const OWN =
  /--?[a-z-]+|evenfall [a-z]+|"[^"]*"|„[^“]*“|\b[A-Z_]{3,}\b|\b(arpeggio|broken-triads|triads|scale)\b/g;

describe('under --language de', () => {
  it.each([
    ['messages', MESSAGES.de],
    ['reports', REPORTS.de],
    ['help', HELPS.de],
  ])('no English word stands in the %s', (_, table) => {
    const texts = textsOf(table).map((text) => text.replaceAll(OWN, ''));
    expect(texts.length).toBeGreaterThan(5);
    for (const text of texts)
      expect(
        text.replace(/\b(left|right|together) \([a-z]+\)|natural, harmonic, melodic|left, right/g, ''),
      ).not.toMatch(ENGLISH_WORDS);
  });

  it.each([
    [['analize', 'a.wav'], /^„analize“ ist kein Befehl.*Meinst du „analyse“\?/],
    [['analyse'], /^analyse braucht mindestens eine Klangdatei/],
    [['analyse', 'a.wav', '--hand', 'left'], /keine Option --hand\. Meinst du „--hands“\?/],
    [['analyse', 'a.wav', '--key'], /Option --key: Ihre Angabe fehlt/],
    [['analyse', 'a.wav', '--quiet=x'], /Option -q|--quiet.*nimmt keine Angabe/],
    [['analyse', 'a.wav', '--bpm', '9'], /eine Zahl von 20 bis 400/],
    [
      ['analyse', 'a.wav', '--key', 'C major', '--form', 'triads', '--hands', 'left', '--octaves', '2'],
      /triads hat immer 1/,
    ],
    [
      [
        'analyse',
        'a.wav',
        '--key',
        'C major',
        '--form',
        'scale',
        '--hands',
        'left',
        '--minor-scale',
        'natural',
      ],
      /passt nicht zu scale in C major/,
    ],
  ])('%j is refused in German', (words, message) => {
    try {
      parseCommand(words);
      expect.unreachable();
    } catch (problem) {
      expect(problem).toBeInstanceOf(Problem);
      expect((problem as Problem).in('de')).toMatch(message);
    }
  });
});
