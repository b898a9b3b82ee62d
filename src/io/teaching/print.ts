/** Pieces of a long file that are looked at, and their length in bytes. */
const PIECES = 32;
const PIECE_BYTES = 1 << 17;

/**
 * A file → what tells it from all others: two of one print hold the same sound, whatever they are called. SHA-256 of its length and of
 * its bytes, of a file over 4 MiB of 32 pieces spread over it. Null where the browser reckons no SHA-256 (a page that is not safe)
 * or the file cannot be read.
 */
export async function printOf(file: Blob): Promise<string | null> {
  const { subtle } = crypto;
  if (subtle === undefined) return null;
  const isShort = file.size <= PIECES * PIECE_BYTES;
  const step = (file.size - PIECE_BYTES) / (PIECES - 1);
  const pieces = isShort
    ? [file]
    : Array.from({ length: PIECES }, (_, at) => {
        const from = Math.round(at * step);
        return file.slice(from, from + PIECE_BYTES);
      });
  try {
    const looked = await new Blob([`${file.size} `, ...pieces]).arrayBuffer();
    const hash = new Uint8Array(await subtle.digest('SHA-256', looked));
    return Array.from(hash, (byte) => byte.toString(16).padStart(2, '0')).join('');
  } catch {
    return null;
  }
}
