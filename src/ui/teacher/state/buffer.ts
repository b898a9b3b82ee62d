import type { SoundFile } from '../../../io/review/index.ts';

/** The bytes of a file in a buffer of their own: decoders may take it away. */
export function bufferOf({ bytes }: SoundFile): ArrayBuffer {
  return bytes.buffer.slice(bytes.byteOffset, bytes.byteOffset + bytes.byteLength);
}
