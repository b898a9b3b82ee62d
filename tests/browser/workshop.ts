import type { Browser } from 'playwright-core';
import { inject } from 'vitest';
import { visit, type Visit } from './visit.ts';

/** A page of the workshop (tests/browser/ROOM/door.html) that hands a room to the test; each visit has a store of its own. */
export async function visitDoor(browser: Browser, room: string): Promise<Visit> {
  const there = await visit(browser, `${inject('workshopUrl')}tests/browser/${room}/door.html`);
  await there.page.waitForFunction(() => 'door' in window);
  return there;
}
