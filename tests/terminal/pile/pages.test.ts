import { describe, expect, it } from 'vitest';
import { arrange } from '../../../src/terminal/pile/arrange.ts';
import { pagesOf } from '../../../src/terminal/pile/pages.ts';
import type { Page } from '../../../src/terminal/pile/pages.ts';
import type { Outcome } from '../../../src/terminal/pile/types.ts';
import { reviewPage } from '../../../src/ui/review/page/in-node.ts';
import { pilePage } from '../../../src/ui/review/pile/in-node.ts';
import { recordingOf, sortedOf } from './piles.ts';

const HOSTILE = '"><script>alert(1)</script><img src=x onerror=alert(2)>\'&amp;javascript:alert(3)';

async function pagesFor(outcomes: readonly Outcome[]): Promise<readonly Page[]> {
  const pages: Page[] = [];
  const writers = {
    writeSummary: (pile: Parameters<typeof pilePage>[0]) => Promise.resolve(pilePage(pile)),
    writePage: (...given: Parameters<typeof reviewPage>) => Promise.resolve(reviewPage(...given)),
  };
  for await (const page of pagesOf(arrange(outcomes), Date.UTC(2026, 10, 25), writers)) pages.push(page);
  return pages;
}

const damaged = (name: string) => ({ trouble: 'within', name, of: { trouble: 'nothing-decoded' } }) as const;
const WITHOUT: Outcome = {
  recording: recordingOf('bad.m4a', ''),
  problem: 'unreadable',
  trouble: damaged('bad.m4a'),
};

describe('a pile as pages', () => {
  it('has an index by student and a page for each recording, and every link leads to one', async () => {
    const pages = await pagesFor([
      sortedOf(recordingOf('Mara/a.m4a', 'Mara', Date.UTC(2026, 10, 7)), [2]),
      sortedOf(recordingOf('Mara/b.m4a', 'Mara', Date.UTC(2026, 10, 14)), [0, 1]),
      WITHOUT,
    ]);
    expect(pages.map(({ name }) => name)).toEqual(['index.html', 'recording-1.html', 'recording-2.html']);
    const [index, first, second] = pages.map(({ html }) => html);
    const links = [...index!.matchAll(/href="([^"]*)"/g)].map((match) => match[1]);
    expect(links).toEqual(['recording-1.html', 'recording-2.html', 'recording-2.html']);
    expect(index).toMatch(/<h2>Mara<\/h2>/);
    expect(index).toMatch(/Since 7 Nov 2026: fewer mistakes, 0 \(before 2\)\./);
    expect(index).toMatch(/Left out[\s\S]*bad\.m4a: No sound could be read/);
    expect(first!.match(/<article>/g)).toHaveLength(1);
    expect(second!.match(/<article>/g)).toHaveLength(2);
  });

  it('shows what comes from outside as text only, needs nothing else and runs nothing', async () => {
    const pages = await pagesFor([
      sortedOf(recordingOf(HOSTILE, HOSTILE), [1]),
      { recording: recordingOf(HOSTILE, ''), problem: 'unreadable', trouble: damaged(HOSTILE) },
    ]);
    expect(pages).toHaveLength(2);
    for (const { html } of pages) {
      expect(html).not.toMatch(/<script|<img|<link|<iframe|url\(|@import/i);
      expect(html).toMatch(/content="default-src 'none'; style-src 'unsafe-inline'/);
      expect(html).toMatch(/&lt;script>|&lt;script&gt;/);
      for (const [, address] of html.matchAll(/(?:href|src)="([^"]*)"/g))
        expect(address).toMatch(/^recording-\d+\.html$/);
    }
  });
});
