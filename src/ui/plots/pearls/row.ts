import { crossingsOf, lateCrossings, type Hand, type Report } from '../../../engine/index.ts';
import { shown, withUnit } from '../../kit/figures.ts';
import { strings } from '../../language/index.ts';
import { drawnText, labelSpot, LANE, placePearls, type Lane } from './lanes.ts';
import { sounded } from './pearls.ts';
import { beside, LabelLines } from './labels.ts';
import type { Spot } from './spots.ts';
import { stackLanes } from './stack.ts';
import { drawArches, drawThreads } from './ties.ts';
import type { Cut } from './warp.ts';
import type { DrawnLane, DrawnSpot, DrawnText, LabelWays, PearlRow, PictureLimits } from './types.ts';

/** Room at the right end of a row for half a name, px. */
export const RIGHT_PX = 24;

/** What one row is drawn from. */
export interface RowInput {
  readonly group: readonly Spot[];
  readonly hands: readonly Hand[];
  readonly leftPx: number;
  readonly pxPerSec: number;
  readonly last: boolean;
  readonly drawnSec: (timeSec: number) => number;
  readonly cuts: readonly Cut[];
  readonly meanDb: Readonly<Record<Hand, number>>;
  /** even places by step */
  readonly tickSec: ReadonlyMap<number, number>;
  readonly spots: readonly Spot[];
  readonly report: Report;
  readonly widthPx: number;
  /** little room: figures without their units */
  readonly narrow: boolean;
  /** steps that the words speak of */
  readonly markedSteps: ReadonlySet<number>;
  readonly limits: PictureLimits;
  /** short names of places, e.g. "V7", by step */
  readonly labels: ReadonlyMap<number, string>;
}

/** One group of spots → one row of the picture. */
export function drawRow(input: RowInput): PearlRow {
  const { group, hands, leftPx, drawnSec, pxPerSec, widthPx } = input;
  const startDrawnSec = Math.min(
    ...group.flatMap((spot) => spot.pearls.map((pearl) => drawnSec(pearl.timeSec))),
  );
  const endDrawnSec = Math.max(
    ...group.flatMap((spot) => spot.pearls.map((pearl) => drawnSec(pearl.timeSec))),
  );
  const xOf = (timeSec: number): number => leftPx + (drawnSec(timeSec) - startDrawnSec) * pxPerSec;
  // An extra note sounds during a step whose own place may be in another row.
  const steps = new Set(group.filter((spot) => !spot.extra).map((spot) => spot.step));
  const { lanes, heightPx } = stackLanes(group, hands, crossingsOf(input.report));
  const laneOf = (hand: Hand): Lane => lanes.find((lane) => lane.hand === hand) ?? lanes[0]!;
  const endX = input.last ? xOf(group.at(-1)!.timeSec) + RIGHT_PX - 2 : widthPx;
  const stringPx = hands.length > 1 ? leftPx - 18 : Math.max(leftPx - 22, 0);
  const drawnSpots = spreadSpots(input, laneOf, xOf);
  return {
    widthPx,
    heightPx: Math.max(heightPx, ...drawnSpots.flatMap(({ labels }) => labels.map(({ y }) => y + 7))),
    lanes: lanes.map((lane): DrawnLane => ({
      hand: lane.hand,
      y: lane.y,
      x1: stringPx,
      x2: endX,
      label:
        hands.length > 1
          ? drawnText(strings().prepare[lane.hand], 0, lane.y + 5, {
              sizePx: 15,
              tone: 'soft',
              serif: false,
              anchor: 'start',
            })
          : null,
      ticks: [...input.tickSec]
        .filter(([step]) => steps.has(step))
        .map(([step, timeSec]) => ({
          step,
          x: Math.min(Math.max(xOf(timeSec), 1), widthPx - 1),
          y1: lane.y + (lane.half > 12 ? lane.half + 8 : 21),
          y2: lane.y + (lane.half > 12 ? lane.half + 15 : 28),
        })),
    })),
    arches: drawArches(input.report, input.spots, steps, laneOf, xOf, stringPx),
    threads: hands.length > 1 ? drawThreads(drawnSpots, laneOf, input.limits.handsApartMs, input) : [],
    spots: drawnSpots,
    cuts: input.cuts
      .filter((cut) => drawnSec(cut.fromSec) > startDrawnSec && drawnSec(cut.fromSec) < endDrawnSec)
      .map((cut) => ({
        x: xOf(cut.fromSec),
        y: lanes[0]!.y,
        label: drawnText(withUnit(shown(cut.silenceSec, 1), 's'), xOf(cut.fromSec), lanes[0]!.y - 18, {
          sizePx: LANE.wordSize,
          tone: 'soft',
          serif: false,
        }),
      })),
    words: chordWords(drawnSpots, laneOf, input),
    startDrawnSec,
    endDrawnSec,
    leftPx,
  };
}

