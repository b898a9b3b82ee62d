/** Files that the system passes to the page: shared with it, or opened with it by a double click. */
export interface Received {
  /** Calls back with what came before the page was there, and whenever more comes. */
  onFiles(callback: (files: readonly File[]) => void): void;
}

/** Where the service worker lays what is shared with the page (`offline/keeper.js`): under its address, with its name in a header. */
export const SHARED = { cache: 'shared-with-evenfall', nameHeader: 'x-name' } as const;

/** What some browsers hand files over by (W3C Web App Launch Handling); the types of the DOM do not know it yet. */
interface LaunchQueue {
  setConsumer(
    consumer: (launched: { readonly files?: readonly { getFile: () => Promise<File> }[] }) => void,
  ): void;
}

/** The browser's, passed in: `window`. Where it has neither, nothing ever comes. */
export function createReceived(browser: {
  readonly caches?: CacheStorage;
  readonly launchQueue?: LaunchQueue;
}): Received {
  return {
    onFiles: (callback) => {
      const hand = (files: readonly File[]): void => {
        if (files.length > 0) callback(files);
      };
      void takeShared(browser.caches).then(hand, () => undefined);
      browser.launchQueue?.setConsumer(({ files = [] }) => {
        void Promise.all(files.map((file) => file.getFile())).then(hand, () => undefined);
      });
    },
  };
}

/** What was shared, in its order; it is gone from where it lay. */
async function takeShared(caches: CacheStorage | undefined): Promise<readonly File[]> {
  if (caches === undefined || !(await caches.has(SHARED.cache))) return [];
  const shelf = await caches.open(SHARED.cache);
  const files: File[] = [];
  for (const request of await shelf.keys()) {
    const answer = await shelf.match(request);
    const name = decodeURIComponent(answer?.headers.get(SHARED.nameHeader) ?? '');
    const blob = await answer?.blob();
    if (blob !== undefined) files.push(new File([blob], name, { type: blob.type }));
  }
  await caches.delete(SHARED.cache);
  return files;
}
