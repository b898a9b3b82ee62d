import { constants } from 'node:fs';
import { access, mkdir, readdir, realpath, rename, rm, stat, writeFile } from 'node:fs/promises';
import { basename, dirname, join, relative, resolve, sep } from 'node:path';
import { isRecording } from '../io/sorting/recordings.ts';
import { headOf } from './files.ts';
import { unwritable, usageProblem } from './problems.ts';

/** What the command writes into files, and how a file that is there already is known for an earlier one of its own. */
const OWN = {
  csv: (head: Buffer) => head.toString('latin1').startsWith('student,file,recorded,'),
  html: (head: Buffer) =>
    /^<!doctype html>\s*<html lang="\w+">[^]*?Content-Security-Policy" content="default-src 'none'; style-src 'unsafe-inline'/.test(
      head.toString('latin1'),
    ),
  lines: (head: Buffer) => head.toString('latin1').startsWith('{"format":"evenfall-recording"'),
  analyses: (head: Buffer) => head.toString('latin1').startsWith('{"format":"evenfall-analysis"'),
  passages: (head: Buffer) => /^\{\s*"format": ?"evenfall-passages"/.test(head.toString('latin1')),
  /** format 0, and the division of the quarter that only our files have (io/exchange) */
  midi: (head: Buffer) =>
    head.subarray(0, 4).toString('latin1') === 'MThd' && head.readUInt32BE(10) === 0x14b00,
} as const;
/** Of a file so much is looked at. */
const HEAD_BYTES = 70_000;

/** What must not be written over. */
export interface OutputOptions {
  /** files that are read, and folders whose files are */
  readonly inputs: readonly string[];
  /** a file of somebody else's may be written over */
  readonly force: boolean;
}

/**
 * Looks, before any work, whether a file may and can be written. Throws Problem (wrong usage): it is an input or another recording,
 * which is never written over; it is somebody else's, which takes `force`; or its place cannot be written to.
 */
export async function checkOutput(
  file: string,
  kind: keyof typeof OWN,
  { inputs, force }: OutputOptions,
): Promise<void> {
  const target = await placeOf(file);
  for (const input of inputs)
    if ((await placeOf(input)) === target) throw usageProblem((t) => t.overInput(file));
  const found = await stat(target).catch(() => null);
  if (found?.isFile()) {
    const head = Buffer.from((await headOf(target, HEAD_BYTES)).buffer);
    const own = head.length === 0 || OWN[kind](head);
    if (!own && (isRecording(head, '') || (await isZip(head)))) throw usageProblem((t) => t.overInput(file));
    if (!own && !force) throw usageProblem((t) => t.overForeign(file));
  }
  try {
    if (found?.isDirectory()) throw Object.assign(new Error(), { code: 'EISDIR' });
    if (found !== null) await access(target, constants.W_OK);
    if (found !== null && !found.isFile()) return;
    // Only trying tells: rights, a full disk and a card that is locked look different everywhere.
    await mkdir(dirname(target), { recursive: true });
    await writeFile(aside(target), '', { flag: 'wx' });
    await rm(aside(target));
  } catch (cause) {
    throw unwritable(file, cause);
  }
}

/** The same for a folder of pages, which may not be one that is read, nor hold one. */
export async function checkOutputFolder(folder: string, options: OutputOptions): Promise<void> {
  const target = await placeOf(folder);
  for (const input of options.inputs) {
    const way = relative(target, await placeOf(input));
    if (way === '' || (way !== '..' && !way.startsWith(`..${sep}`)))
      throw usageProblem((t) => t.overInput(folder));
  }
  const there = await readdir(target).catch(() => []);
  for (const name of ['index.html', ...there.filter((one) => PAGES.test(one))])
    await checkOutput(join(folder, name), 'html', options);
}

/** Pages of recordings, as the desk calls them. */
const PAGES = /^recording-\d+\.html$/;

/** Writes a file beside its place, then moves it there, so that nobody meets half of it. Throws Problem. */
export async function writeOutput(file: string, content: string | Uint8Array): Promise<void> {
  try {
    const target = await placeOf(file);
    const found = await stat(target).catch(() => null);
    // A device or a pipe is written to, never replaced.
    if (found !== null && !found.isFile()) return await writeFile(target, content);
    await mkdir(dirname(target), { recursive: true });
    try {
      await writeFile(aside(target), content, { mode: found?.mode ?? 0o666 });
      await rename(aside(target), target);
    } catch (cause) {
      await rm(aside(target), { force: true });
      throw cause;
    }
  } catch (cause) {
    throw unwritable(file, cause);
  }
}

const aside = (target: string): string => join(dirname(target), `.${basename(target)}.${process.pid}.part`);

/** Where a file truly lies, through links; of one that is not there, where it would lie. */
async function placeOf(path: string): Promise<string> {
  const whole = resolve(path);
  return realpath(whole).catch(async () => {
    const folder = dirname(whole);
    return folder === whole ? whole : join(await placeOf(folder), basename(whole));
  });
}

/** What opens archives is loaded only where one may lie: most calls write nothing. */
async function isZip(head: Uint8Array): Promise<boolean> {
  const { isArchive } = await import('../io/archive/index.ts');
  return isArchive(new Blob([Uint8Array.from(head)]));
}
