/** The page's own files, kept on this device by a service worker (made by vite.config.ts from src/io/offline/keeper.js). */
export interface Offline {
  /** Told once when a newer version has been fetched and waits. */
  onNewVersion(callback: () => void): void;
  /** Goes over to the newer version: the page is loaded anew. */
  useNewVersion(): void;
}

/** How often a page that stays open asks whether there is a newer version, ms. */
const ASK_MS = 60 * 60_000;

/** Registers the keeper and lets it fetch all files of this version. `script`: its address. */
export function createOffline(script: URL): Offline {
  const callbacks: (() => void)[] = [];
  let waiting: ServiceWorker | null = null;
  let asked = false;

  const found = (worker: ServiceWorker): void => {
    waiting = worker;
    for (const callback of callbacks) callback();
  };
  const register = async (): Promise<void> => {
    const keeper = navigator.serviceWorker;
    // Without a controller the page came from the network: what installs now is this very version.
    const watch = (worker: ServiceWorker | null): void =>
      worker?.addEventListener('statechange', () => {
        if (worker.state === 'installed' && keeper.controller !== null) found(worker);
      });
    keeper.addEventListener('controllerchange', () => {
      if (asked) location.reload();
    });
    const registration = await keeper.register(script);
    if (registration.waiting !== null && keeper.controller !== null) found(registration.waiting);
    watch(registration.installing);
    registration.addEventListener('updatefound', () => watch(registration.installing));
    setInterval(() => void registration.update().catch(() => undefined), ASK_MS);
  };
  // Without a network, or where a browser has no service workers, the page is as it is.
  if ('serviceWorker' in navigator) void register().catch(() => undefined);

  return {
    onNewVersion: (callback) => {
      callbacks.push(callback);
      if (waiting !== null) callback();
    },
    useNewVersion: () => {
      asked = true;
      waiting?.postMessage('use');
    },
  };
}
