import type { Page } from 'playwright-core';

/** What the page showed for as long as its state was the same: the most pearls, and the rest as it was at the end. */
export interface Stage {
  readonly state: string;
  readonly pearls: number;
  readonly alerts: readonly string[];
  readonly verdict: string;
  readonly next: string;
}

/** To be run before the page: notes down its stages, so that none is missed by whoever looks too late. */
export function followStages(page: Page): Promise<unknown> {
  return page.addInitScript(() => {
    const stages: Stage[] = [];
    Object.assign(window, { stages });
    const textOf = (selector: string): string =>
      document.querySelector(selector)?.textContent.replaceAll('\u00a0', ' ').trim() ?? '';
    const look = (): void => {
      const state = textOf('.state');
      const same = stages.at(-1)?.state === state ? stages.pop() : undefined;
      const pearls = Math.max(same?.pearls ?? 0, document.querySelectorAll('circle.struck').length);
      const alerts = [...document.querySelectorAll('[role=alert]')].map(({ textContent }) => textContent);
      stages.push({ state, pearls, alerts, verdict: textOf('#verdict'), next: textOf('.next') });
    };
    new MutationObserver(look).observe(document, { subtree: true, childList: true, characterData: true });
  });
}

interface Followed {
  readonly stages: readonly Stage[];
}

/** Waits until an attempt is told, by its number → the stages up to then. */
export async function stagesUntilTold(page: Page, number: number): Promise<readonly Stage[]> {
  const told = await page.waitForFunction((words) => {
    const { stages } = window as unknown as Followed;
    const at = stages.findIndex(({ state, verdict }) => state.startsWith(words) && verdict !== '');
    return at < 0 ? null : stages.slice(0, at + 1);
  }, `Attempt ${number}. Ready for the next`);
  return (await told.jsonValue())!;
}
