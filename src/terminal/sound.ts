import { open } from 'node:fs/promises';
import { DecodeError, LARGEST_FILE_BYTES } from '../io/decode/index.ts';
import type { DecodedAudio } from '../io/decode/index.ts';
import { decodeInNode } from '../io/decode/node.ts';
import { EXIT, Problem } from './problems.ts';

/** What a file is called in messages. */
export function displayName(file: string): string {
  return file === '-' ? 'standard input' : file;
}

/** A file, or standard input for "-" → its bytes, as many as are worth reading. Throws Problem (unreadable). */
export function bytesOf(file: string): Promise<ArrayBuffer> {
  return file === '-' ? readInput() : readFile(file);
}

/** A file, or standard input for "-" → its sound. Throws Problem (unreadable). */
export async function openSound(file: string): Promise<DecodedAudio> {
  const bytes = await bytesOf(file);
  try {
    return await decodeInNode(bytes, displayName(file));
  } catch (cause) {
    if (!(cause instanceof DecodeError)) throw cause;
    throw new Problem(EXIT.unreadable, cause.message);
  }
}

/** At most the largest file worth reading: of a longer one the first part, which most formats allow. */
async function readFile(file: string): Promise<ArrayBuffer> {
  try {
    const handle = await open(file);
    try {
      const { size } = await handle.stat();
      const bytes = new Uint8Array(Math.min(size, LARGEST_FILE_BYTES));
      let filled = 0;
      while (filled < bytes.length) {
        const { bytesRead } = await handle.read(bytes, filled, bytes.length - filled, filled);
        if (bytesRead === 0) break;
        filled += bytesRead;
      }
      return filled === bytes.length ? bytes.buffer : bytes.buffer.slice(0, filled);
    } finally {
      await handle.close();
    }
  } catch (cause) {
    throw new Problem(EXIT.unreadable, `${file}: ${reasonOf(cause)}`);
  }
}

async function readInput(): Promise<ArrayBuffer> {
  if (process.stdin.isTTY) {
    throw new Problem(EXIT.wrongUsage, 'Nothing is piped into standard input. Give a file, or pipe one in.');
  }
  const chunks: Uint8Array[] = [];
  let size = 0;
  for await (const chunk of process.stdin as AsyncIterable<Uint8Array>) {
    chunks.push(chunk);
    size += chunk.length;
    if (size >= LARGEST_FILE_BYTES) break;
  }
  const bytes = new Uint8Array(size);
  let at = 0;
  for (const chunk of chunks) {
    bytes.set(chunk, at);
    at += chunk.length;
  }
  return bytes.buffer;
}

/** System errors in plain words (POSIX errno names). */
export function reasonOf(cause: unknown): string {
  const code = cause instanceof Error && 'code' in cause ? String(cause.code) : '';
  switch (code) {
    case 'ENOENT':
      return 'There is no such file. Check the name and the folder.';
    case 'EISDIR':
      return 'It is a folder. Name the files in it, e.g. FOLDER/*.';
    case 'EACCES':
    case 'EPERM':
      return 'It may not be read. Check its permissions.';
    default:
      return `It could not be read (${code || String(cause)}).`;
  }
}
