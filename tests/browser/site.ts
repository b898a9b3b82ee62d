import { mkdtempSync, readdirSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import { build, preview } from 'vite';
import type { TestProject } from 'vitest/node';

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

interface Served {
  readonly url: string;
  /** where it lies; it goes when it is closed */
  readonly folder: string;
  readonly close: () => Promise<void>;
}

/** Builds pages as they are delivered, into a folder of their own, and serves them from the machine itself. */
async function serve(input: readonly string[]): Promise<Served> {
  // Whatever is built beside it, by another run or by `npm run build`, leaves it alone.
  const outDir = mkdtempSync(join(tmpdir(), 'evenfall-served-'));
  // Vitest says "test", which would build the development version of Svelte.
  const before = process.env['NODE_ENV'];
  process.env['NODE_ENV'] = 'production';
  await build({
    root: ROOT,
    mode: 'production',
    logLevel: 'warn',
    build: { outDir, rollupOptions: { input: [...input], checks: { pluginTimings: false } } },
  });
  process.env['NODE_ENV'] = before;
  const server = await preview({
    root: ROOT,
    logLevel: 'warn',
    build: { outDir },
    preview: { port: 0, host: '127.0.0.1', open: false },
  });
  const url = server.resolvedUrls?.local[0];
  if (url === undefined) throw new Error('vite preview gave no address; is port 0 allowed on 127.0.0.1?');
  return {
    url,
    folder: outDir,
    close: async () => {
      await server.close();
      rmSync(outDir, { recursive: true });
    },
  };
}

/** The page as it is delivered. */
export const serveSite = (): Promise<Served> => serve([resolve(ROOT, 'index.html')]);

/** The pages by which tests come at one room in a real browser, built together: what they share is built once. */
export const serveWorkshop = (): Promise<Served> =>
  serve(
    readdirSync(import.meta.dirname, { recursive: true, encoding: 'utf8' })
      .filter((path) => path.endsWith('.html'))
      .map((path) => join(import.meta.dirname, path)),
  );

/** vitest's global set-up for the browser tests. */
export default async function setup(project: TestProject): Promise<() => Promise<void>> {
  const site = await serveSite();
  const workshop = await serveWorkshop();
  project.provide('siteUrl', site.url);
  project.provide('siteFolder', site.folder);
  project.provide('workshopUrl', workshop.url);
  return async () => {
    await site.close();
    await workshop.close();
  };
}
