/** A file as it lies in a database. */
export type LaidFile = Blob | ArrayBuffer;

/**
 * Lays a file into a database by `lay`, as it is where the browser can: then it stays on the disk. WebKit's private windows refuse
 * every Blob ("Error preparing Blob/File data"); its bytes they take.
 */
export async function layFile(file: Blob, lay: (file: LaidFile) => Promise<void>): Promise<void> {
  try {
    await lay(file);
  } catch {
    // What fails for another reason fails again, and says so.
    await lay(await file.arrayBuffer());
  }
}

/** What lies there → the file; null: nothing does. */
export function laidFile(found: LaidFile | undefined): Blob | null {
  if (found === undefined) return null;
  return found instanceof Blob ? found : new Blob([found]);
}
