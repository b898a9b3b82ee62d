/** `npm run icons`: public/icon.svg → the PNGs that systems want where the page is installed as an app. */
import { readFileSync } from 'node:fs';
import { resolve } from 'node:path';
import { openBrowser } from './visit.ts';

const PUBLIC = resolve(import.meta.dirname, '../../public');
const PAPER = '#fbf8f2';

/** `share`: how much of the width the drawing takes; a maskable icon may lose a tenth at each side (W3C, Web App Manifest). */
const ICONS = [
  { name: 'icon-192.png', sizePx: 192, share: 0.84 },
  { name: 'icon-512.png', sizePx: 512, share: 0.84 },
  { name: 'icon-maskable-512.png', sizePx: 512, share: 0.64 },
  { name: 'icon-apple-180.png', sizePx: 180, share: 0.76 },
] as const;

// The string runs on to the edges, where a round mask cuts it.
const drawing = readFileSync(resolve(PUBLIC, 'icon.svg'), 'utf8')
  .replace('M0 20h32', 'M-40 20h112')
  .replace('<svg ', '<svg style="overflow:visible;display:block" ');
const browser = await openBrowser();
for (const { name, sizePx, share } of ICONS) {
  const page = await browser.newPage({ viewport: { width: sizePx, height: sizePx }, colorScheme: 'light' });
  await page.setContent(
    `<body style="margin:0;overflow:hidden;display:grid;place-items:center;height:100vh;background:${PAPER}">` +
      `<div style="width:${share * 100}%">${drawing}</div>`,
  );
  await page.screenshot({ path: resolve(PUBLIC, name) });
  await page.close();
}
await browser.close();
