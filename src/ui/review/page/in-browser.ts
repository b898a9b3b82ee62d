import { flushSync, mount, unmount } from 'svelte';
import type { Review } from '../../../io/review/index.ts';
import { speaking } from '../../language/index.ts';
import { documentOf } from './html.ts';
import Page from './Page.svelte';

/** A review → one HTML page that needs nothing else, in the language of the page. It is drawn where nobody sees it. */
export async function reviewPageInBrowser(review: Review): Promise<string> {
  const target = document.createElement('div');
  const page = mount(Page, { target, props: { review } });
  try {
    flushSync();
    return documentOf(review, target.innerHTML, speaking.language);
  } finally {
    await unmount(page);
  }
}
