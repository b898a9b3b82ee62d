/** Work of so long between two turns of the event loop, ms: the page answers a touch in between. */
const WORK_MS = 8;

/** How a long piece of work lets others have their turn: to be awaited often; most times it only looks at the clock. */
export function createTurns(): () => Promise<void> | undefined {
  let sinceMs = performance.now();
  return () => {
    if (performance.now() - sinceMs < WORK_MS) return undefined;
    return new Promise((resolve) =>
      setTimeout(() => {
        sinceMs = performance.now();
        resolve();
      }, 0),
    );
  };
}
