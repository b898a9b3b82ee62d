import { flushSync, mount, unmount } from 'svelte';
import type { Review } from '../../../io/review/index.ts';
import tokensCss from '../../kit/tokens.css?raw';
import pearlsCss from '../../plots/pearls/pearls.css?raw';
import '../../report/still/sheet.css';
import pageCss from './page.css?raw';
import Page from './Page.svelte';

/** What the page says of its body, said of the sheet. */
const SHEET_CSS = ':host { font: 14px/1.45 var(--serif); }';

/**
 * A review → printed, a sheet an attempt, as its web page would be; then taken away again. It stands beside the page in a shadow
 * of its own, where it wears the web page's styles and those of the page do not reach it.
 */
export function printReview(review: Review): void {
  const host = document.createElement('div');
  host.className = 'sheet on-paper';
  const shadow = host.attachShadow({ mode: 'open' });
  const styles = new CSSStyleSheet();
  styles.replaceSync([tokensCss, pearlsCss, pageCss, SHEET_CSS].join('\n'));
  shadow.adoptedStyleSheets = [styles];
  document.body.append(host);
  const page = mount(Page, { target: shadow, props: { review } });
  flushSync();
  const done = (): void => {
    void unmount(page);
    host.remove();
  };
  window.addEventListener('afterprint', done, { once: true });
  window.print();
}
