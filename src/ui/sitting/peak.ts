/** A level as the live ear tells it, dB of full scale. */
export interface LevelNow {
  readonly timeSec: number;
  readonly peakDb: number;
  readonly clipped: boolean;
}

/** How long a peak is held, seconds. */
export const HOLD_SEC = 2.5;

/** The loudest peak of the last seconds: the held one, until it is passed or old; it clipped if anything in that time did. */
export function heldPeak(held: LevelNow | null, level: LevelNow): LevelNow {
  // A sound that begins anew counts its seconds from 0.
  const over = held === null || level.timeSec - held.timeSec > HOLD_SEC || level.timeSec < held.timeSec;
  if (over) return level;
  if (level.peakDb < held.peakDb && !level.clipped) return held;
  return { ...level, peakDb: Math.max(level.peakDb, held.peakDb), clipped: level.clipped || held.clipped };
}
