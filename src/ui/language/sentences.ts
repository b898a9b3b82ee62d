import { noteName } from '../../engine/index.ts';
import type { Language, NoteNaming } from '../../engine/index.ts';
import { FILE_SENTENCES } from './german/files.ts';
import { REVIEW_SENTENCES } from './german/reviews.ts';
import { SENTENCES } from './german/sentences.ts';
import { SHELF_SENTENCES } from './german/shelf.ts';

interface Said {
  readonly pattern: RegExp;
  readonly parts: readonly string[];
}

const escaped = (text: string): string => text.replace(/[.*+?^${}()|[\]\\]/g, '\\$&');

/** A figure ends where the words go on; one that ends the sentence holds no blank. */
const patternOf = (english: string): RegExp =>
  new RegExp(
    english
      .split('{}')
      .map(escaped)
      .join('(.+?)')
      .replace(/\(\.\+\?\)$/, '(\\S+)'),
  );

const GERMAN: readonly Said[] = [
  ...SENTENCES,
  ...FILE_SENTENCES,
  ...REVIEW_SENTENCES,
  ...SHELF_SENTENCES,
].map(([english, german]) => ({
  pattern: patternOf(english),
  parts: german.split('{}'),
}));

/** A name with its octave as the engine writes it, which alone stands so in a sentence. */
const NOTE = /\b([A-G](?:##?|bb?)?)(\d)(?=\s)/g;

/** A sentence of the engine or a device → the same in the language and with the note names of the page. */
export function sentenceIn(sentence: string, language: Language, naming: NoteNaming): string {
  const told = language === 'de' ? GERMAN.reduce(inGerman, sentence) : sentence;
  return told.replace(NOTE, (_, name: string, octave: string) => noteName(name, naming) + octave);
}

function inGerman(text: string, { pattern, parts }: Said): string {
  return text.replace(pattern, (_, ...rest: unknown[]) =>
    parts.map((part, at) => part + (at < parts.length - 1 ? figure(String(rest[at])) : '')).join(''),
  );
}

/** "12.3" → "12,3" */
function figure(text: string): string {
  return text.replace(/^(−?-?\d+)\.(\d+)$/, '$1,$2');
}
