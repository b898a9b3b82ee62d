import { plainName } from '../io/check/index.ts';
import { DecodeError, LARGEST_FILE_BYTES } from '../io/decode/index.ts';
import type { DecodedAudio } from '../io/decode/index.ts';
import { joined } from '../io/decode/file-bytes.ts';
import { decodeInNode } from '../io/decode/node.ts';
import { tellTrouble } from '../io/troubles/index.ts';
import type { Trouble } from '../io/troubles/index.ts';
import { headOf } from './files.ts';
import type { Messages } from './language/index.ts';
import { EXIT, Problem } from './problems.ts';

/** Stands for standard input, which is read once. */
export const STANDARD_INPUT = '-';

/** What a file is called in messages. */
export function displayName(file: string, t: Messages): string {
  return file === STANDARD_INPUT ? t.standardInput : plainName(file);
}

/** A file, or standard input for "-" → its bytes, as many as are worth reading. Throws Problem (unreadable). */
export function bytesOf(file: string): Promise<ArrayBuffer> {
  return file === STANDARD_INPUT ? readInput() : readFile(file);
}

/** A file, or standard input for "-" → its sound. Throws Problem (unreadable). */
export async function openSound(file: string, name: string): Promise<DecodedAudio> {
  const bytes = await bytesOf(file);
  try {
    return await decodeInNode(bytes, name);
  } catch (cause) {
    if (!(cause instanceof DecodeError)) throw cause;
    throw troubleProblem(cause.trouble);
  }
}

/** At most the largest file worth reading: of a longer one the first part, which most formats allow. */
async function readFile(file: string): Promise<ArrayBuffer> {
  try {
    return (await headOf(file, LARGEST_FILE_BYTES)).buffer;
  } catch (cause) {
    throw troubleProblem({ trouble: 'within', name: plainName(file), of: systemTrouble(cause) });
  }
}

async function readInput(): Promise<ArrayBuffer> {
  if (process.stdin.isTTY) {
    throw new Problem(EXIT.wrongUsage, (t) => t.problems.nothingPiped);
  }
  const chunks: Uint8Array[] = [];
  let size = 0;
  for await (const chunk of process.stdin as AsyncIterable<Uint8Array>) {
    chunks.push(chunk);
    size += chunk.length;
    if (size >= LARGEST_FILE_BYTES) break;
  }
  return joined(chunks).buffer;
}

/** What the system refused → why. */
export function systemTrouble(cause: unknown): Trouble {
  const code = cause instanceof Error && 'code' in cause ? String(cause.code) : '';
  return { trouble: 'system-refuses', code: code || String(cause) };
}

/** A file that cannot be read → the end of the command. */
export function troubleProblem(trouble: Trouble): Problem {
  return new Problem(EXIT.unreadable, (_, language) => tellTrouble(trouble, language));
}
