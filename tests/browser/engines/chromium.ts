import { openBrowser } from '../visit.ts';
import { asText, placeToTouch, type Engine, type Scheme } from './tab.ts';

/** Chromium as the other tests drive it, by the same hand as the other two engines. */
export async function openChromium(scheme: Scheme = 'light'): Promise<Engine> {
  const browser = await openBrowser();
  const page = await browser.newPage({ colorScheme: scheme, reducedMotion: 'reduce' });
  return {
    name: 'Chromium',
    version: browser.version(),
    tab: {
      open: async (url) => void (await page.goto(url)),
      reload: async () => void (await page.reload()),
      load: async (script) => void (await page.evaluate(script)),
      run: async (inPage, ...values) => {
        const called = `(${asText(inPage)})(${JSON.stringify(JSON.stringify(values))})`;
        return JSON.parse(await page.evaluate<string>(called)) as never;
      },
      touch: async (selector) => {
        const { x, y } = await page.evaluate(placeToTouch, selector);
        await page.mouse.click(x, y);
      },
      give: async (selector, path) => page.locator(selector).first().setInputFiles(path),
      resize: (width, height) => page.setViewportSize({ width, height }),
    },
    close: () => browser.close(),
  };
}
