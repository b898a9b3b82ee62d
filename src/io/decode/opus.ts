import { DecodeError } from './errors.ts';
import { joined } from './file-bytes.ts';
import { oggPages } from './ogg-pages.ts';
import { OPUS_RATE_HZ, openOpus, readOpusHead } from './opus-packets.ts';
import type { OpusHead } from './opus-packets.ts';
import { SoundGatherer } from './gather.ts';
import type { DecodedAudio, DecodeLimits } from './types.ts';

/**
 * Opus in Ogg (RFC 7845) → sound at 48 kHz: the pre-skip is taken off the start (section 4.2), and the end is cut where
 * the last page's position says (section 4.4).
 */
export async function decode(bytes: Uint8Array, limits: DecodeLimits): Promise<DecodedAudio> {
  const { head, packets, endFrames } = readStream(bytes);
  const decoder = await openOpus(head);
  const gatherer = new SoundGatherer(limits, head.preSkip);
  try {
    for (const [index, packet] of packets.entries()) {
      const share = (index + 1) / packets.length;
      if (!gatherer.push(decoder.decode(packet), OPUS_RATE_HZ, share)) break;
    }
  } finally {
    decoder.free();
  }
  return gatherer.finish('Ogg', endFrames === null ? Infinity : endFrames - head.preSkip);
}

interface OpusStream {
  readonly head: OpusHead;
  readonly packets: readonly Uint8Array[];
  /** end of the sound in samples, pre-skip included; null where the file breaks off before saying */
  readonly endFrames: number | null;
}

/** The packets of the file's first Opus stream. */
function readStream(bytes: Uint8Array): OpusStream {
  let serial: number | null = null;
  let head: OpusHead | null = null;
  let endFrames: number | null = null;
  let started: Uint8Array[] = [];
  const packets: Uint8Array[] = [];
  for (const page of oggPages(bytes)) {
    if (serial === null) {
      if (!page.isFirst) continue;
      head = readOpusHead(page.body);
      if (head !== null) serial = page.serial;
      continue;
    }
    if (page.serial !== serial) continue;
    let at = 0;
    page.parts.forEach((length, index) => {
      const part = page.body.subarray(at, at + length);
      at += length;
      if (index > 0 || !page.continued) started = [];
      started.push(part);
      if (index === page.parts.length - 1 && page.unfinished) return;
      packets.push(started.length === 1 ? part : joined(started));
      started = [];
    });
    if (page.isLast) {
      endFrames = page.granule;
      break;
    }
  }
  if (head === null || packets.length < 2) {
    throw new DecodeError('damaged', { trouble: 'nothing-after-header' });
  }
  // The first packet after the header holds the comments (RFC 7845, section 5.2).
  return { head, packets: packets.slice(1), endFrames };
}
