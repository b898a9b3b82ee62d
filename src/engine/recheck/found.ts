import { probabilityOf } from '../base/odds.ts';
import { median } from '../base/statistics.ts';
import type { Heard, PlayedNote } from '../listen/index.ts';
import type { Answer } from './asker.ts';

/**
 * A key found by the closer look → the played note that it is: as the ear had it, where it had looked at it closely; else with a
 * level estimated from the ear's reading of its loudness against the attempt's other notes.
 */
export function noteOf(heard: Heard, midi: number, { candidate, timeSec, logOdds }: Answer): PlayedNote {
  const confidence = probabilityOf(logOdds);
  if (candidate?.note) return { ...candidate.note, timeSec, confidence };
  const offsetDb = median(
    (heard.candidates ?? []).flatMap(({ note, loudnessDb }) => (note ? [note.levelDb - loudnessDb] : [])),
  );
  const softestDb = Math.min(...heard.notes.map(({ levelDb }) => levelDb));
  const levelDb = candidate === null || offsetDb === undefined ? softestDb : candidate.loudnessDb + offsetDb;
  return { timeSec, midi, cents: 0, levelDb, confidence, releaseSec: null };
}
