/** One MPEG audio frame, as its four header bytes describe it. */
export interface MpegFrame {
  /** length of the whole frame */
  readonly bytes: number;
  readonly sampleRateHz: number;
  readonly channels: 1 | 2;
}

/** kbit/s by bit-rate index 1..14 (ISO/IEC 11172-3 table in 2.4.2.3; 13818-3 for the low sampling rates). */
const KBPS: Readonly<Record<'V1L1' | 'V1L2' | 'V1L3' | 'V2L1' | 'V2L23', readonly number[]>> = {
  V1L1: [32, 64, 96, 128, 160, 192, 224, 256, 288, 320, 352, 384, 416, 448],
  V1L2: [32, 48, 56, 64, 80, 96, 112, 128, 160, 192, 224, 256, 320, 384],
  V1L3: [32, 40, 48, 56, 64, 80, 96, 112, 128, 160, 192, 224, 256, 320],
  V2L1: [32, 48, 56, 64, 80, 96, 112, 128, 144, 160, 176, 192, 224, 256],
  V2L23: [8, 16, 24, 32, 40, 48, 56, 64, 80, 96, 112, 128, 144, 160],
};

/** Hz by version bits (0: 2.5, 2: 2, 3: 1) and sampling-frequency index. */
const RATES_HZ: Readonly<Record<number, readonly number[]>> = {
  0: [11_025, 12_000, 8_000],
  2: [22_050, 24_000, 16_000],
  3: [44_100, 48_000, 32_000],
};

/** The frame whose header lies at `at`; null where there is none. Free-format frames are not known. */
export function mpegFrameAt(bytes: Uint8Array, at: number): MpegFrame | null {
  if (at + 4 > bytes.length || bytes[at] !== 0xff || (bytes[at + 1]! & 0xe0) !== 0xe0) return null;
  const version = (bytes[at + 1]! >> 3) & 3;
  const layer = 4 - ((bytes[at + 1]! >> 1) & 3);
  const sampleRateHz = RATES_HZ[version]?.[(bytes[at + 2]! >> 2) & 3];
  if (layer === 4 || sampleRateHz === undefined) return null;
  const table = version === 3 ? (`V1L${layer as 1 | 2 | 3}` as const) : layer === 1 ? 'V2L1' : 'V2L23';
  const kbps = KBPS[table][(bytes[at + 2]! >> 4) - 1];
  if (kbps === undefined) return null;
  const padding = (bytes[at + 2]! >> 1) & 1;
  // ISO/IEC 11172-3, 2.4.3.1: 12 · rate / Hz slots of four bytes in layer I, 144 · rate / Hz bytes in II and III,
  // half as many in layer III at the low sampling rates.
  const size =
    layer === 1
      ? (Math.floor((12_000 * kbps) / sampleRateHz) + padding) * 4
      : Math.floor(((layer === 3 && version !== 3 ? 72_000 : 144_000) * kbps) / sampleRateHz) + padding;
  return { bytes: size, sampleRateHz, channels: bytes[at + 3]! >> 6 === 3 ? 1 : 2 };
}
