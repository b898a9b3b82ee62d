import type { Browser } from 'playwright-core';
import { it as bare } from 'vitest';
import { openBrowser } from './visit.ts';

export { followSound, hearWhole, moreSound, play, recordFor, recordWhole } from './sounding.ts';

interface Hearing {
  /** A browser that hears a WAV (its path), is refused ('refused') or has no microphone; it ends with the test. */
  readonly hearing: (microphone?: string) => Promise<Browser>;
}

/** Tests that listen. Chromium takes its microphone when it starts, so each test has browsers of its own. */
export const it = bare.extend<Hearing>({
  hearing: async ({ onTestFinished }, use) => {
    await use(async (microphone) => {
      const browser = await openBrowser(microphone);
      onTestFinished(() => browser.close());
      return browser;
    });
  },
});
