import type { Attack, Retiming } from './timemap.ts';

/** A stretch of what will be heard that is a plain copy of the sound; it ends where the next piece begins. Samples. */
export interface Piece {
  readonly at: number;
  /** where it is copied from … */
  readonly near: number;
  /** … exactly: an attack; otherwise from where it joins best, no further than these */
  readonly fixed: boolean;
  readonly earliest: number;
  readonly latest: number;
}

/** Kept whole before and after an attack, seconds: a join, and the hammer's knock before the tone; its rise and first decay. */
const BEFORE_SEC = 0.03;
const AFTER_SEC = 0.055;
/** Of a short distance between two attacks at most this share is kept whole on either side. */
const MOST_KEPT = 0.4;
/** Pieces between attacks are about this long, seconds: several periods of the lowest strings. */
const PIECE_SEC = 0.05;
/** Pieces keep this far from the attacks, seconds: an attack heard twice would be a note too many. */
const CLEAR_SEC = 0.005;

/** An attack with what is kept whole about it, samples. */
interface Zone {
  readonly from: number;
  readonly at: number;
  readonly length: number;
  readonly firstAttack: number;
  readonly lastAttack: number;
}

/** Attacks laid down whole and, between them, as many pieces as fill the distance, in order. */
export function planPieces(
  frames: number,
  outFrames: number,
  sampleRateHz: number,
  join: number,
  { attacks, speed }: Retiming,
): readonly Piece[] {
  const zones = zonesOf(attacks, frames, outFrames, sampleRateHz);
  const clear = Math.round(CLEAR_SEC * sampleRateHz) + join / 2;
  const pieces: Piece[] = [];
  const fill = (before: Zone | undefined, after: Zone | undefined): void => {
    const start = before === undefined ? 0 : before.at + before.length;
    const end = after?.at ?? outFrames;
    if (end <= start) return;
    const fromStart =
      before !== undefined
        ? before.from + before.length
        : Math.max(0, after === undefined ? 0 : after.from - Math.round(end * speed));
    const fromEnd = after?.from ?? fromStart + Math.round((end - start) * speed);
    const count = Math.max(1, Math.round((end - start) / (PIECE_SEC * sampleRateHz)));
    for (let k = 0; k < count; k++) {
      const at = Math.round(start + ((end - start) * k) / count);
      const length = Math.round(start + ((end - start) * (k + 1)) / count) - at;
      pieces.push({
        at,
        near: Math.round(fromStart + ((fromEnd - fromStart) * k) / count),
        fixed: false,
        earliest: before === undefined ? 0 : before.lastAttack + clear,
        latest: (after?.firstAttack ?? Infinity) - clear - length,
      });
    }
  };
  zones.forEach((zone, index) => {
    fill(zones[index - 1], zone);
    const near = zone.from;
    pieces.push({ at: zone.at, near, fixed: true, earliest: near, latest: near });
  });
  fill(zones.at(-1), undefined);
  return pieces;
}

function zonesOf(
  attacks: readonly Attack[],
  frames: number,
  outFrames: number,
  sampleRateHz: number,
): readonly Zone[] {
  const marks: { readonly from: number; readonly to: number; readonly wide: number }[] = [];
  for (const { fromSec, toSec, lastSec } of [...attacks].sort((a, b) => a.fromSec - b.fromSec)) {
    const from = Math.round(fromSec * sampleRateHz);
    const to = Math.round(toSec * sampleRateHz);
    const wide = Math.max(0, Math.round(lastSec * sampleRateHz) - from);
    const last = marks.at(-1);
    const inside = from >= 0 && from < frames && to >= 0 && to < outFrames;
    // One that would be heard before the one before it goes with that.
    const after = last === undefined || (from > last.from + last.wide && to > last.to + last.wide);
    if (inside && after) marks.push({ from, to, wide });
  }
  return marks.map((mark, index) => {
    const [before, after] = [marks[index - 1], marks[index + 1]];
    const kept = (seconds: number, roomA: number, roomB: number): number =>
      Math.min(Math.round(seconds * sampleRateHz), Math.floor(MOST_KEPT * Math.min(roomA, roomB)));
    const lead =
      before === undefined
        ? kept(BEFORE_SEC, mark.from / MOST_KEPT, mark.to / MOST_KEPT)
        : kept(BEFORE_SEC, mark.from - before.from - before.wide, mark.to - before.to - before.wide);
    const trail =
      after === undefined
        ? kept(AFTER_SEC, Infinity, Infinity)
        : kept(AFTER_SEC, after.from - mark.from - mark.wide, after.to - mark.to - mark.wide);
    return {
      from: mark.from - lead,
      at: mark.to - lead,
      length: lead + mark.wide + trail,
      firstAttack: mark.from,
      lastAttack: mark.from + mark.wide,
    };
  });
}
