import type { CrossingDelay, Hand } from '../../../engine/index.ts';
import { hangingDepth, LANE, type Lane } from './lanes.ts';
import type { Spot } from './spots.ts';

/** Rooms above, between and below the strings of a row, only as large as what stands in them. */
export function stackLanes(
  group: readonly Spot[],
  hands: readonly Hand[],
  crossings: readonly CrossingDelay[],
): { readonly lanes: readonly Lane[]; readonly heightPx: number } {
  const steps = new Set(group.map((spot) => spot.step));
  const has = (hand: Hand) => {
    const own = group.filter((spot) => spot.hand === hand);
    const tallest = Math.max(1, ...own.map((spot) => (spot.extra ? 1 : spot.pearls.length)));
    const half = tallest > 1 ? ((tallest - 1) / 2) * LANE.chordSpacing + LANE.chordRadius : 12;
    return {
      half,
      chordLines: tallest,
      arches: crossings.some((one) => one.hand === hand && steps.has(one.step)),
      extras: own.some((spot) => spot.extra),
      hanging: Math.max(0, ...own.map((spot) => hangingDepth(spot, half))),
    };
  };
  const lower = hands.at(-1)!;
  const low = has(lower);
  const archPx = (room: ReturnType<typeof has>): number =>
    room.arches && hands.length > 1 ? LANE.archRoom : 0;
  const namesBelow = low.chordLines > 1 ? low.half + 26 + low.chordLines * 21 : 84 + archPx(low);
  const hangs = low.chordLines > 1 && low.hanging > 0 ? low.hanging + 10 + low.chordLines * 21 : low.hanging;
  const below = Math.max(namesBelow, hangs) + 6;
  const above = (room: ReturnType<typeof has>): number =>
    room.arches
      ? LANE.archHeight + 14
      : room.extras
        ? room.half + 38
        : Math.max(room.half + (room.chordLines > 1 ? 26 : 10), 24);
  if (hands.length === 1) {
    const y = above(low);
    const lane: Lane = { hand: lower, y, side: 1, half: low.half, archSide: -1, archPx: 0 };
    return { lanes: [lane], heightPx: y + below };
  }
  const upper = hands[0]!;
  const high = has(upper);
  const namesAbove =
    high.chordLines > 1 ? high.half + 42 + high.chordLines * 21 : 72 + (high.extras ? 18 : 0) + archPx(high);
  const upperY = namesAbove + 4;
  const between = Math.max(
    96,
    high.half + low.half + 64,
    high.hanging === 0 ? 0 : high.hanging + low.half + 40,
  );
  return {
    lanes: [
      { hand: upper, y: upperY, side: -1, half: high.half, archSide: -1, archPx: archPx(high) },
      { hand: lower, y: upperY + between, side: 1, half: low.half, archSide: 1, archPx: archPx(low) },
    ],
    heightPx: upperY + between + below,
  };
}
