import type { Exercise, Hand, Report } from '../../../engine/index.ts';
import { sounded, threadPearls, type Pearl } from './pearls.ts';

/** What is touched and focused as one: a note, a chord of one hand, or an extra note. */
export interface Spot {
  /** place in reading order, from 0 */
  readonly index: number;
  readonly hand: Hand;
  readonly step: number;
  readonly extra: boolean;
  /** mean onset of its notes, seconds */
  readonly timeSec: number;
  /** ascending by pitch */
  readonly pearls: readonly Pearl[];
}

/** Where to play to hear one spot. */
export interface PlayRange {
  readonly fromSec: number;
  readonly toSec: number;
}

/** Heard before the first onset of a range, so that its attack is whole. */
export const LEAD_IN_SEC = 0.08;
/** Heard after the last onset of a range where no other note follows. */
export const RING_OUT_SEC = 1.2;

/** Report → its spots in order of time, right hand before left. */
export function spotsOf(report: Report, exercise: Exercise): readonly Spot[] {
  return gatherSpots(threadPearls(report, exercise));
}

function gatherSpots(pearls: readonly Pearl[]): readonly Spot[] {
  const groups = new Map<string, Pearl[]>();
  for (const pearl of pearls) {
    const key = pearl.kind === 'extra' ? `extra ${pearl.index}` : `${pearl.hand} ${pearl.step}`;
    groups.set(key, [...(groups.get(key) ?? []), pearl]);
  }
  return [...groups.values()]
    .map((group) => {
      const first = group[0]!;
      const timed = group.some(sounded) ? group.filter(sounded) : group;
      return {
        hand: first.hand,
        step: first.step,
        extra: first.kind === 'extra',
        timeSec: timed.reduce((sum, pearl) => sum + pearl.timeSec, 0) / timed.length,
        pearls: [...group].sort((a, b) => a.writtenMidi - b.writtenMidi),
      };
    })
    .sort((a, b) => a.timeSec - b.timeSec || b.hand.localeCompare(a.hand))
    .map((spot, index) => ({ ...spot, index }));
}

/** Mean level of each hand's right notes, dB: what a pearl's size is measured by. */
export function meanLevels(spots: readonly Spot[]): Readonly<Record<Hand, number>> {
  const mean = (hand: Hand): number => {
    const levels = spots
      .filter((spot) => spot.hand === hand)
      .flatMap((spot) => spot.pearls.flatMap((pearl) => (pearl.kind === 'struck' ? [pearl.levelDb] : [])));
    return levels.length === 0 ? 0 : levels.reduce((sum, level) => sum + level, 0) / levels.length;
  };
  return { left: mean('left'), right: mean('right') };
}

/** From the onset before the spot to the one after the next: a late note is heard only beside its neighbours. */
export function playRange(spots: readonly Spot[], spot: Spot): PlayRange {
  const inHand = spots.filter((other) => other.hand === spot.hand && other.pearls.some(sounded));
  const before = inHand.filter((other) => other.timeSec < spot.timeSec - 1e-6).at(-1);
  const after = inHand.filter((other) => other.timeSec > spot.timeSec + 1e-6);
  const lastSec = after[1]?.timeSec ?? after[0]?.timeSec ?? spot.timeSec;
  return {
    fromSec: Math.max(0, (before ?? spot).timeSec - LEAD_IN_SEC),
    toSec: after[2] === undefined ? lastSec + RING_OUT_SEC : after[2].timeSec - LEAD_IN_SEC,
  };
}

/** The pearls that sound at one moment of the recording: in each hand the last ones struck, for as long as they ring. */
export function soundingAt(spots: readonly Spot[], timeSec: number): readonly Spot[] {
  const hands: readonly Hand[] = ['right', 'left'];
  return hands.flatMap((hand) => {
    const struck = spots.filter((spot) => spot.hand === hand && spot.pearls.some(sounded));
    const last = struck.filter((spot) => spot.timeSec <= timeSec).at(-1);
    return last !== undefined && timeSec - last.timeSec < RING_OUT_SEC ? [last] : [];
  });
}

/** Arrow keys → the spot to move to: left and right along the hand, up and down to the other hand, Home and End. */
export function neighbourSpot(spots: readonly Spot[], from: Spot, key: string): Spot {
  const inHand = spots.filter((spot) => spot.hand === from.hand);
  const at = inHand.indexOf(from);
  const other = spots
    .filter((spot) => spot.hand !== from.hand)
    .reduce<Spot | null>(
      (best, spot) =>
        best === null || Math.abs(spot.timeSec - from.timeSec) < Math.abs(best.timeSec - from.timeSec)
          ? spot
          : best,
      null,
    );
  switch (key) {
    case 'ArrowRight':
      return inHand[at + 1] ?? from;
    case 'ArrowLeft':
      return inHand[at - 1] ?? from;
    case 'Home':
      return inHand[0] ?? from;
    case 'End':
      return inHand.at(-1) ?? from;
    case 'ArrowUp':
      return from.hand === 'left' ? (other ?? from) : from;
    case 'ArrowDown':
      return from.hand === 'right' ? (other ?? from) : from;
    default:
      return from;
  }
}

/** Indices as one text, e.g. "3 4" → the same as a set; "" → none. */
export function indicesIn(text: string): ReadonlySet<number> {
  return new Set(text.split(' ').filter(Boolean).map(Number));
}
