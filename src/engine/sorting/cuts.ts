import type { Passage } from '../listen/index.ts';

/** A piece begins so long before its first note and ends so long after its last at most, seconds: the last one rings on. */
const LEAD_SEC = 0.6;
const RING_SEC = 2;
/** Of a shorter pause to the next piece so much is that one's lead. */
const LEAD_SHARE = 0.4;

/** Pieces from first to last note, in order of time → where to cut them out of the recording, so that none holds anything of another. */
export function cutOut(pieces: readonly Passage[], durationSec: number): readonly Passage[] {
  const startsSec = pieces.map(({ startSec }, at) => {
    const pauseSec = startSec - (pieces[at - 1]?.endSec ?? -Infinity);
    return Math.max(0, startSec - Math.min(LEAD_SEC, LEAD_SHARE * pauseSec));
  });
  return pieces.map(({ endSec }, at) => ({
    startSec: startsSec[at]!,
    endSec: Math.min(endSec + RING_SEC, startsSec[at + 1] ?? Infinity, durationSec),
  }));
}
