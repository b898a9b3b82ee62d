import * as v from 'valibot';
import type { Language, Locale, NoteNaming } from '../exercise/index.ts';
import { ENGLISH } from '../exercise/index.ts';
import { english } from './english.ts';
import { german } from './german.ts';
import { NOTICE } from './types.ts';
import type { KeptNotice, Notice, Tellings } from './types.ts';
import { fromVersion01 } from './version-0-1.ts';

export { NOTICE, SOUND_NOTICE } from './types.ts';
export type { KeptNotice, Notice, NoticeName, SoundNotice } from './types.ts';

const LANGUAGES: Readonly<Record<Language, (naming: NoteNaming) => Tellings>> = { en: english, de: german };

/** A notice → its sentence, in a language and with its names of notes. */
export function tellNotice(notice: Notice, { language, naming }: Locale = ENGLISH): string {
  // The table's row for this notice takes this notice's values: which no type can follow through a lookup.
  return (LANGUAGES[language](naming)[notice.notice] as (values: Notice) => string)(notice);
}

/**
 * The same for what was kept: a sentence of version 0.1 is told as the notice that it is. A sentence that is none of ours
 * stays as it is kept; a notice of a later version cannot be told.
 */
export function tellKept(kept: KeptNotice, locale: Locale): string {
  const notice = typeof kept === 'string' ? fromVersion01(kept) : kept;
  if (notice !== null && v.is(NOTICE, notice)) return tellNotice(notice, locale);
  return typeof kept === 'string' ? kept : '';
}
