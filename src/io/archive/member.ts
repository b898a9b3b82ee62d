import { Inflate } from 'fflate';
import { crc32InTurns } from './crc.ts';
import type { Listed } from './directory.ts';
import { ArchiveError } from './errors.ts';
import { createTurns } from './turns.ts';

/** The header before a member's bytes (APPNOTE.TXT 6.3.10, 4.3.7). */
const LOCAL = { signature: 0x04034b50, bytes: 30 } as const;
/** Packed bytes unpacked at a time: at 1032 to one no piece grows beyond some 4 MB before it is counted. */
const PIECE_BYTES = 4096;

/** A member of the directory → its bytes, unpacked in pieces, so that the page goes on meanwhile. Throws ArchiveError where they are not what the directory says. */
export async function readMember(
  file: Blob,
  listed: Listed,
  endAt: number,
): Promise<Uint8Array<ArrayBuffer>> {
  const damaged = new ArchiveError(`${listed.name} is damaged in it. Send or save it again.`);
  const head = new DataView(await file.slice(listed.headerAt, listed.headerAt + LOCAL.bytes).arrayBuffer());
  if (head.byteLength < LOCAL.bytes || head.getUint32(0, true) !== LOCAL.signature) throw damaged;
  if (head.getUint16(6, true) !== listed.flags || head.getUint16(8, true) !== listed.method) throw damaged;
  const dataAt = listed.headerAt + LOCAL.bytes + head.getUint16(26, true) + head.getUint16(28, true);
  if (dataAt + listed.packedBytes > endAt) throw damaged;
  const packed = new Uint8Array(await file.slice(dataAt, dataAt + listed.packedBytes).arrayBuffer());
  const turn = createTurns();
  const bytes = listed.method === 0 ? packed : await inflated(packed, listed.sizeBytes, turn);
  if (bytes?.length !== listed.sizeBytes) throw damaged;
  if ((await crc32InTurns(bytes, turn)) !== listed.crc) throw damaged;
  return bytes;
}

/** Deflated bytes → what they hold; null where that is not exactly so much. Never holds more than a piece beyond it. */
async function inflated(
  packed: Uint8Array<ArrayBuffer>,
  sizeBytes: number,
  turn: () => Promise<void> | undefined,
): Promise<Uint8Array<ArrayBuffer> | null> {
  const whole = new Uint8Array(sizeBytes);
  let length = 0;
  let ended = false;
  const inflate = new Inflate((piece, final) => {
    if (length + piece.length <= sizeBytes) whole.set(piece, length);
    length += piece.length;
    ended = final ?? false;
  });
  try {
    for (let at = 0; at < packed.length && length <= sizeBytes; at += PIECE_BYTES) {
      inflate.push(packed.subarray(at, at + PIECE_BYTES), at + PIECE_BYTES >= packed.length);
      await turn();
    }
  } catch {
    // fflate throws on what is no deflate stream, or ends too early.
    return null;
  }
  return ended && length === sizeBytes ? whole : null;
}
