import { RATE_HZ } from '../audio/index.ts';
import type { PlayedNote, Tuning } from '../types.ts';
import type { Settled } from './settle.ts';
import { offsetCents } from './string-tuning.ts';

export { Ear } from './ear.ts';
export { settle } from './settle.ts';
export { measureTuning } from './string-tuning.ts';

/** Settled strikes and the piano's tuning → played notes, in order of time. */
export function nameNotes(settled: readonly Settled[], tuning: Tuning): PlayedNote[] {
  return settled.map(({ strike, chance }) => ({
    timeSec: strike.onsetSample / RATE_HZ,
    midi: strike.midi,
    cents: strike.pitchRead ? offsetCents(strike) - tuning.cents : 0,
    levelDb: strike.levelDb,
    confidence: chance,
    releaseSec: strike.releaseSample === null ? null : strike.releaseSample / RATE_HZ,
  }));
}
