import { writeArchive } from '../archive/index.ts';

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

/** A file's name → the same in letters that every system's zips have. */
function plainAscii(name: string): string {
  return name
    .normalize('NFC')
    .replace(
      /[äöüßÄÖÜ]/g,
      (letter) => ({ ä: 'ae', ö: 'oe', ü: 'ue', ß: 'ss', Ä: 'Ae', Ö: 'Oe', Ü: 'Ue' })[letter]!,
    )
    .normalize('NFD')
    .replace(/\p{M}/gu, '')
    .replace(/[^\x20-\x7e]/g, '_');
}
