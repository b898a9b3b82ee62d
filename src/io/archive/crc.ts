/** The reversed polynomial of the checksum that zip keeps of each member (APPNOTE.TXT 6.3.10, 4.4.7). */
const POLYNOMIAL = 0xedb88320;

const TABLE = Uint32Array.from({ length: 256 }, (_, byte) => {
  let rest = byte;
  for (let bit = 0; bit < 8; bit++) rest = (rest & 1) === 1 ? POLYNOMIAL ^ (rest >>> 1) : rest >>> 1;
  return rest;
});

/**
 * Bytes → their CRC-32, unsigned; `before`: that of what came before them. Of "123456789" it is cbf43926 (the check value of
 * its catalogues).
 */
export function crc32(bytes: Uint8Array, before = 0): number {
  let rest = ~before;
  for (let at = 0; at < bytes.length; at++) rest = TABLE[(rest ^ bytes[at]!) & 0xff]! ^ (rest >>> 8);
  return ~rest >>> 0;
}

/** of a checksum between two turns, bytes: some milliseconds of work */
const PIECE_BYTES = 2 ** 20;

/** The same of many bytes; `turn` (turns.ts) is awaited between pieces. */
export async function crc32InTurns(
  bytes: Uint8Array,
  turn: () => Promise<void> | undefined,
): Promise<number> {
  let crc = 0;
  for (let at = 0; at < bytes.length; at += PIECE_BYTES) {
    crc = crc32(bytes.subarray(at, at + PIECE_BYTES), crc);
    await turn();
  }
  return crc;
}
