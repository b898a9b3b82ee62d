/**
 * What a fresh clone needs before `npm start`, `npm test` or `npm run build` can run: the packages of the lock file, and
 * (with --chromium) a Chromium for the browser tests, (with --engines) Firefox and WebKit for theirs. Does nothing when all is
 * there.
 */
import { execSync } from 'node:child_process';
import { existsSync, readFileSync } from 'node:fs';
import { findChromium } from './chromium.mjs';
import { ENGINE_PACKAGES, findEngines } from './engines.mjs';

const OLDEST_NODE = [20, 19];

const root = new URL('../../', import.meta.url);
const run = (command) =>
  execSync(command, {
    cwd: root,
    stdio: 'inherit',
    env: { ...process.env, DEBIAN_FRONTEND: 'noninteractive' },
  });

function giveUp(message) {
  console.error(message);
  process.exit(1);
}

/** A lock file, as npm writes it in the repository and again in node_modules → its packages; none where it is missing. */
function packagesIn(lockFile) {
  const path = new URL(lockFile, root);
  return existsSync(path) ? JSON.parse(readFileSync(path, 'utf8')).packages : {};
}

/** True when every package that this machine needs lies there in the version of the lock file. */
function packagesAreThere() {
  const installed = packagesIn('node_modules/.package-lock.json');
  return Object.entries(packagesIn('package-lock.json')).every(
    ([path, { version, optional, devOptional }]) =>
      path === '' || optional || devOptional || installed[path]?.version === version,
  );
}

const [major, minor] = process.versions.node.split('.').map(Number);
if (major < OLDEST_NODE[0] || (major === OLDEST_NODE[0] && minor < OLDEST_NODE[1])) {
  giveUp(`Evenfall needs Node ${OLDEST_NODE.join('.')} or newer; this is ${process.version}.`);
}

if (!packagesAreThere()) {
  console.log('Installing the packages of package-lock.json (about a minute, once) …');
  run('npm ci --no-audit --no-fund');
}

/** Installs what is missing where that is Debian, and somebody who may. `otherwise`: what is said where it is not. */
function install(what, packages, isThere, otherwise) {
  if (isThere()) return;
  const mayInstall =
    process.platform === 'linux' && process.getuid?.() === 0 && existsSync('/usr/bin/apt-get');
  if (!mayInstall) giveUp(otherwise);
  console.log(`Installing ${what} for the browser tests …`);
  run(
    `apt-get update -qq && apt-get install -y -qq --no-install-recommends ${packages.join(' ')} > /dev/null`,
  );
  if (!isThere()) giveUp(`${what} was installed, but is not in any of the usual places.`);
}

if (process.argv.includes('--chromium'))
  install(
    'Chromium',
    ['chromium-headless-shell', 'fonts-liberation'],
    () => findChromium() !== undefined,
    'The browser tests need Chromium or Chrome: install it, or say where it is: CHROMIUM=/path/to/it npm test',
  );
if (process.argv.includes('--engines'))
  install(
    'Firefox and WebKit',
    ENGINE_PACKAGES,
    () => findEngines() !== undefined,
    `Tests in Firefox and WebKit want a Debian that has these packages: ${ENGINE_PACKAGES.join(', ')}`,
  );
