/** Finds Firefox and WebKit, and what they need beside them, where Debian has them. */
import { existsSync, readdirSync } from 'node:fs';
import { join } from 'node:path';

/** Debian's packages of all of them. */
export const ENGINE_PACKAGES = ['firefox-esr', 'pulseaudio', 'webkit2gtk-driver', 'xvfb'];

const first = (paths) => paths.find((path) => path && existsSync(path));

export function findEngines() {
  const libraries = existsSync('/usr/lib')
    ? readdirSync('/usr/lib').map((name) => join('/usr/lib', name))
    : [];
  const found = {
    firefox: first([process.env['FIREFOX'], '/usr/bin/firefox-esr', '/usr/bin/firefox']),
    loudspeaker: first(['/usr/bin/pulseaudio']),
    webKit: first(libraries.map((folder) => join(folder, 'webkit2gtk-4.1/MiniBrowser'))),
    driver: first(['/usr/bin/WebKitWebDriver']),
    screen: first(['/usr/bin/Xvfb']),
  };
  return Object.values(found).includes(undefined) ? undefined : found;
}
