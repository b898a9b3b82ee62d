import { tellReport, tellWords } from '../../engine/index.ts';
import type { Report, ToldWords, Words } from '../../engine/index.ts';
import { speaking } from './speaking.svelte.ts';

// A file of their own: the rules by which reports are told come with the first report, not with the page.

/** What is said of an attempt, in the language of the page. */
export function told(report: Report): ToldWords {
  return tellReport(report, speaking.locale);
}

/** The same of what a list keeps of a report. */
export function toldWords(words: Words): ToldWords {
  return tellWords(words, speaking.locale);
}
