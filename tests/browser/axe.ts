import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import type { Page } from 'playwright-core';
import { expect } from 'vitest';
import { atEverySize } from './visit.ts';

/** axe-core's rules for WCAG 2.2 A and AA and its best practices (Deque Systems). */
export const AXE = readFileSync(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8');

interface AxeResult {
  readonly violations: readonly {
    readonly id: string;
    readonly help: string;
    readonly nodes: readonly { readonly html: string; readonly failureSummary: string }[];
  }[];
}

/** What axe finds wrong with the page as it stands, one line a rule; empty: nothing. */
export async function violations(page: Page): Promise<readonly string[]> {
  if (!(await page.evaluate(() => 'axe' in window))) await page.evaluate(AXE);
  return page.evaluate(axeFinds);
}

/** To be run in the page. Put into words there: all that axe looked at, carried out of the browser, takes ten times as long as the looking. */
export async function axeFinds(): Promise<readonly string[]> {
  const { axe } = window as unknown as {
    axe: { run: (root: Document, options: { resultTypes: readonly string[] }) => Promise<AxeResult> };
  };
  // Of what passed, nothing is gathered.
  const result = await axe.run(document, { resultTypes: ['violations'] });
  return result.violations.map(
    ({ id, help, nodes }) => `${id}: ${help}: ${nodes.map((node) => node.html).join(' | ')}`,
  );
}

/** Axe finds nothing wrong, and nothing lies beyond the page's edge. `seen`: how the page is shown, for whoever reads of a failure. */
export async function nothingWrong(page: Page, seen = 'the page'): Promise<void> {
  await expect.poll(() => violations(page), { message: `axe: ${seen}` }).toEqual([]);
  await nothingBeyondItsEdge(page, seen);
}

/** … at every size, light and dark. */
export async function nothingWrongAtAnySize(page: Page): Promise<void> {
  await atEverySize(page, (seen) => nothingWrong(page, seen));
}

export async function nothingBeyondItsEdge(page: Page, seen = 'the page'): Promise<void> {
  await expect
    .poll(
      () => page.evaluate(() => document.documentElement.scrollWidth - document.documentElement.clientWidth),
      { message: `px beyond its edge: ${seen}` },
    )
    .toBeLessThanOrEqual(0);
}
