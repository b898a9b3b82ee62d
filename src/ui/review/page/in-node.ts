import { render } from 'svelte/server';
import type { Language } from '../../../engine/index.ts';
import type { Review } from '../../../io/review/index.ts';
import { learn, speaking } from '../../language/index.ts';
import { documentOf } from './html.ts';
import Page from './Page.svelte';

await learn('de');

/** A review → one HTML page that needs nothing else, in the language asked for. For the command line: no browser is there. */
export function reviewPage(review: Review, language: Language): string {
  const before = speaking.language;
  speaking.speak(language);
  try {
    return documentOf(review, render(Page, { props: { review } }).body, language);
  } finally {
    speaking.speak(before);
  }
}
