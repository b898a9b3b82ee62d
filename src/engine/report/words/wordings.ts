import type { Language } from '../../exercise/index.ts';
import { ENGLISH_WORDS } from './english/index.ts';
import type { Wording } from './english/index.ts';
import { GERMAN_WORDS } from './german/index.ts';

/** The same situations, told in each language. */
export const WORDINGS: Readonly<Record<Language, Wording>> = { en: ENGLISH_WORDS, de: GERMAN_WORDS };
