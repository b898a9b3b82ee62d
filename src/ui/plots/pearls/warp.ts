/** A silence drawn shorter than it was, so that a stop does not squeeze the playing around it. */
export interface Cut {
  readonly fromSec: number;
  readonly toSec: number;
  /** the whole silence, from onset to onset */
  readonly silenceSec: number;
}

/** Recording time → drawn time: the same everywhere except across cuts. */
export interface Warp {
  readonly cuts: readonly Cut[];
  readonly drawnSec: (timeSec: number) => number;
}

/**
 * Onsets in order of time → a warp that draws every silence longer than `longestSec` as `keptSec`. A cut lies in the
 * middle of its silence and leaves half of `keptSec` on either side.
 */
export function cutSilences(onsetsSec: readonly number[], longestSec: number, keptSec: number): Warp {
  const cuts = onsetsSec.slice(1).flatMap((toSec, index) => {
    const fromSec = onsetsSec[index]!;
    return toSec - fromSec > longestSec
      ? [{ fromSec: fromSec + keptSec / 2, toSec: toSec - keptSec / 2, silenceSec: toSec - fromSec }]
      : [];
  });
  const drawnSec = (timeSec: number): number =>
    cuts.reduce((drawn, cut) => {
      const inside = Math.min(Math.max(timeSec, cut.fromSec), cut.toSec) - cut.fromSec;
      return drawn - inside;
    }, timeSec);
  return { cuts, drawnSec };
}
