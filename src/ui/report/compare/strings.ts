import { beatsPerStep, timelineOf, type Exercise, type Hand, type Report } from '../../../engine/index.ts';
import { shownName } from '../../names/index.ts';
import { sounded } from '../../plots/pearls/pearls.ts';
import { LANE, placePearls, type Lane } from '../../plots/pearls/lanes.ts';
import { spotsOf, meanLevels, type Spot } from '../../plots/pearls/spots.ts';
import type { DrawnPearl } from '../../plots/pearls/types.ts';

/** An attempt with the exercise that it is measured by. */
export interface Compared {
  readonly report: Report;
  readonly exercise: Exercise;
}

/** One string of the picture, px. */
export interface ComparedString {
  readonly whose: 'other' | 'this';
  readonly hand: Hand;
  readonly y: number;
  /** of the words that say whose it is: above the upper string, below the names of the lower one, clear of all ties */
  readonly labelY: number;
  readonly pearls: readonly DrawnPearl[];
}

/** One line of the picture: for each hand both strings, tied step by step. */
export interface ComparedRow {
  readonly strings: readonly ComparedString[];
  readonly ticks: readonly { readonly x: number; readonly y: number }[];
  /** from the other attempt's place to this one's; `apart`: clearly another place in time */
  readonly ties: readonly {
    readonly x1: number;
    readonly y1: number;
    readonly x2: number;
    readonly y2: number;
    readonly apart: boolean;
  }[];
  readonly names: readonly { readonly x: number; readonly y: number; readonly text: string }[];
  readonly x1: number;
  readonly x2: number;
  readonly heightPx: number;
}

const LEFT_PX = 22;
const RIGHT_PX = 20;
const STEP_PX = { least: 40, most: 88 } as const;
/** No pearl leaves the room of its step. */
const MOST_OFF = 0.46;
/** A tie that slants by more than this share of a step is pointed out: a tenth, four times what can just be heard. */
const CLEARLY_APART = 0.1;
/** Above the upper string and below the names there is room for whose a string is, and between both for the ties, px. */
const LABEL_PX = 24;
/** of the names, px */
const NAMES_PX = 20;

interface Placed {
  readonly spots: readonly Spot[];
  /** share of a step by which a moment lies after (+) the even place of a step */
  readonly off: (step: number, timeSec: number) => number;
  readonly meanDb: Readonly<Record<Hand, number>>;
}

/** Two attempts of one exercise → their strings above one another, steps below steps. */
export function compareStrings(other: Compared, now: Compared, widthPx: number): readonly ComparedRow[] {
  const { steps } = now.exercise;
  if (steps.length === 0 || widthPx <= 0) return [];
  const chords = steps.some((step) => new Set(step.notes.map((note) => note.hand)).size < step.notes.length);
  const least = STEP_PX.least * (chords ? 1.5 : 1);
  const innerPx = Math.max(widthPx - LEFT_PX - RIGHT_PX, least);
  const rowCount = Math.ceil(steps.length / Math.max(1, Math.floor(innerPx / least)));
  const each = Math.ceil(steps.length / rowCount);
  const stepPx = Math.min(STEP_PX.most, innerPx / each);
  const [a, b] = [placed(other), placed(now)];
  return Array.from({ length: rowCount }, (_, row) => {
    const inRow = steps.slice(row * each, (row + 1) * each).map((step) => step.step);
    return drawRow(a, b, now.exercise, inRow, stepPx);
  });
}

function placed({ report, exercise }: Compared): Placed {
  const spots = spotsOf(report, exercise).filter((spot) => !spot.extra);
  const { tickSec, stepSec: usualSec } = timelineOf(report, exercise);
  const stepSec = usualSec ?? beatsPerStep(exercise);
  return {
    spots,
    meanDb: meanLevels(spots),
    off: (step, timeSec) => {
      const evenSec = tickSec.get(step);
      if (evenSec === undefined) return 0;
      return Math.min(Math.max((timeSec - evenSec) / stepSec, -MOST_OFF), MOST_OFF);
    },
  };
}

