import { open } from 'node:fs/promises';

/** The first bytes of a file, so many at most. Rejects with the system's error. */
export async function headOf(path: string, mostBytes: number): Promise<Uint8Array<ArrayBuffer>> {
  const handle = await open(path);
  try {
    const { size } = await handle.stat();
    const bytes = new Uint8Array(Math.min(size, mostBytes));
    let filled = 0;
    while (filled < bytes.length) {
      const { bytesRead } = await handle.read(bytes, filled, bytes.length - filled, filled);
      if (bytesRead === 0) break;
      filled += bytesRead;
    }
    return filled === bytes.length ? bytes : bytes.slice(0, filled);
  } finally {
    await handle.close();
  }
}
