/** What a Core Audio file says of the packets its sound is cut into (Apple Core Audio Format Specification 1.0, "Packet Table Chunk"). */
export interface PacketTable {
  readonly packets: number;
  /** samples of the recording itself; null where that is not said */
  readonly validFrames: number | null;
  /** samples before it that are the encoder's own */
  readonly primingFrames: number;
  /** the table's own bytes behind its head */
  readonly entries: Uint8Array;
}

/** How long a packet is and how long it sounds; 0 where each has its own. */
export interface PacketFormat {
  readonly packetBytes: number;
  readonly packetFrames: number;
}

const HEAD_BYTES = 24;

/** The table's bytes → what it says; null where there is none or it is cut short. */
export function readPacketTable(bytes: Uint8Array | null): PacketTable | null {
  if (bytes === null || bytes.length < HEAD_BYTES) return null;
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  const valid = Number(view.getBigInt64(8));
  return {
    packets: Number(view.getBigInt64(0)),
    validFrames: valid > 0 ? valid : null,
    primingFrames: Math.max(view.getInt32(16), 0),
    entries: bytes.subarray(HEAD_BYTES),
  };
}

/** The length of each packet in order, as far as the table goes. */
export function* packetLengths(table: PacketTable, format: PacketFormat): Generator<number> {
  let at = 0;
  for (let packet = 0; packet < table.packets; packet++) {
    if (format.packetBytes > 0) {
      yield format.packetBytes;
      continue;
    }
    const length = numberAt(table.entries, at);
    if (length === null) return;
    at = length.end;
    if (format.packetFrames === 0) at = numberAt(table.entries, at)?.end ?? table.entries.length;
    yield length.value;
  }
}

/** A number of seven bits a byte, the highest first; all bytes but its last have their top bit set. */
function numberAt(bytes: Uint8Array, from: number): { readonly value: number; readonly end: number } | null {
  let value = 0;
  for (let at = from; at < bytes.length; at++) {
    value = value * 128 + (bytes[at]! & 0x7f);
    if (bytes[at]! < 0x80) return { value, end: at + 1 };
  }
  return null;
}
