import { beatsPerStep, DEFAULT_CRITERIA, STOP_BEATS, timelineOf } from '../../../engine/index.ts';
import type { Exercise, Report } from '../../../engine/index.ts';
import { drawRow, RIGHT_PX } from './row.ts';
import { chooseBreaks } from './rows.ts';
import { spotsOf, meanLevels, type Spot } from './spots.ts';
import type { PearlPicture, PictureLimits } from './types.ts';
import { cutSilences } from './warp.ts';

export interface PictureOptions {
  readonly widthPx: number;
  /** steps that are marked; those that the words speak of if not said */
  readonly markedSteps?: ReadonlySet<number>;
  /** the usual ones if not said */
  readonly limits?: PictureLimits;
}

/** A stop is drawn as long as this many beats. */
const STOP_DRAWN_BEATS = 1.5;
const NARROW_PX = 600;
/** A chord's names need as much room as this many single notes. */
const CHORD_STEPS = 1.5;
const LONGEST_LABEL = 4;
const STEP_PX = { narrow: 42, wide: 50, most: 150, mostChord: 200 } as const;

/** Report → the string of pearls in rows that fit the width, all at one scale of time. */
export function drawPearls(report: Report, exercise: Exercise, options: PictureOptions): PearlPicture {
  const spots = spotsOf(report, exercise);
  const timeline = timelineOf(report, exercise);
  const secPerBeat = timeline.beatSec ?? 1;
  const warp = cutSilences(
    [...new Set(spots.map((spot) => spot.timeSec))].sort((a, b) => a - b),
    STOP_BEATS * secPerBeat,
    STOP_DRAWN_BEATS * secPerBeat,
  );
  const stepSec = timeline.stepSec ?? beatsPerStep(exercise);
  const hands = (['right', 'left'] as const).filter((hand) => spots.some((spot) => spot.hand === hand));
  const narrow = options.widthPx < NARROW_PX;
  const chords = spots.some((spot) => spot.pearls.length > 1);
  // The names of a chord reach further to the left than a single one.
  const leftPx = hands.length > 1 ? (narrow ? 56 : 70) : !narrow ? 36 : chords ? 34 : 22;
  const innerPx = Math.max(options.widthPx - leftPx - RIGHT_PX, 80);
  const leastPx = (narrow ? STEP_PX.narrow : STEP_PX.wide) * (chords ? CHORD_STEPS : 1);
  const mostPx = chords ? STEP_PX.mostChord : STEP_PX.most;

  const groups = rowsOfSpots(spots, exercise, warp.drawnSec, {
    capacitySec: (innerPx / leastPx) * stepSec,
    stepSec,
  });
  const longestSec = Math.max(...groups.map((group) => spanSec(group, warp.drawnSec)), stepSec);
  const pxPerSec = Math.min(innerPx / longestSec, mostPx / stepSec);
  const rows = groups.map((group, index) =>
    drawRow({
      group,
      hands,
      leftPx,
      pxPerSec,
      last: index === groups.length - 1,
      drawnSec: warp.drawnSec,
      cuts: warp.cuts,
      meanDb: meanLevels(spots),
      tickSec: timeline.tickSec,
      spots,
      report,
      widthPx: options.widthPx,
      narrow,
      markedSteps: options.markedSteps ?? new Set(report.words.steps),
      limits: options.limits ?? DEFAULT_CRITERIA,
      labels: shortLabels(exercise),
    }),
  );
  return { rows, pxPerSec, drawnSec: warp.drawnSec, spots };
}

/** Names of places that are short enough to stand over a chord: numerals. */
function shortLabels(exercise: Exercise): ReadonlyMap<number, string> {
  return new Map(
    exercise.steps.flatMap(({ step, label }) =>
      label !== undefined && label.length <= LONGEST_LABEL ? [[step, label] as const] : [],
    ),
  );
}

const spanSec = (group: readonly Spot[], drawnSec: (timeSec: number) => number): number =>
  group.length === 0 ? 0 : drawnSec(group.at(-1)!.timeSec) - drawnSec(group[0]!.timeSec);

function rowsOfSpots(
  spots: readonly Spot[],
  exercise: Exercise,
  drawnSec: (timeSec: number) => number,
  size: { readonly capacitySec: number; readonly stepSec: number },
): readonly (readonly Spot[])[] {
  if (spots.length === 0) return [];
  const at = spots.flatMap((spot, index) => {
    const before = spots[index - 1];
    // Both hands of one step, and an extra note with the note it lies beside, stay in one row.
    const opens =
      before !== undefined &&
      !spot.extra &&
      spots.slice(0, index).every((one) => one.step !== spot.step || one.extra);
    return opens ? [index] : [];
  });
  const places = at.map((index) => ({
    beforeSec: drawnSec(spots[index - 1]!.timeSec),
    afterSec: drawnSec(spots[index]!.timeSec),
    tears: (exercise.steps[spots[index]!.step]?.crossings.length ?? 0) > 0,
  }));
  const breaks = chooseBreaks(places, drawnSec(spots[0]!.timeSec), drawnSec(spots.at(-1)!.timeSec), size).map(
    (place) => at[place]!,
  );
  return [0, ...breaks].map((from, row) => spots.slice(from, breaks[row] ?? spots.length));
}
