import { readFileSync } from 'node:fs';
import { createServer } from 'node:http';
import type { AddressInfo } from 'node:net';
import { extname, join } from 'node:path';

const TYPES: Readonly<Record<string, string>> = {
  '.css': 'text/css',
  '.html': 'text/html',
  '.js': 'text/javascript',
  '.png': 'image/png',
  '.svg': 'image/svg+xml',
  '.wav': 'audio/wav',
  '.webmanifest': 'application/manifest+json',
  '.woff2': 'font/woff2',
};

/** A folder, served as it lies. Nothing is packed for a way that it does not go: that took as long as drawing the page. */
export interface ServedFolder {
  readonly folder: string;
  /** with a slash at the end */
  readonly url: string;
  /** Nobody answers at its address any more. */
  readonly close: () => void;
}

export async function serveFolder(folder: string): Promise<ServedFolder> {
  const server = createServer((request, response) => {
    const { pathname } = new URL(request.url ?? '/', 'http://localhost');
    const file = join(folder, pathname.endsWith('/') ? `${pathname}index.html` : pathname);
    try {
      const body = readFileSync(file);
      response.writeHead(200, { 'content-type': TYPES[extname(file)] ?? 'text/plain' }).end(body);
    } catch {
      response.writeHead(404).end();
    }
  });
  await new Promise<void>((listening) => server.listen(0, '127.0.0.1', listening));
  return {
    folder,
    url: `http://127.0.0.1:${(server.address() as AddressInfo).port}/`,
    close: () => {
      server.closeAllConnections();
      server.close();
    },
  };
}
