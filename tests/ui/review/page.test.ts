import { writeFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { reviewPage } from '../../../src/ui/review/page/in-node.ts';
import { madeUp } from '../../io/review/made-up.ts';

describe('a review as one page', () => {
  it('is whole', () => {
    const html = reviewPage(madeUp(), 'en');
    writeFileSync('/tmp/review-page.html', html);
    expect(html).toMatch(/Student Seven/);
  });
});
