import { mkdtempSync, readdirSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import { build, type BuildOptions } from 'vite';
import type { TestProject } from 'vitest/node';
import { serveFolder, type ServedFolder } from './static.ts';

declare module 'vitest' {
  interface ProvidedContext {
    /** where the built page is served, with a slash at the end */
    siteUrl: string;
    /** where it lies */
    siteFolder: string;
    /** where the pages of the tests are served (tests/browser/ROOM/*.html), with a slash at the end */
    workshopUrl: string;
  }
}

const ROOT = resolve(import.meta.dirname, '../..');

/** Builds pages as they are delivered, into a folder of their own, and serves them from the machine itself. */
async function serve(
  input: readonly string[],
  mode: 'production' | 'workshop',
  own: BuildOptions = {},
): Promise<ServedFolder> {
  // Whatever is built beside it, by another run or by `npm run build`, leaves it alone.
  const outDir = mkdtempSync(join(tmpdir(), 'evenfall-served-'));
  await build({
    root: ROOT,
    mode,
    logLevel: 'warn',
    build: { outDir, ...own, rollupOptions: { input: [...input], checks: { pluginTimings: false } } },
  });
  const served = await serveFolder(outDir);
  return {
    ...served,
    close: () => {
      served.close();
      rmSync(outDir, { recursive: true });
    },
  };
}

/** The page as it is delivered. */
export const serveSite = (): Promise<ServedFolder> => serve([resolve(ROOT, 'index.html')], 'production');

/** The pages by which tests come at one room in a real browser, built together: what they share is built once. */
export const serveWorkshop = (): Promise<ServedFolder> =>
  serve(
    readdirSync(import.meta.dirname, { recursive: true, encoding: 'utf8' })
      .filter((path) => path.endsWith('.html'))
      .map((path) => join(import.meta.dirname, path)),
    'workshop',
    // Nobody else is given these.
    { minify: false, license: false },
  );

/** vitest's global set-up for the browser tests. */
export default async function setup(project: TestProject): Promise<() => void> {
  // Vitest says "test", which would build the development version of Svelte.
  const before = process.env['NODE_ENV'];
  process.env['NODE_ENV'] = 'production';
  const [site, workshop] = await Promise.all([serveSite(), serveWorkshop()]);
  process.env['NODE_ENV'] = before;
  project.provide('siteUrl', site.url);
  project.provide('siteFolder', site.folder);
  project.provide('workshopUrl', workshop.url);
  return () => {
    site.close();
    workshop.close();
  };
}
