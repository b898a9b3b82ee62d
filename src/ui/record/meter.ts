import { strings } from '../language/index.ts';

/** The quietest level that the meter shows, dB below full scale. */
export const METER_FLOOR_DB = -60;
/** Below this, soft notes may drown in the room's own noise; experience of recordings, no source. */
export const TOO_QUIET_DB = -42;

/** dB → share of the meter's length, 0..1. */
export function meterShare(db: number): number {
  return Math.min(Math.max(1 - db / METER_FLOOR_DB, 0), 1);
}

/** What to say about the level: one short sentence. `loudestDb` is the loudest peak of the last seconds. */
export function levelAdvice(loudestDb: number, clipped: boolean): string {
  const t = strings().record;
  if (clipped) return t.tooLoud;
  if (loudestDb < METER_FLOOR_DB) return t.nothingYet;
  if (loudestDb < TOO_QUIET_DB) return t.veryQuiet;
  return t.levelGood;
}

/** A level as it comes in, dB of full scale. */
export interface LevelNow {
  readonly timeSec: number;
  readonly peakDb: number;
  readonly clipped: boolean;
}

/** How long a peak is held, seconds. */
const HOLD_SEC = 2.5;

/** The loudest peak of the last seconds: the held one, until it is passed or old; it clipped if anything in that time did. */
export function heldPeak(held: LevelNow | null, level: LevelNow): LevelNow {
  // A sound that begins anew counts its seconds from 0.
  const over = held === null || level.timeSec - held.timeSec > HOLD_SEC || level.timeSec < held.timeSec;
  if (over) return level;
  if (level.peakDb < held.peakDb && !level.clipped) return held;
  return { ...level, peakDb: Math.max(level.peakDb, held.peakDb), clipped: level.clipped || held.clipped };
}
