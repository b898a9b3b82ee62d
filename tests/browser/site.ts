import { resolve } from 'node:path';
import { build, preview } from 'vite';
import type { TestProject } from 'vitest/node';

declare module 'vitest' {
  interface ProvidedContext {
    /** where the built page is served, with a slash at the end */
    siteUrl: string;
  }
}

const ROOT = resolve(import.meta.dirname, '../..');

/** The page as it is delivered: built once, served from the machine itself. Returns its address and how to end it. */
export async function serveSite(): Promise<{ readonly url: string; readonly close: () => Promise<void> }> {
  // Vitest says "test", which would build the development version of Svelte.
  const before = process.env['NODE_ENV'];
  process.env['NODE_ENV'] = 'production';
  await build({ root: ROOT, mode: 'production', logLevel: 'warn' });
  process.env['NODE_ENV'] = before;
  const server = await preview({
    root: ROOT,
    logLevel: 'warn',
    preview: { port: 0, host: '127.0.0.1', open: false },
  });
  const url = server.resolvedUrls?.local[0];
  if (url === undefined) throw new Error('vite preview gave no address; is port 0 allowed on 127.0.0.1?');
  return { url, close: () => server.close() };
}

/** vitest's global set-up for the browser tests. */
export default async function setup(project: TestProject): Promise<() => Promise<void>> {
  const { url, close } = await serveSite();
  project.provide('siteUrl', url);
  return close;
}
