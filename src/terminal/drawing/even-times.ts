/** A gap of more than this many beats ends a stretch: after a stop the pulse starts anew (measures.md, "stopped"). */
const STOP_BEATS = 3;

/** Notes that a line needs before it says anything. */
const FEWEST = 3;

export interface EvenTimes {
  /** steps within a stretch of steady playing: where even notes would fall, seconds */
  readonly ticks: ReadonlyMap<number, number>;
  /** every step: where it was to be expected between those that were played, or before or after them at their pace */
  readonly all: ReadonlyMap<number, number>;
}

/**
 * Onsets by step and each step's beat → where perfectly even notes would have fallen: a straight line through the onsets
 * of each stretch (van Vugt et al. 2012 measure about such a line), laid so that a few late notes do not move it.
 */
export function evenTimes(onsetSec: ReadonlyMap<number, number>, beats: readonly number[]): EvenTimes {
  const ticks = new Map<number, number>();
  const all = new Map<number, number>();
  const played = [...onsetSec].map(([step, timeSec]): Played => ({ step, beat: beats[step]!, timeSec }));
  const usualSec = middle(beatSeconds(played));
  beats.forEach((beat, step) => {
    const before = played.findLast((place) => place.step <= step);
    const after = played.find((place) => place.step >= step);
    if (before !== undefined && after !== undefined) {
      const share = (beat - before.beat) / (after.beat - before.beat || 1);
      all.set(step, before.timeSec + share * (after.timeSec - before.timeSec));
    } else if (before !== undefined) all.set(step, before.timeSec + usualSec * (beat - before.beat));
    else if (after !== undefined) all.set(step, after.timeSec - usualSec * (after.beat - beat));
  });
  for (const stretch of stretches(played)) {
    if (stretch.length < FEWEST) continue;
    const line = fitLine(stretch);
    for (let step = stretch[0]!.step; step <= stretch.at(-1)!.step; step++) {
      ticks.set(step, line(beats[step]!));
    }
  }
  return { ticks, all };
}

interface Played {
  readonly step: number;
  readonly beat: number;
  readonly timeSec: number;
}

/** How long each beat took between one played step and the next. */
function beatSeconds(played: readonly Played[]): number[] {
  return played.slice(1).map((place, i) => {
    const before = played[i]!;
    return (place.timeSec - before.timeSec) / (place.beat - before.beat || 1);
  });
}

function stretches(played: readonly Played[]): Played[][] {
  const usualSec = middle(beatSeconds(played));
  const found: Played[][] = [];
  played.forEach((place, i) => {
    const before = played[i - 1];
    const goesOn =
      before !== undefined &&
      place.timeSec - before.timeSec <= STOP_BEATS * usualSec + beatsApart(before, place, usualSec);
    if (goesOn) found.at(-1)!.push(place);
    else found.push([place]);
  });
  return found;
}

/** Steps missed in between take their time too. */
function beatsApart(before: Played, place: Played, usualSec: number): number {
  return Math.max(place.beat - before.beat - 1, 0) * usualSec;
}

/** Theil–Sen: the median slope over all pairs and the median height; one late note in four does not tilt it. */
function fitLine(places: readonly Played[]): (beat: number) => number {
  const slopes = places.flatMap((a, i) =>
    places
      .slice(i + 1)
      .flatMap((b) => (b.beat === a.beat ? [] : [(b.timeSec - a.timeSec) / (b.beat - a.beat)])),
  );
  const slope = middle(slopes);
  const height = middle(places.map(({ beat, timeSec }) => timeSec - slope * beat));
  return (beat) => height + slope * beat;
}

function middle(values: readonly number[]): number {
  const sorted = [...values].sort((a, b) => a - b);
  return sorted[Math.floor(sorted.length / 2)] ?? 0;
}
