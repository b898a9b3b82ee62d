import { resolve } from 'node:path';
import type { Browser } from 'playwright-core';
import { createServer } from 'vite';
import { visit, type Visit } from '../visit.ts';

const ROOT = resolve(import.meta.dirname, '../../..');

/** Serves the sources as they are, for tests of one room in a real browser. Returns where and how to end it. */
export async function openWorkshop(): Promise<{ readonly url: string; readonly close: () => Promise<void> }> {
  const server = await createServer({
    root: ROOT,
    logLevel: 'error',
    server: { port: 0, host: '127.0.0.1', open: false, hmr: false, watch: null },
  });
  await server.listen();
  const url = server.resolvedUrls?.local[0];
  if (url === undefined) throw new Error('vite gave no address; is port 0 allowed on 127.0.0.1?');
  return { url, close: () => server.close() };
}

/** A page of the workshop that has a store: the journal's, or another room's; each visit has a browser store of its own. */
export async function visitDoor(browser: Browser, url: string, room = 'journal'): Promise<Visit> {
  const there = await visit(browser, `${url}tests/browser/${room}/door.html`);
  await there.page.waitForFunction(() => 'door' in window, undefined, { timeout: 60_000 });
  return there;
}
