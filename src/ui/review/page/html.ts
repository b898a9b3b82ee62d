import type { Language } from '../../../engine/index.ts';
import type { Review } from '../../../io/review/index.ts';
import { strings } from '../../language/index.ts';
import tokensCss from '../../kit/tokens.css?raw';
import pearlsCss from '../../plots/pearls/pearls.css?raw';
import pageCss from './page.css?raw';
import { soundsIn, withSounds } from './sounds.ts';

/** What a page that asks nothing of anybody may do: wear its own styles, and show and sound what it holds itself. */
const POLICY =
  "default-src 'none'; style-src 'unsafe-inline'; img-src data:; media-src data:; base-uri 'none'; form-action 'none'";

/** Comments that Svelte leaves where parts of a page come and go. No text of a review can look like one: its "<" is `&lt;`. */
const SVELTES_OWN = /<!--.*?-->/gs;

/** What Page.svelte came to, as text → a whole document that needs nothing else. No script is in it. */
export function documentOf(review: Review, body: string, language: Language): string {
  return wholePage(titleOf(review), withSounds(body.replace(SVELTES_OWN, ''), soundsIn(review)), language);
}

/** The same for any other page without sounds; `styles`: more than those of a review. */
export function documentWithout(title: string, body: string, language: Language, styles: string): string {
  return wholePage(title, body.replace(SVELTES_OWN, ''), language, styles);
}

function wholePage(title: string, body: string, language: Language, styles = ''): string {
  return `<!doctype html>
<html lang="${language}">
<head>
<meta charset="utf-8">
<meta http-equiv="Content-Security-Policy" content="${POLICY}">
<meta name="viewport" content="width=device-width, initial-scale=1">
<meta name="referrer" content="no-referrer">
<title>${escaped(title)}</title>
<style>
${tokensCss}
${pearlsCss}
${pageCss}${styles}
</style>
</head>
<body>
${body}
</body>
</html>
`;
}

/** What the page is called. */
export function titleOf({ kind, student }: Pick<Review, 'kind' | 'student'>): string {
  const t = strings().review;
  return kind === 'review' ? t.title(student) : t.sentTitle(student);
}

function escaped(text: string): string {
  return text.replaceAll('&', '&amp;').replaceAll('<', '&lt;').replaceAll('>', '&gt;');
}
