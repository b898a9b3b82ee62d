/** The device's screen: kept from sleeping, and watched for being covered. */
export interface Screen {
  /** Asks for the screen to stay on until `letSleep`; asked for again whenever the page comes back to the front. */
  keepAwake(): void;
  letSleep(): void;
  /** Told whenever the page is hidden (another app, a locked screen) or seen again. */
  onSeen(callback: (seen: boolean) => void): void;
}

/** Screen Wake Lock API (W3C); where a browser has none or refuses, the screen sleeps as the device has it. */
/** Whether this browser can keep the screen awake. */
export const canStayAwake = (): boolean => 'wakeLock' in navigator;

export function createScreen(): Screen {
  let wanted = false;
  let lock: WakeLockSentinel | null = null;

  const ask = async (): Promise<void> => {
    if (!wanted || lock !== null || document.visibilityState !== 'visible') return;
    try {
      const got = await navigator.wakeLock?.request('screen');
      if (got === undefined) return;
      // Two may have been asked for at once, or it is no longer wanted.
      if (!wanted || lock !== null) return await got.release();
      lock = got;
      got.addEventListener('release', () => {
        if (lock === got) lock = null;
      });
    } catch {
      // A low battery refuses; playing goes on, and the next coming back asks again.
    }
  };
  document.addEventListener('visibilitychange', () => void ask());

  return {
    keepAwake: () => {
      wanted = true;
      void ask();
    },
    letSleep: () => {
      wanted = false;
      const held = lock;
      lock = null;
      void held?.release();
    },
    onSeen: (callback) =>
      document.addEventListener('visibilitychange', () => callback(document.visibilityState === 'visible')),
  };
}
