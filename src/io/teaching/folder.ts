import { writeArchive } from '../archive/index.ts';
import { plainAscii } from './names.ts';

/** Files → one zip of them, under names that every system can unpack. */
export async function writeFolder(
  files: readonly { readonly name: string; readonly file: Blob }[],
): Promise<Blob> {
  const all = files.map(async ({ name, file }) => ({
    name: plainAscii(name),
    bytes: new Uint8Array(await file.arrayBuffer()),
    packing: 'store' as const,
  }));
  return writeArchive(await Promise.all(all), 'application/zip');
}