function spreadSpots(
  input: RowInput,
  laneOf: (hand: Hand) => Lane,
  xOf: (timeSec: number) => number,
): readonly DrawnSpot[] {
  const { group } = input;
  const late = lateCrossings(input.report);
  const alone = group.filter((spot) => !spot.extra);
  const lines = { left: new LabelLines(), right: new LabelLines() };
  return group.map((spot): DrawnSpot => {
    const lane = laneOf(spot.hand);
    const near = alone
      .filter((other) => other !== spot && other.hand === spot.hand)
      .map((other) => xOf(other.timeSec));
    const placed = placePearls(spot, lane, xOf, input.meanDb[spot.hand]);
    const pearls = spot.extra ? placed.map((pearl) => ({ ...pearl, x: beside(pearl.x, near) })) : placed;
    const x = pearls.reduce((sum, pearl) => sum + pearl.x, 0) / pearls.length;
    const leftOf = near.filter((other) => other < x).at(-1);
    const rightOf = near.find((other) => other > x);
    const room = (rightOf ?? input.widthPx) - x;
    const wordsPx = 2 * Math.min(x - (leftOf ?? 0), room) - NAMES_PX;
    const ways = nearLabel(spot, labelSpot(spot, pearls, lane, wordsPx), lane, x, room);
    const labels = ways.map((way) => lines[spot.hand].put(way)).filter((label) => label.text !== '');
    const reach = spot.extra ? 12 : 34;
    const left = Math.max(x - reach, leftOf === undefined ? 0 : (leftOf + x) / 2);
    const right = Math.min(x + reach, rightOf === undefined ? input.widthPx : (rightOf + x) / 2);
    const ys = [...labels.map((label) => label.y), ...pearls.map((pearl) => pearl.y)];
    const top = Math.min(lane.y - lane.half - 8, ...ys.map((y) => y - 18));
    const bottom = Math.max(lane.y + lane.half + 8, ...ys.map((y) => y + 8));
    const marked =
      input.markedSteps.has(spot.step) &&
      !spot.extra &&
      spot.pearls.every((pearl) => pearl.kind === 'struck');
    // An arch says it already; of a step it does so for both hands.
    const arched = late.some((one) => one.step === spot.step);
    return {
      spot,
      pearls,
      labels,
      mark:
        marked && !arched
          ? { x1: x - 12, x2: x + 12, y: Math.max(...labels.map((label) => label.y)) + 8 }
          : null,
      touch: { x: left, y: top, width: right - left, height: bottom - top },
    };
  });
}

/** Room that the names and fingers of the chords on either side need, px. */
const NAMES_PX = 56;
/** Room that the words of an extra note need at its right, px. */
const EXTRA_WORDS_PX = 78;

/** Words of an extra note stand right beside it where the next note leaves room, and not over the names of others. */
function nearLabel(
  spot: Spot,
  labels: readonly LabelWays[],
  lane: Lane,
  x: number,
  roomPx: number,
): readonly LabelWays[] {
  if (!spot.extra || lane.side > 0 || roomPx < EXTRA_WORDS_PX) return labels;
  return labels.map(([label]) => [{ ...label, x: x + 11, y: lane.y - 10, anchor: 'start' as const }]);
}

/** Over a chord its name; beside it how far it was spread, where that is too far. */
function chordWords(
  spots: readonly DrawnSpot[],
  laneOf: (hand: Hand) => Lane,
  input: RowInput,
): readonly DrawnText[] {
  return spots
    .filter(({ spot }) => spot.pearls.length > 1)
    .flatMap(({ spot, pearls }) => {
      const lane = laneOf(spot.hand);
      const x = Math.max(...pearls.map((pearl) => pearl.x));
      const times = spot.pearls.filter((pearl) => sounded(pearl)).map((pearl) => pearl.timeSec);
      const spreadMs = (Math.max(...times) - Math.min(...times)) * 1000;
      const label = input.hands[0] === spot.hand ? (input.labels.get(spot.step) ?? '') : '';
      const nameY = lane.y - lane.half - (lane.side > 0 ? 9 : 26 + spot.pearls.length * 21);
      return [
        ...(label === '' ? [] : [drawnText(label, x - 2, nameY, { sizePx: 15, tone: 'soft' })]),
        ...(spreadMs > input.limits.chordSpreadMs ? [spreadText(spreadMs, pearls, lane, input)] : []),
      ];
    });
}

/** Room that the figure of a spread chord needs beside it, px: without its unit, and with. */
const SPREAD_PX = { narrow: 26, wide: 50 } as const;

/** How far a chord was spread, at its right; at its left where the row ends. */
function spreadText(
  spreadMs: number,
  pearls: DrawnSpot['pearls'],
  lane: Lane,
  { widthPx, narrow }: RowInput,
): DrawnText {
  const xs = pearls.map((pearl) => pearl.x);
  const toTheLeft = Math.max(...xs) + 13 + (narrow ? SPREAD_PX.narrow : SPREAD_PX.wide) > widthPx;
  const x = toTheLeft ? Math.min(...xs) - 13 : Math.max(...xs) + 13;
  return drawnText(narrow ? shown(spreadMs) : withUnit(shown(spreadMs), 'ms'), x, lane.y - 7, {
    sizePx: LANE.wordSize,
    tone: 'accent',
    serif: false,
    anchor: toTheLeft ? 'end' : 'start',
  });
}
