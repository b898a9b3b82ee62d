/** A beat is divided so: into sixteenths and the thirds of triplets. */
const PARTS = 12;
/** Longest way from one moment to the next, quarter notes: two whole notes. */
const LONGEST = 8;

/**
 * How strange it is to strike at a place within the beat, natural logarithm: on it, halfway, a sixteenth beside, a third of it. Ordered as
 * written music has them (common practice, no source), set by reasoning and not tried otherwise.
 */
const STRANGE: ReadonlyMap<number, number> = new Map([
  [0, 0],
  [6, 0.6],
  [9, 1.2],
  [3, 1.6],
  [4, 2.2],
  [8, 2.2],
]);
/** To begin off the beat, besides. */
const BEGINS_OFF = 2;

/**
 * How people keep time, one standard deviation: a moment strays about its place, seconds; each beat comes out by a share longer or shorter,
 * and the tempo itself wanders by a share a beat. Tapping strays by 3 to 6 per cent of its interval (Repp 2005, from memory), here 1.2 s.
 * The three, and how near keys lie that are one chord, are the best of eleven settings tried on the strokes of 30 and of 90 simulated
 * passages (`npm run bench:played-once -- --strokes`; 74 to 98 % of the moments right): no sound, but the bench's own passages.
 */
const STRAY_SEC = 0.05;
const CLOCK = 0.02;
const WANDER = 0.01;
/** How far from the tempo that was named somebody plays, one standard deviation, and how many times faster or slower at most: under an octave. */
const OFF_TEMPO = 0.17;
const MOST_OFF_TEMPO = 1.45;
/** Ways to read it that are followed side by side. */
const FOLLOWED = 120;
/** Beats that differ by less than this share are one. */
const SAME_BEAT = 0.04;
/** A moment is looked for so many standard deviations about where it was to come. */
const REACH = 4;

/** One way to read the rhythm so far: where the last moment stands, and what it makes of the beat. */
interface Way {
  /** in parts of a beat from a beat before the first moment */
  readonly at: number;
  readonly cost: number;
  readonly before: Way | null;
  /** the last moment, by the beat; a beat's length; their covariance: a Kalman filter's state */
  readonly timeSec: number;
  readonly beatSec: number;
  readonly timeVariance: number;
  readonly covariance: number;
  readonly beatVariance: number;
}

/**
 * Moments in order, seconds → where each stands, quarter notes from a beat at or before the first one, for somebody who plays at about
 * `bpm` quarter notes a minute, with a human beat. Of all ways to read them on sixteenths and triplets the one is taken that needs the
 * least straying and the least strange places: a Kalman filter of beat and phase for each (Cemgil et al. 2000, from memory).
 */
export function beatsOf(timesSec: readonly number[], bpm: number): readonly number[] {
  const [first, ...others] = timesSec;
  if (first === undefined) return [];
  const beatSec = 60 / bpm;
  let ways: readonly Way[] = [...STRANGE].map(([at, strange]) => ({
    at,
    cost: at === 0 ? 0 : strange + BEGINS_OFF,
    before: null,
    timeSec: first,
    beatSec,
    timeVariance: STRAY_SEC ** 2,
    covariance: 0,
    beatVariance: (OFF_TEMPO * beatSec) ** 2,
  }));
  for (const timeSec of others) {
    const next = ways
      .flatMap((way) => onward(way, timeSec))
      .filter((way) => Math.max(way.beatSec / beatSec, beatSec / way.beatSec) <= MOST_OFF_TEMPO);
    // Whatever was played goes somewhere: a stop that no beat explains lasts as long as it lasts.
    ways = likeliest(next.length > 0 ? next : ways.map((way) => stopped(way, timeSec)));
  }
  const beats: number[] = [];
  for (let way: Way | null = ways[0]!; way !== null; way = way.before) beats.unshift(way.at / PARTS);
  return beats;
}

/** The cheapest, one of each that stand at one place with one beat: what comes after is the same for them. */
function likeliest(ways: readonly Way[]): readonly Way[] {
  const kept = new Map<string, Way>();
  for (const way of [...ways].sort((a, b) => a.cost - b.cost)) {
    const id = `${way.at} ${Math.round(Math.log(way.beatSec) / SAME_BEAT)}`;
    if (!kept.has(id)) kept.set(id, way);
    if (kept.size === FOLLOWED) break;
  }
  return [...kept.values()];
}

function onward(way: Way, timeSec: number): readonly Way[] {
  const passed = (timeSec - way.timeSec) / way.beatSec;
  const found: Way[] = [];
  for (let parts = 1; parts <= LONGEST * PARTS; parts++) {
    const strange = strangeness(way.at, way.at + parts);
    if (strange === null || parts / PARTS < passed / 2 || parts / PARTS > 2 * passed + 1) continue;
    const next = moved(way, parts, timeSec, strange);
    if (next !== null) found.push(next);
  }
  return found;
}

/** Within one beat, thirds and sixteenths do not go together. Null: nobody writes that. */
function strangeness(from: number, to: number): number | null {
  const place = to % PARTS;
  const strange = STRANGE.get(place);
  if (strange === undefined) return null;
  const sameBeat = Math.floor(from / PARTS) === Math.floor(to / PARTS);
  const isThird = place % 4 === 0 && place > 0;
  if (!sameBeat || from % PARTS === 0) return strange;
  return isThird === ((from % PARTS) % 4 === 0) ? strange : null;
}

function moved(way: Way, parts: number, timeSec: number, strange: number): Way | null {
  const beats = parts / PARTS;
  const wander = (WANDER * way.beatSec) ** 2 * beats;
  const clock = (CLOCK * way.beatSec) ** 2 * beats;
  const covariance = way.covariance + beats * way.beatVariance;
  const beatVariance = way.beatVariance + wander;
  const timeVariance =
    way.timeVariance + 2 * beats * way.covariance + beats * beats * way.beatVariance + clock;
  const variance = timeVariance + STRAY_SEC ** 2;
  const expectedSec = way.timeSec + beats * way.beatSec;
  const off = timeSec - expectedSec;
  if (off * off > REACH * REACH * variance) return null;
  return {
    at: way.at + parts,
    cost: way.cost + strange + (off * off) / (2 * variance) + Math.log(variance) / 2,
    before: way,
    timeSec: expectedSec + (timeVariance / variance) * off,
    beatSec: Math.max(0.1, way.beatSec + (covariance / variance) * off),
    timeVariance: timeVariance * (1 - timeVariance / variance),
    covariance: covariance * (1 - timeVariance / variance),
    beatVariance: beatVariance - (covariance * covariance) / variance,
  };
}

/** On to the next beat that fits, as if the clock had stood still meanwhile. */
function stopped(way: Way, timeSec: number): Way {
  const beats = Math.min(LONGEST, Math.max(1, Math.round((timeSec - way.timeSec) / way.beatSec)));
  const at = (Math.floor(way.at / PARTS) + beats) * PARTS;
  return { ...way, at, before: way, timeSec, timeVariance: STRAY_SEC ** 2, covariance: 0 };
}
