/** A file as it lies in a database. */
export type LaidFile = Blob | ArrayBuffer;

/**
 * Lays a file into a database by `lay`: as it is where the browser takes it, and it stays on the disk; else its bytes. WebKit's
 * private windows refuse every Blob ("Error preparing Blob/File data"), and what is written after that never ends: it is tried
 * once, in a database of its own.
 */
export async function layFile(
  file: Blob,
  lay: (file: LaidFile) => Promise<void>,
  takesBlobs: () => Promise<boolean> = triedOnce,
): Promise<void> {
  await lay((await takesBlobs()) ? file : await file.arrayBuffer());
}

/** What lies there → the file; null: nothing does. */
export function laidFile(found: LaidFile | undefined): Blob | null {
  if (found === undefined) return null;
  return found instanceof Blob ? found : new Blob([found]);
}

const TRIED = 'evenfall-tried';
let tried: Promise<boolean> | null = null;
const triedOnce = (): Promise<boolean> => (tried ??= tryBlob().catch(() => false));

async function tryBlob(): Promise<boolean> {
  // Of a name that no other page has at this moment.
  const name = `${TRIED}-${crypto.randomUUID()}`;
  const opening = indexedDB.open(name, 1);
  const taken = await new Promise<boolean>((resolve) => {
    opening.onupgradeneeded = () => {
      const putting = opening.result.createObjectStore('files').put(new Blob(['tried']), 0);
      putting.onerror = () => resolve(false);
      putting.onsuccess = () => resolve(true);
    };
    opening.onerror = () => resolve(false);
  });
  opening.onsuccess = () => opening.result.close();
  indexedDB.deleteDatabase(name);
  return taken;
}
