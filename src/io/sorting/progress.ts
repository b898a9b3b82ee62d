/** Share of the work that is done when all sound has been decoded and heard; what follows takes the rest. */
export const LISTENING_SHARE = 0.9;

/** A sign of life so often at least, ms, while a decoder gives sound at all. */
const SIGN_MS = 1_000;

/**
 * Tells a share only when it has grown by a hundredth, since a decoder goes through thousands of blocks a second; and each
 * second whatever it is, so that whoever waits hears that it gets on.
 */
export function createTeller(tell: (share: number) => void): (share: number) => void {
  let told = 0;
  let toldMs = performance.now();
  return (share) => {
    const nowMs = performance.now();
    const listened = told < LISTENING_SHARE && share >= LISTENING_SHARE;
    if (share < told + 0.01 && share < 1 && !listened && nowMs - toldMs < SIGN_MS) return;
    [told, toldMs] = [share, nowMs];
    tell(share);
  };
}
