import type { Language, Locale } from '../../engine/index.ts';
import { HELP as ENGLISH_HELP, type Help } from './english/help.ts';
import { MESSAGES as ENGLISH, type Messages } from './english/messages.ts';
import { REPORT as ENGLISH_REPORT } from './english/report.ts';
import { HELP as GERMAN_HELP } from './german/help.ts';
import { MESSAGES as GERMAN } from './german/messages.ts';
import { REPORT as GERMAN_REPORT } from './german/report.ts';
import type { ReportStrings } from './types.ts';

export type { Messages } from './english/messages.ts';
export type { ReportStrings } from './types.ts';

/** What stands in a report. */
export const REPORTS: Readonly<Record<Language, ReportStrings>> = { en: ENGLISH_REPORT, de: GERMAN_REPORT };
/** What the command says besides. */
export const MESSAGES: Readonly<Record<Language, Messages>> = { en: ENGLISH, de: GERMAN };
export const HELPS: Readonly<Record<Language, Help>> = { en: ENGLISH_HELP, de: GERMAN_HELP };

/** A language with what it usually calls the notes. */
export const localeOf = (language: Language): Locale => ({
  language,
  naming: language === 'de' ? 'german' : 'letters',
});