function drawRow(
  other: Placed,
  now: Placed,
  exercise: Exercise,
  steps: readonly number[],
  stepPx: number,
): ComparedRow {
  const hands = (['right', 'left'] as const).filter((hand) => now.spots.some((spot) => spot.hand === hand));
  const xOf = (step: number): number => LEFT_PX + (steps.indexOf(step) + 0.5) * stepPx;
  const strings: ComparedString[] = [];
  const ties: ComparedRow['ties'][number][] = [];
  const ticks: ComparedRow['ticks'][number][] = [];
  const names: ComparedRow['names'][number][] = [];
  let y = 8;
  for (const hand of hands) {
    const own = (from: Placed): readonly Spot[] =>
      from.spots.filter((spot) => spot.hand === hand && steps.includes(spot.step));
    const tallest = Math.max(1, ...[...own(other), ...own(now)].map((spot) => spot.pearls.length));
    const half = tallest > 1 ? ((tallest - 1) / 2) * LANE.chordSpacing + LANE.chordRadius : 14;
    const hangs = (whose: 'other' | 'this'): number => {
      const spots = own(whose === 'other' ? other : now);
      return spots.some((spot) => spot.pearls.some((pearl) => pearl.kind === 'wrong')) ? LANE.hang + 8 : 8;
    };
    const pair = (['other', 'this'] as const).map((whose) => {
      const from = whose === 'other' ? other : now;
      y += LABEL_PX + half;
      const lane: Lane = { hand, y, side: 1, half, archSide: -1, archPx: 0 };
      const spots = own(from).map((spot) => ({
        spot,
        pearls: placePearls(
          spot,
          lane,
          (sec) => xOf(spot.step) + stepPx * (spot.pearls.some(sounded) ? from.off(spot.step, sec) : 0),
          from.meanDb[hand],
        ),
      }));
      strings.push({
        whose,
        hand,
        y,
        labelY: whose === 'other' ? y - half - 6 : y + half + hangs(whose) + NAMES_PX + LABEL_PX - 6,
        pearls: spots.flatMap(({ pearls }) => pearls),
      });
      ticks.push(...steps.map((step) => ({ x: xOf(step), y: y + half + 3 })));
      const stringY = y;
      y += half + hangs(whose);
      return { spots, stringY, from };
    });
    const [first, second] = [pair[0]!, pair[1]!];
    for (const { spot } of second.spots) {
      const before = first.spots.find((one) => one.spot.step === spot.step);
      if (before === undefined || !spot.pearls.some(sounded) || !before.spot.pearls.some(sounded)) continue;
      const [offA, offB] = [other.off(spot.step, before.spot.timeSec), now.off(spot.step, spot.timeSec)];
      ties.push({
        x1: xOf(spot.step) + stepPx * offA,
        y1: first.stringY + half + 4,
        x2: xOf(spot.step) + stepPx * offB,
        y2: second.stringY - half - 4,
        apart: Math.abs(offA - offB) > CLEARLY_APART,
      });
    }
    y += 14;
    names.push(...steps.map((step) => ({ x: xOf(step), y, text: nameOf(exercise, step, hand) })));
    y += NAMES_PX - 14 + LABEL_PX;
  }
  return {
    strings,
    ticks,
    ties,
    names,
    x1: LEFT_PX - 12,
    x2: LEFT_PX + steps.length * stepPx + 12,
    heightPx: y,
  };
}

function nameOf(exercise: Exercise, step: number, hand: Hand): string {
  const { label, notes } = exercise.steps[step]!;
  const own = notes.filter((note) => note.hand === hand);
  if (own.length > 1) return label !== undefined && label.length <= 4 ? label : String(step + 1);
  return own[0] === undefined ? '' : shownName(own[0].name);
}
