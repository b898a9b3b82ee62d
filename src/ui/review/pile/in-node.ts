import { render } from 'svelte/server';
import { documentWithout } from '../page/html.ts';
import Pile from './Pile.svelte';
import pileCss from './pile.css?raw';
import type { PileSummary } from './types.ts';

/** The summary of a pile of recordings → one HTML page that needs nothing else, in the language of the command. */
export function pilePage(pile: PileSummary): string {
  const { title, language } = pile;
  return documentWithout(title, render(Pile, { props: { pile } }).body, language, pileCss);
}
