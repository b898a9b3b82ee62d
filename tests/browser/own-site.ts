import { cpSync, mkdtempSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { inject } from 'vitest';
import { serveFolder, type ServedFolder } from './static.ts';

/** The built page in a folder of its own, so that a test may put a newer version there, or take its network away. */
export function openOwnSite(): Promise<ServedFolder> {
  const folder = mkdtempSync(join(tmpdir(), 'evenfall-site-'));
  cpSync(inject('siteFolder'), folder, { recursive: true });
  return serveFolder(folder);
}
