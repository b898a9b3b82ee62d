/** Finds the machine's Chromium or Chrome: $CHROMIUM first, then the usual places. */
import { existsSync } from 'node:fs';

const USUAL_PLACES = [
  // The same engine without the windows about it: a visit takes half the time.
  '/usr/bin/chromium-headless-shell',
  '/usr/bin/chromium',
  '/usr/bin/chromium-browser',
  '/usr/bin/google-chrome',
  '/Applications/Google Chrome.app/Contents/MacOS/Google Chrome',
  '/Applications/Chromium.app/Contents/MacOS/Chromium',
];

/** @returns {string | undefined} the path of the first that exists */
export function findChromium() {
  return [process.env['CHROMIUM'], ...USUAL_PLACES].find((path) => path && existsSync(path));
}
