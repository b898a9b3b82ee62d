/** What listening holds of a second of sound, MB: one channel at two rates, and what the ear has found. */
const HELD_MB_A_SECOND = 0.2;
/** Longer files are sorted section by section (engine/assess-in-sections.ts), of which none is longer. */
const LONGEST_SEC = 30 * 60;

/**
 * Bytes of a second of sound at least, by the first bytes of the file: plain samples at 22 050 Hz in 16 bits; FLAC of them;
 * speech in Opus as messengers send it, 16 kbit/s; all else (AAC, MP3), 64 kbit/s. Common practice, no source. What is
 * `streamed` is read as it is wanted (io/decode/index.ts), of all else the bytes are held.
 */
const KINDS: readonly {
  readonly begins: string;
  readonly bytesASecond: number;
  readonly streamed: boolean;
}[] = [
  ...['RIFF', 'RF64', 'BW64', 'FORM', 'caff'].map((begins) => ({
    begins,
    bytesASecond: 44_100,
    streamed: true,
  })),
  { begins: 'fLaC', bytesASecond: 20_000, streamed: true },
  { begins: 'OggS', bytesASecond: 2_000, streamed: false },
  { begins: '\x1a\x45\xdf\xa3', bytesASecond: 2_000, streamed: false },
  { begins: '', bytesASecond: 8_000, streamed: false },
];

/** Its first four bytes and its size → what sorting a file may hold at most, MB; one in an archive is unpacked whole. */
export function weightMb(firstBytes: Uint8Array, sizeBytes: number, inArchive = false): number {
  const begin = String.fromCharCode(...firstBytes.subarray(0, 4));
  const { bytesASecond, streamed } = KINDS.find(({ begins }) => begin.startsWith(begins))!;
  const heldBytes = streamed && !inArchive ? 0 : sizeBytes;
  return heldBytes / 1e6 + HELD_MB_A_SECOND * Math.min(sizeBytes / bytesASecond, LONGEST_SEC);
}
