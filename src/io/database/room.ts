/** What the browser says of the room there is for all pages of this address; null: it does not say. */
export interface StorageUse {
  readonly usedBytes: number | null;
  readonly quotaBytes: number | null;
  /** the browser promised not to clear it by itself */
  readonly persisted: boolean;
  /** it does so where the page was not visited for long */
  readonly clearsUnused: boolean;
}

export async function storageUse(): Promise<StorageUse> {
  const estimate = await navigator.storage?.estimate?.();
  return {
    usedBytes: estimate?.usage ?? null,
    quotaBytes: estimate?.quota ?? null,
    persisted: (await navigator.storage?.persisted?.()) ?? false,
    clearsUnused: clearsUnused(),
  };
}

/** Asks the browser to keep all this until somebody deletes it → whether it promised. */
export const keepForGood = async (): Promise<boolean> => (await navigator.storage?.persist?.()) ?? false;

/**
 * Whether this browser clears what a page keeps after seven days on which it was used and the page was not: all of WebKit do, save
 * for a page on the home screen (webkit.org, "Full third-party cookie blocking and more", March 2020; from memory).
 */
const clearsUnused = (): boolean =>
  navigator.vendor.startsWith('Apple') && !matchMedia('(display-mode: standalone)').matches;
