import { DecodeError } from './errors.ts';

/** The bytes of a file, wherever they lie: read where they are wanted, so that a long one is never held whole. */
export interface FileBytes {
  readonly size: number;
  /** Those from one place up to another, or up to the end. */
  read(from: number, to: number): Promise<Uint8Array>;
}

/** Bytes that are there already; nothing is copied. */
export function inMemory(bytes: Uint8Array): FileBytes {
  return { size: bytes.length, read: async (from, to) => bytes.subarray(from, to) };
}

/** As much of a Blob as is asked of it: the packed engine is told of no page. */
interface Sliced {
  readonly size: number;
  slice(from: number, to: number): { arrayBuffer(): Promise<ArrayBuffer> };
}

/** A file on disk. Reading rejects with DecodeError where it is gone or may not be read. */
export function onDisk(file: Sliced): FileBytes {
  return {
    size: file.size,
    read: async (from, to) => {
      try {
        return new Uint8Array(await file.slice(from, to).arrayBuffer());
      } catch {
        throw new DecodeError('damaged', { trouble: 'file-unreadable' });
      }
    },
  };
}

/** A part of a file, as a file: `size` bytes from one place on, or as many as there are. */
export function partOf(file: FileBytes, start: number, size: number): FileBytes {
  const length = Math.max(Math.min(size, file.size - start), 0);
  return {
    size: length,
    read: (from, to) =>
      file.read(start + Math.min(from, length), start + Math.min(Math.max(from, to), length)),
  };
}

/** Parts → one array of all of them in order. */
export function joined(parts: readonly Uint8Array[]): Uint8Array<ArrayBuffer> {
  const whole = new Uint8Array(parts.reduce((sum, { length }) => sum + length, 0));
  let at = 0;
  for (const part of parts) {
    whole.set(part, at);
    at += part.length;
  }
  return whole;
}
