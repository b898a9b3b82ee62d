import type { Language, Locale } from '../../engine/index.ts';
import { ENGLISH } from './english.ts';
import { GERMAN } from './german.ts';
import type { Strings } from './types.ts';

export type { Strings } from './types.ts';
export const STRINGS: Readonly<Record<Language, Strings>> = { en: ENGLISH, de: GERMAN };

/** A language with what it usually calls the notes. */
export const localeOf = (language: Language): Locale => ({
  language,
  naming: language === 'de' ? 'german' : 'letters',
});
