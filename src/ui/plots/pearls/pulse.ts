/** A perfectly even pulse: step at beat b falls at startSec + b · secPerBeat. */
export interface Pulse {
  readonly startSec: number;
  readonly secPerBeat: number;
}

/** A stretch played without stopping, with its own pulse. Beats are inclusive. */
export interface PulseStretch {
  readonly fromBeat: number;
  readonly toBeat: number;
  readonly pulse: Pulse;
}

export interface Struck {
  readonly beat: number;
  readonly timeSec: number;
  /** a note was struck again, or the player went back, on the way here */
  readonly interrupted?: boolean;
}

/** teaching.md: a gap over three beats is a stop. Common practice, no source. */
export const STOP_BEATS = 3;

/**
 * Onsets in order of time → the even pulse that begins with the first and ends with the last, so that a note that comes
 * late stands beside its tick and not on it. (A line fitted to all onsets would lean towards the late ones.) Null of
 * fewer than two different beats.
 */
export function evenPulse(struck: readonly Struck[]): Pulse | null {
  const first = struck[0];
  const last = struck.at(-1);
  if (first === undefined || last === undefined || last.beat <= first.beat || last.timeSec <= first.timeSec)
    return null;
  const secPerBeat = (last.timeSec - first.timeSec) / (last.beat - first.beat);
  return { startSec: first.timeSec - secPerBeat * first.beat, secPerBeat };
}

/** Median seconds a beat between successive struck beats; null of fewer than two. */
export function medianSecPerBeat(struck: readonly Struck[]): number | null {
  const rates = struck
    .slice(1)
    .map((point, index) => (point.timeSec - struck[index]!.timeSec) / (point.beat - struck[index]!.beat))
    .filter((rate) => Number.isFinite(rate) && rate > 0)
    .sort((a, b) => a - b);
  return rates[Math.floor(rates.length / 2)] ?? null;
}

/** Onsets in order of time → stretches between stops and repeats, each with its own pulse: none bends another place. */
export function pulseStretches(struck: readonly Struck[]): readonly PulseStretch[] {
  const usual = medianSecPerBeat(struck);
  if (usual === null) return [];
  const stretches: Struck[][] = [];
  struck.forEach((point, index) => {
    const before = struck[index - 1];
    const stopped = before !== undefined && point.timeSec - before.timeSec > STOP_BEATS * usual;
    const anew = stopped || point.interrupted === true || (before !== undefined && point.beat < before.beat);
    if (before === undefined || anew) stretches.push([]);
    stretches.at(-1)!.push(point);
  });
  return stretches.flatMap((points) => {
    const pulse = evenPulse(points);
    return pulse === null ? [] : [{ fromBeat: points[0]!.beat, toBeat: points.at(-1)!.beat, pulse }];
  });
}
