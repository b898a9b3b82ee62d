import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';

/**
 * vitest's global set-up: what tests and browsers lay into the system's folder for temporary files lies in one of its folders, which
 * is removed when the run is over.
 */
export default function setup(): () => void {
  const before = process.env['TMPDIR'];
  const folder = mkdtempSync(join(tmpdir(), 'evenfall-tests-'));
  process.env['TMPDIR'] = folder;
  return () => {
    if (before === undefined) delete process.env['TMPDIR'];
    else process.env['TMPDIR'] = before;
    // A browser that is about to end may still lay something aside.
    rmSync(folder, { recursive: true, force: true, maxRetries: 10 });
  };
}
