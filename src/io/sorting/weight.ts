/** What listening holds of a second of sound, MB: one channel at two rates, and what the ear has found. */
const HELD_MB_A_SECOND = 0.2;
/** Longer files are sorted section by section (engine/assess-in-sections.ts), of which none is longer. */
const LONGEST_SEC = 30 * 60;

/**
 * Bytes of a second of sound at least, by the first bytes of the file: plain samples at 22 050 Hz in 16 bits; FLAC of them;
 * speech in Opus as messengers send it, 16 kbit/s; all else (AAC, MP3), 64 kbit/s. Common practice, no source.
 */
const BYTES_A_SECOND: readonly { readonly begins: string; readonly bytes: number }[] = [
  { begins: 'RIFF', bytes: 44_100 },
  { begins: 'fLaC', bytes: 20_000 },
  { begins: 'OggS', bytes: 2_000 },
  { begins: '\x1a\x45\xdf\xa3', bytes: 2_000 },
  { begins: '', bytes: 8_000 },
];

/** Its first four bytes and its size → what sorting a file may hold at most, MB. */
export function weightMb(firstBytes: Uint8Array, sizeBytes: number): number {
  const begin = String.fromCharCode(...firstBytes.subarray(0, 4));
  const { bytes } = BYTES_A_SECOND.find(({ begins }) => begin.startsWith(begins))!;
  return sizeBytes / 1e6 + HELD_MB_A_SECOND * Math.min(sizeBytes / bytes, LONGEST_SEC);
}
