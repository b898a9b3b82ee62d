import { CustomSource } from 'mediabunny';
import { DecodeError } from './errors.ts';

/** Of a file in order every byte is read about once, its tables a few times. */
const TIMES_ITS_SIZE = 8;
const LEAST_BYTES = 1 << 24;
/** What a reading counts at least: a loop asks for a few bytes, and asks for ever. */
const LEAST_READING_BYTES = 64;
/** Nobody who gets on asks for the same place so often in a row. */
const MOST_IN_A_ROW = 1_000;

/**
 * The bytes of a file → where a demuxer reads them from, watched: one that runs in a circle (tests/house/README.md tells of
 * which) is stopped by a DecodeError in place of its next bytes. Nothing is kept of what it has read, so that every reading
 * comes by here.
 */
export function watchedSource(bytes: Uint8Array): CustomSource {
  const mostBytes = TIMES_ITS_SIZE * bytes.length + LEAST_BYTES;
  let readBytes = 0;
  let last = -1;
  let inARow = 0;
  return new CustomSource({
    getSize: () => bytes.length,
    read: (start, end) => {
      inARow = start === last ? inARow + 1 : 0;
      last = start;
      readBytes += Math.max(end - start, LEAST_READING_BYTES);
      if (inARow > MOST_IN_A_ROW || readBytes > mostBytes) {
        throw new DecodeError('damaged', { trouble: 'contents-damaged' });
      }
      return bytes.subarray(start, end);
    },
    maxCacheSize: 0,
  });
}
