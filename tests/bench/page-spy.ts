import type { Page } from 'playwright-core';

/** One note of the live string: where its blow lies in the microphone's sound, and how long after it a pearl stood there. */
export interface DrawnNote {
  readonly timeSec: number;
  readonly midi: number;
  /** from the arrival of the blow's own samples in the page to the frame in which its pearl is drawn, ms */
  readonly delayMs: number;
}

export interface Spied {
  readonly notes: readonly DrawnNote[];
  /** from the ear's word that an attempt was over to the frame in which its verdict stands, ms */
  readonly verdictMs: readonly number[];
}

/** To be run before the page: notes down what the live ear is given and says, and when it is seen. */
export function spyOnListening(page: Page): Promise<unknown> {
  return page.addInitScript(() => {
    const seen = {
      /** page clock less sound, ms: of the blocks that came soonest */
      offsetMs: Infinity,
      drawnMs: {} as Record<string, number>,
      notes: new Map<number, { timeSec: number; midi: number }>(),
      verdictMs: [] as number[],
    };
    Object.assign(window, { spied: seen });
    const post = Worker.prototype.postMessage as (message: unknown, ...rest: unknown[]) => void;
    let frames = 0;
    let rateHz = 48_000;
    Worker.prototype.postMessage = function (this: Worker, message: unknown, ...rest: unknown[]) {
      const told = message as {
        kind?: string;
        sampleRateHz?: number;
        channels?: readonly Float32Array[];
      };
      if (told.kind === 'open') {
        rateHz = told.sampleRateHz!;
        this.addEventListener('message', ({ data }: MessageEvent) => {
          for (const event of data.events ?? []) {
            if (event.kind === 'struck' && event.final) seen.notes.set(event.id, event);
            if (event.kind === 'withdrawn') seen.notes.delete(event.id);
            if (event.kind === 'ended') awaitVerdict(performance.now());
          }
        });
      }
      if (told.kind === 'block') {
        frames += told.channels![0]!.length;
        seen.offsetMs = Math.min(seen.offsetMs, performance.now() - (frames / rateHz) * 1000);
      }
      return post.call(this, message, ...rest);
    };
    const awaitVerdict = (sinceMs: number): void => {
      const look = (): void => {
        if (document.querySelector('#verdict') === null) requestAnimationFrame(look);
        else requestAnimationFrame(() => seen.verdictMs.push(performance.now() - sinceMs));
      };
      requestAnimationFrame(look);
    };
    new MutationObserver((changes) => {
      for (const { addedNodes } of changes)
        for (const node of addedNodes)
          if (node instanceof Element)
            for (const pearl of [node, ...node.querySelectorAll('[data-note]')]) {
              const id = pearl.getAttribute('data-note');
              if (id !== null && !(id in seen.drawnMs))
                requestAnimationFrame(() => (seen.drawnMs[id] ??= performance.now()));
            }
    }).observe(document, { childList: true, subtree: true });
  });
}

export function whatWasSpied(page: Page): Promise<Spied> {
  return page.evaluate(() => {
    const { spied } = window as unknown as {
      spied: {
        offsetMs: number;
        drawnMs: Record<string, number>;
        notes: Map<number, { timeSec: number; midi: number }>;
        verdictMs: number[];
      };
    };
    const notes = [...spied.notes].map(([id, { timeSec, midi }]) => ({
      timeSec,
      midi,
      delayMs: (spied.drawnMs[id] ?? Infinity) - (spied.offsetMs + timeSec * 1000),
    }));
    return { notes, verdictMs: spied.verdictMs };
  });
}

/** How far apart attempts lie at least, seconds. */
const APART_SEC = 2;

/** Notes → attempts of which every note was heard: a machine that is busy with other things loses sound now and then. */
export function wholeAttempts(
  notes: readonly DrawnNote[],
  notesEach: number,
): readonly (readonly DrawnNote[])[] {
  const inOrder = notes.toSorted((a, b) => a.timeSec - b.timeSec);
  const starts = inOrder.flatMap(({ timeSec }, i) =>
    i === 0 || timeSec - inOrder[i - 1]!.timeSec > APART_SEC ? [i] : [],
  );
  return starts
    .map((from, i) => inOrder.slice(from, starts[i + 1] ?? inOrder.length))
    .filter((attempt) => attempt.length === notesEach);
}
