import { cpSync, mkdtempSync, readFileSync } from 'node:fs';
import { createServer, type Server } from 'node:http';
import type { AddressInfo } from 'node:net';
import { tmpdir } from 'node:os';
import { extname, join } from 'node:path';
import { inject } from 'vitest';

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

/** The built page in a folder of its own, so that a test may put a newer version there, or take its network away. */
export interface OwnSite {
  readonly folder: string;
  /** with a slash at the end */
  readonly url: string;
  /** Nobody answers at its address any more. */
  readonly close: () => void;
}

export async function openOwnSite(): Promise<OwnSite> {
  const folder = mkdtempSync(join(tmpdir(), 'evenfall-site-'));
  cpSync(inject('siteFolder'), folder, { recursive: true });
  const server: Server = createServer((request, response) => {
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
