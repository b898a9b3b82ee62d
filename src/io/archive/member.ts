import { Inflate } from 'fflate';
import { crc32InTurns } from './crc.ts';
import type { Listed } from './directory.ts';
import { ArchiveError } from './errors.ts';
import { createTurns } from './turns.ts';

/** The header before a member's bytes (APPNOTE.TXT 6.3.10, 4.3.7). */
const LOCAL = { signature: 0x04034b50, bytes: 30 } as const;
/** Packed bytes unpacked at a time: at 1032 to one no piece grows beyond some 4 MB before it is counted. */
const PIECE_BYTES = 4096;

/** A member as the directory has it. */
export interface Place {
  readonly listed: Listed;
  /** as it may be shown */
  readonly name: string;
  /** where what lies behind it begins */
  readonly endAt: number;
}

/** A member of the directory → its bytes, unpacked in pieces, so that the page goes on meanwhile. Throws ArchiveError where they are not what the directory says. */
export async function readMember(file: Blob, place: Place): Promise<Uint8Array<ArrayBuffer>> {
  const { listed, name } = place;
  const packed = new Uint8Array(await (await packedPart(file, place)).arrayBuffer());
  const turn = createTurns();
  const bytes = listed.method === 0 ? packed : await inflated(packed, listed.sizeBytes, turn);
  if (bytes?.length !== listed.sizeBytes) throw damaged(name);
  if ((await crc32InTurns(bytes, turn)) !== listed.crc) throw damaged(name);
  return bytes;
}

/** The first bytes of a member, so many at most, unchecked. Throws ArchiveError where it is not where the directory says. */
export async function readHead(file: Blob, place: Place, bytes: number): Promise<Uint8Array<ArrayBuffer>> {
  const part = await packedPart(file, place);
  // What is packed is never longer than what it holds by more than its blocks' own heads.
  const packed = new Uint8Array(await part.slice(0, bytes + PIECE_BYTES).arrayBuffer());
  if (place.listed.method === 0) return packed.slice(0, bytes);
  const head = new Uint8Array(Math.min(bytes, place.listed.sizeBytes));
  let length = 0;
  const inflate = new Inflate((piece) => {
    head.set(piece.subarray(0, head.length - length), length);
    length = Math.min(length + piece.length, head.length);
  });
  try {
    for (let at = 0; at < packed.length && length < head.length; at += PIECE_BYTES)
      inflate.push(packed.subarray(at, at + PIECE_BYTES));
  } catch {
    // What came before the damage may still tell what it is.
  }
  return head.slice(0, length);
}

const damaged = (name: string): ArchiveError => new ArchiveError({ trouble: 'zip-member-damaged', name });

/** A member's packed bytes, as they lie in the file. */
async function packedPart(file: Blob, { listed, name, endAt }: Place): Promise<Blob> {
  const head = new DataView(await file.slice(listed.headerAt, listed.headerAt + LOCAL.bytes).arrayBuffer());
  if (head.byteLength < LOCAL.bytes || head.getUint32(0, true) !== LOCAL.signature) throw damaged(name);
  if (head.getUint16(6, true) !== listed.flags || head.getUint16(8, true) !== listed.method)
    throw damaged(name);
  const dataAt = listed.headerAt + LOCAL.bytes + head.getUint16(26, true) + head.getUint16(28, true);
  if (dataAt + listed.packedBytes > endAt) throw damaged(name);
  return file.slice(dataAt, dataAt + listed.packedBytes);
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
