import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import type { Page } from 'playwright-core';

/** axe-core's rules for WCAG 2.2 A and AA and its best practices (Deque Systems). */
const AXE = readFileSync(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8');

interface AxeResult {
  readonly violations: readonly {
    readonly id: string;
    readonly help: string;
    readonly nodes: readonly { readonly html: string; readonly failureSummary: string }[];
  }[];
}

/** What axe finds wrong with the page as it stands, one line a rule; empty: nothing. */
export async function violations(page: Page): Promise<readonly string[]> {
  await page.evaluate(AXE);
  const result = await page.evaluate(() =>
    (window as unknown as { axe: { run: (root: Document) => Promise<AxeResult> } }).axe.run(document),
  );
  return result.violations.map(
    ({ id, help, nodes }) => `${id}: ${help}: ${nodes.map((node) => node.html).join(' | ')}`,
  );
}
