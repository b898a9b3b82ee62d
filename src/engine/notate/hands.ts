import { mean } from '../base/statistics.ts';
import type { Hand } from '../exercise/index.ts';

/** A key struck at a place in time, in any unit. */
export interface PlacedKey {
  readonly at: number;
  readonly midi: number;
}

/** What a split costs, by reasoning about hands: nothing here is fitted to music. Semitones, unless said. */
const COSTS = {
  /** a hand spans an octave without effort, a tenth with; each semitone beyond the octave costs so much */
  span: 12,
  beyondSpan: 2,
  /** to move a hand by an octave */
  jumpAnOctave: 1,
  /** a note of the left hand above, or of the right below, the middle of the keyboard, an octave of it */
  middle: 60,
  wrongSideAnOctave: 1.5,
  /** a hand that rests */
  rests: 0.3,
} as const;
/** A line of single notes is one hand's, where it leaps no further than this. */
const LINE_LEAP = 16;
/** … and is the left hand's where its mean lies under this: the D below middle C; common practice, no source. */
const LEFT_BELOW = 55;

/**
 * Keys in order of time → the hand of each, by register and line: of what sounds together the lower keys are the left hand's, and where it
 * parts follows from how far each hand reaches and moves. Which hand it was cannot be heard; the player sets it right.
 */
export function splitHands(keys: readonly PlacedKey[], sameMoment: number): readonly Hand[] {
  const moments = momentsOf(keys, sameMoment);
  const isLine = moments.every(
    (moment, at) =>
      moment.length === 1 && (at === 0 || Math.abs(moment[0]!.midi - moments[at - 1]![0]!.midi) <= LINE_LEAP),
  );
  if (isLine) {
    const hand: Hand = (mean(keys.map(({ midi }) => midi)) ?? 0) < LEFT_BELOW ? 'left' : 'right';
    return keys.map(() => hand);
  }
  const hands = new Array<Hand>(keys.length);
  cheapestSplits(moments).forEach((lefts, at) =>
    moments[at]!.forEach(({ index }, place) => {
      hands[index] = place < lefts ? 'left' : 'right';
    }),
  );
  return hands;
}

interface Key {
  readonly index: number;
  readonly midi: number;
}

/** What begins together, lowest first. */
function momentsOf(keys: readonly PlacedKey[], sameMoment: number): readonly (readonly Key[])[] {
  const moments: Key[][] = [];
  let beganAt = -Infinity;
  keys.forEach(({ at, midi }, index) => {
    if (at - beganAt > sameMoment) {
      moments.push([]);
      beganAt = at;
    }
    moments.at(-1)!.push({ index, midi });
  });
  return moments.map((moment) => moment.sort((a, b) => a.midi - b.midi));
}

/** A way to split all moments so far: where each hand now lies. */
interface Way {
  readonly cost: number;
  readonly left: number | null;
  readonly right: number | null;
  readonly lefts: readonly number[];
}

/** How many of the lowest keys of each moment are the left hand's. */
function cheapestSplits(moments: readonly (readonly Key[])[]): readonly number[] {
  let ways: readonly Way[] = [{ cost: 0, left: null, right: null, lefts: [] }];
  for (const moment of moments) {
    const midis = moment.map(({ midi }) => midi);
    ways = Array.from({ length: midis.length + 1 }, (_, count) =>
      ways
        .map((way) => onward(way, midis.slice(0, count), midis.slice(count), count))
        .reduce((a, b) => (b.cost < a.cost ? b : a)),
    );
  }
  return ways.reduce((a, b) => (b.cost < a.cost ? b : a)).lefts;
}

function onward(way: Way, lower: readonly number[], upper: readonly number[], count: number): Way {
  const left = mean(lower) ?? null;
  const right = mean(upper) ?? null;
  const cost = way.cost + handCost(lower, left, way.left, -1) + handCost(upper, right, way.right, 1);
  return { cost, left: left ?? way.left, right: right ?? way.right, lefts: [...way.lefts, count] };
}

/** `side`: −1 for the hand that plays below the middle, 1 for the other. */
function handCost(keys: readonly number[], now: number | null, before: number | null, side: -1 | 1): number {
  if (now === null) return COSTS.rests;
  const span = keys.at(-1)! - keys[0]!;
  const wrongSide = Math.max(0, side * (COSTS.middle - now));
  return (
    COSTS.beyondSpan * Math.max(0, span - COSTS.span) +
    (COSTS.jumpAnOctave * Math.abs(now - (before ?? now))) / 12 +
    (COSTS.wrongSideAnOctave * wrongSide) / 12
  );
}
