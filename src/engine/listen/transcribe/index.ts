import { RATE_HZ } from '../audio/index.ts';
import type { Candidate, PlayedNote, Tuning } from '../types.ts';
import type { Transcriber } from './transcriber.ts';
import { weigh } from './settle.ts';
import type { Settled } from './settle.ts';
import { offsetCents } from './string-tuning.ts';

export { Transcriber, GRID } from './transcriber.ts';
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
    ...(strike.pitchRead ? { stiffness: strike.stiffness } : {}),
  }));
}

/** Everything that an ear took for a strike, however faint, in order of time. */
export function candidatesOf(ear: Transcriber, tuning: Tuning): Candidate[] {
  const weighed = weigh(ear.strikes);
  const notes = nameNotes(weighed, tuning);
  const seen = weighed.map(({ strike }, i) => ({ strike, note: notes[i]! }));
  return [...seen, ...ear.faint.map((strike) => ({ strike, note: null }))]
    .map(({ strike, note }) => ({
      timeSec: strike.onsetSample / RATE_HZ,
      midi: strike.midi,
      probability: strike.probability,
      loudnessDb: strike.loudness,
      sounding: strike.sounding,
      note,
    }))
    .sort((a, b) => a.timeSec - b.timeSec || a.midi - b.midi);
}
