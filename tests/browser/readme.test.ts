import { readFileSync } from 'node:fs';
import { resolve } from 'node:path';
import { describe, expect, inject, it } from 'vitest';
import { PICTURES, shownIn } from './readme.ts';
import { sharedBrowser } from './visit.ts';

/** What the pictures showed when they were taken. */
const TAKEN = JSON.parse(readFileSync(resolve(import.meta.dirname, 'readme.json'), 'utf8')) as Readonly<
  Record<string, readonly string[]>
>;

describe('the README’s pictures', () => {
  it.each(PICTURES)(
    '$file shows what the page shows now; if not: npm run screens -- --readme',
    async (picture) => {
      const { page, close } = await picture.open(await sharedBrowser(), inject('siteUrl'));
      await expect.poll(() => shownIn(page, picture.clip)).toEqual(TAKEN[picture.file]);
      await close();
    },
  );
});
