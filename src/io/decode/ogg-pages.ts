/** One page of an Ogg stream (RFC 3533, section 6). */
export interface OggPage {
  readonly serial: number;
  /** the first page of its stream */
  readonly isFirst: boolean;
  /** the last page of its stream */
  readonly isLast: boolean;
  /** its first packet began on an earlier page */
  readonly continued: boolean;
  /** end position in samples of the last packet that ends here; null where none does */
  readonly granule: number | null;
  readonly body: Uint8Array;
  /** lengths of the packets' parts, in order; the last one may go on on the next page */
  readonly parts: readonly number[];
  /** the last part goes on on the next page of the stream */
  readonly unfinished: boolean;
}

const HEADER_BYTES = 27;

/**
 * The pages of an Ogg file in order. Damage between pages is passed over; a page cut short ends it. (mediabunny reads Ogg too, but goes
 * back for every page's length, and stops at the first damage.)
 */
export function* oggPages(bytes: Uint8Array): Generator<OggPage> {
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  let at = 0;
  while (at + HEADER_BYTES <= bytes.length) {
    // "OggS", version 0
    if (view.getUint32(at) !== 0x4f676753 || bytes[at + 4] !== 0) {
      at++;
      continue;
    }
    const table = bytes.subarray(at + HEADER_BYTES, at + HEADER_BYTES + bytes[at + 26]!);
    const bodyAt = at + HEADER_BYTES + table.length;
    const bodyBytes = table.reduce((sum, value) => sum + value, 0);
    if (bodyAt + bodyBytes > bytes.length) return;
    const parts: number[] = [];
    let length = 0;
    for (const value of table) {
      length += value;
      if (value === 255) continue;
      parts.push(length);
      length = 0;
    }
    const unfinished = table.at(-1) === 255;
    if (unfinished) parts.push(length);
    const granule = view.getBigInt64(at + 6, true);
    const flags = bytes[at + 5]!;
    yield {
      serial: view.getUint32(at + 14, true),
      continued: (flags & 1) !== 0,
      isFirst: (flags & 2) !== 0,
      isLast: (flags & 4) !== 0,
      granule: granule < 0n ? null : Number(granule),
      body: bytes.subarray(bodyAt, bodyAt + bodyBytes),
      parts,
      unfinished,
    };
    at = bodyAt + bodyBytes;
  }
}
