import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import { build, preview } from 'vite';

const ROOT = resolve(import.meta.dirname, '../../..');

/** Builds and serves the page beside this file. Returns its address and how to end it. */
export async function serveSorting(): Promise<{ readonly url: string; readonly close: () => Promise<void> }> {
  const folder = mkdtempSync(join(tmpdir(), 'evenfall-sorting-'));
  const before = process.env['NODE_ENV'];
  process.env['NODE_ENV'] = 'production';
  await build({
    root: ROOT,
    mode: 'production',
    logLevel: 'warn',
    build: { outDir: folder, rollupOptions: { input: resolve(import.meta.dirname, 'page.html') } },
  });
  process.env['NODE_ENV'] = before;
  const server = await preview({
    root: ROOT,
    logLevel: 'warn',
    build: { outDir: folder },
    preview: { port: 0, host: '127.0.0.1', open: false },
  });
  return {
    url: `${server.resolvedUrls!.local[0]!}tests/browser/sorting/page.html`,
    close: async () => {
      await server.close();
      rmSync(folder, { recursive: true });
    },
  };
}
