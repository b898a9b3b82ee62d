import type { Browser } from 'playwright-core';

/** One stretch of work on the page's main thread. */
export interface Task {
  /** as the clock on the wall has it: other programs of the machine lengthen it */
  readonly wallMs: number;
  /** what the thread itself worked */
  readonly workMs: number;
}

interface TraceEvent {
  readonly name: string;
  readonly ph: string;
  readonly pid: number;
  readonly tid: number;
  readonly dur?: number;
  readonly tdur?: number;
  readonly args?: { readonly name?: string };
}

/** By this mark the trace knows which processes are those of the pages: Chromium's address bar is a page too, and not ours. */
const MARK = 'evenfall is here';

/** What the main threads of all pages did while `act` ran, longest work first (Chromium's own trace, "toplevel"). */
export async function mainThreadTasks(browser: Browser, act: () => Promise<void>): Promise<readonly Task[]> {
  const session = await browser.newBrowserCDPSession();
  const events: TraceEvent[] = [];
  session.on('Tracing.dataCollected', ({ value }) => events.push(...(value as unknown as TraceEvent[])));
  const complete = new Promise<void>((resolve) => session.once('Tracing.tracingComplete', () => resolve()));
  const mark = async (): Promise<void> => {
    for (const page of browser.contexts().flatMap((context) => context.pages()))
      await page.evaluate((name) => void performance.mark(name), MARK);
  };
  await session.send('Tracing.start', {
    transferMode: 'ReportEvents',
    traceConfig: {
      includedCategories: ['toplevel', 'blink.user_timing', '__metadata'],
      excludedCategories: ['*'],
    },
  });
  await mark();
  await act();
  await mark();
  await session.send('Tracing.end');
  await complete;
  await session.detach();
  const ours = new Set(events.filter(({ name }) => name === MARK).map(({ pid }) => pid));
  const main = new Set(
    events
      .filter(
        ({ name, args, pid }) => name === 'thread_name' && args?.name === 'CrRendererMain' && ours.has(pid),
      )
      .map(({ pid, tid }) => `${pid} ${tid}`),
  );
  return events
    .filter(({ ph, pid, tid, dur }) => ph === 'X' && dur !== undefined && main.has(`${pid} ${tid}`))
    .map(({ dur = 0, tdur }) => ({ wallMs: dur / 1000, workMs: (tdur ?? dur) / 1000 }))
    .sort((a, b) => b.workMs - a.workMs);
}
