import { crossingsOf, lateCrossings, type Hand, type Report } from '../../../engine/index.ts';
import { signed, withUnit } from '../../kit/figures.ts';
import { runsInto, widthPx } from './labels.ts';
import { drawnText, hangingDepth, LANE, type Lane } from './lanes.ts';
import type { Spot } from './spots.ts';
import type { DrawnArch, DrawnSpot, DrawnText, DrawnThread } from './types.ts';

/** Crossings into the steps of a row → arches over their gaps, with what each took too long. */
export function drawArches(
  report: Report,
  spots: readonly Spot[],
  steps: ReadonlySet<number>,
  laneOf: (hand: Hand) => Lane,
  xOf: (timeSec: number) => number,
  stringPx: number,
): readonly DrawnArch[] {
  const lateOnes = lateCrossings(report);
  return crossingsOf(report)
    .filter((crossing) => steps.has(crossing.step))
    .flatMap((crossing) => {
      const inHand = spots.filter((spot) => spot.hand === crossing.hand && !spot.extra);
      const into = inHand.find((spot) => spot.step === crossing.step);
      const from = inHand.find((spot) => spot.step === crossing.step - 1);
      if (into === undefined || from === undefined || from.timeSec >= into.timeSec) return [];
      const lane = laneOf(crossing.hand);
      const late = lateOnes.includes(crossing);
      const x2 = xOf(into.timeSec);
      // An arch from the row before begins where the string does.
      const x1 = Math.max(xOf(from.timeSec), stringPx);
      const foot = lane.y + lane.archSide * 17;
      const peak = lane.y + lane.archSide * (LANE.archHeight - 4);
      const labelY = lane.archSide < 0 ? peak + 1 : peak + 8;
      const figure = signed(crossing.delayMs);
      return [
        {
          step: crossing.step,
          hand: crossing.hand,
          late,
          path: `M${x1} ${foot} C ${x1 + 6} ${peak}, ${x2 - 6} ${peak}, ${x2} ${foot}`,
          label: drawnText(late ? withUnit(figure, 'ms') : figure, Math.max((x1 + x2) / 2, 18), labelY, {
            sizePx: late ? 17 : 14,
            tone: late ? 'accent' : 'soft',
            serif: false,
          }),
        },
      ];
    });
}

/** How far the figure of a thread stands from it, px. */
const ASIDE_PX = 8;
/** How far it gives way to the one before it, px. */
const LINE_PX = 16;

/** Both hands of a step → the thread that ties them; its slant shows which came first. */
export function drawThreads(
  spots: readonly DrawnSpot[],
  laneOf: (hand: Hand) => Lane,
  handsApartMs: number,
  row: { readonly narrow: boolean; readonly widthPx: number },
): readonly DrawnThread[] {
  const right = spots.filter(({ spot }) => spot.hand === 'right' && !spot.extra);
  let before: DrawnText | null = null;
  return right.flatMap((upper): readonly DrawnThread[] => {
    const lower = spots.find(
      ({ spot }) => spot.hand === 'left' && spot.step === upper.spot.step && !spot.extra,
    );
    if (lower === undefined) return [];
    const heard = [upper, lower].every(({ spot }) =>
      spot.pearls.some((pearl) => pearl.kind === 'struck' || pearl.kind === 'wrong'),
    );
    if (!heard) return [];
    const apartMs = Math.abs(upper.spot.timeSec - lower.spot.timeSec) * 1000;
    const apart = apartMs > handsApartMs;
    const meanX = (one: DrawnSpot): number =>
      one.pearls.reduce((sum, pearl) => sum + pearl.x, 0) / one.pearls.length;
    const [top, bottom] = [laneOf('right'), laneOf('left')];
    const thread = {
      x1: meanX(upper),
      // A note that hangs between the strings comes first.
      y1: top.y + Math.max(top.half, hangingDepth(upper.spot, top.half)) + 5,
      x2: meanX(lower),
      y2: bottom.y - bottom.half - 5,
    };
    if (!apart) return [{ step: upper.spot.step, ...thread, apart, label: null }];
    const words = row.narrow ? apartMs.toFixed(0) : withUnit(apartMs.toFixed(0), 'ms');
    const middleX = (thread.x1 + thread.x2) / 2;
    const toTheLeft = middleX + ASIDE_PX + widthPx({ text: words, sizePx: 15 }) > row.widthPx;
    const x = middleX + (toTheLeft ? -ASIDE_PX : ASIDE_PX);
    const beside = drawnText(words, x, (thread.y1 + thread.y2) / 2 + 5, {
      ...{ sizePx: 15, tone: 'accent', serif: false, anchor: toTheLeft ? 'end' : 'start' },
    });
    const label: DrawnText =
      before !== null && runsInto(beside, before) ? { ...beside, y: beside.y + LINE_PX } : beside;
    before = label;
    return [{ step: upper.spot.step, ...thread, apart, label }];
  });
}
