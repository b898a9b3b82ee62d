/**
 * What a fresh clone needs before `npm start`, `npm test` or `npm run build` can run: the packages, and (with
 * --chromium) a Chromium for the browser tests. Does nothing when all is there.
 */
import { execSync } from 'node:child_process';
import { existsSync } from 'node:fs';

const run = (command) => execSync(command, { stdio: 'inherit' });

if (!existsSync(new URL('../../node_modules/.package-lock.json', import.meta.url))) run('npm ci');

if (process.argv.includes('--chromium')) {
  const { findChromium } = await import('./chromium.mjs');
  if (!findChromium()) {
    if (process.platform === 'linux' && process.getuid?.() === 0 && existsSync('/usr/bin/apt-get')) {
      run('apt-get update -qq && apt-get install -y -qq chromium');
    } else {
      console.error('The browser tests need Chromium or Chrome: install it, or set CHROMIUM=/path/to/it.');
      process.exit(1);
    }
  }
}
