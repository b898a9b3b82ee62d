import type { Trouble } from '../troubles/index.ts';
import type { Directory, Listed } from './directory.ts';
import { inMegabytes, NOT_WHOLE } from './directory.ts';
import { ArchiveError } from './errors.ts';
import type { ArchiveLimits } from './types.ts';

/** Bits 0, 6 and 13: encrypted; bit 5: patched; all others say how it was packed or spelt (APPNOTE.TXT 6.3.10, 4.4.4). */
const REFUSED_FLAGS = (1 << 0) | (1 << 5) | (1 << 6) | (1 << 13);
const METHODS: ReadonlySet<number> = new Set([0, 8]);
/** Deflate packs at most 1032 bytes into one (RFC 1951: 258 bytes in two bits at best), and sound and text far fewer. */
const MOST_RATIO = 200;
const SMALL_BYTES = 65_536;

/** A line of the directory → why its member is not opened, or null. `name`: as it may be shown. */
export function refusalOf(listed: Listed, name: string, limits: ArchiveLimits): Trouble | null {
  const { flags, method, packedBytes, sizeBytes } = listed;
  if ((flags & REFUSED_FLAGS) !== 0) return { trouble: 'zip-locked' };
  if (!METHODS.has(method)) return { trouble: 'zip-packed-otherwise' };
  if (method === 0 && packedBytes !== sizeBytes) return NOT_WHOLE;
  if (sizeBytes > limits.mostMemberBytes)
    return { trouble: 'zip-member-too-large', name, mostMb: inMegabytes(limits.mostMemberBytes) };
  if (sizeBytes > SMALL_BYTES && sizeBytes > packedBytes * MOST_RATIO)
    return { trouble: 'zip-member-swells', name };
  return null;
}

/** Throws ArchiveError where a zip as a whole is laid out to do harm, whichever of its members is wanted. */
export function checkLayout({ listed, at: directoryAt }: Directory, limits: ArchiveLimits): void {
  const unpackedBytes = listed.reduce((sum, { sizeBytes }) => sum + sizeBytes, 0);
  if (unpackedBytes > limits.mostUnpackedBytes)
    throw new ArchiveError({
      trouble: 'zip-unpacks-too-much',
      mostMb: inMegabytes(limits.mostUnpackedBytes),
    });
  // No two members may share bytes: files laid over each other unpack to far more than they hold.
  let freeFrom = 0;
  for (const { headerAt, packedBytes, nameBytes } of listed.toSorted((a, b) => a.headerAt - b.headerAt)) {
    if (headerAt < freeFrom) throw new ArchiveError({ trouble: 'zip-overlaps' });
    // At least its header and its name; what stands between is looked at when it is read.
    freeFrom = headerAt + 30 + nameBytes.length + packedBytes;
  }
  if (freeFrom > directoryAt) throw new ArchiveError(NOT_WHOLE);
}
