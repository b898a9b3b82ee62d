import { tellIntention, tellKept, tellReport, tellWords } from '../../engine/index.ts';
import type { Intention, KeptNotice, Report, ToldWords, Words } from '../../engine/index.ts';
import { tellTrouble } from '../../io/troubles/index.ts';
import type { Trouble } from '../../io/troubles/index.ts';
import type { Strings } from './english/index.ts';
import { speaking } from './speaking.svelte.ts';

export {
  LANGUAGES,
  languageOf,
  learn,
  NAMINGS,
  speaking,
  Speaking,
  SPREADSHEETS,
} from './speaking.svelte.ts';
export type { Memory } from './speaking.svelte.ts';

/** The text strings in the language of the page; what is drawn with them is drawn anew when the language changes. */
export function strings(): Strings {
  return speaking.strings;
}

/** What is to know besides the playing, in the language of the page. */
export function notice(kept: KeptNotice): string {
  return tellKept(kept, speaking.locale);
}

/** What did not work, in the language of the page. */
export function troubleWords(trouble: Trouble): string {
  return tellTrouble(trouble, speaking.language);
}

/** What is said of an attempt, in the language of the page. */
export function told(report: Report): ToldWords {
  return tellReport(report, speaking.locale);
}

/** The same of what a list keeps of a report. */
export function toldWords(words: Words): ToldWords {
  return tellWords(words, speaking.locale);
}

/** How something is to be practised, in the language of the page. */
export function intentionWords(intention: Intention): string {
  return tellIntention(intention, speaking.locale);
}

/** The name of a sound; one that comes from no file is called in the language of the page. */
export function soundName(name: string): string {
  const { names } = strings().record;
  return Object.entries(names).find(([english]) => english === name)?.[1] ?? name;
}
