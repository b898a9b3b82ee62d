import type { Heard, Passage } from '../listen/index.ts';

/** The part of what was heard that lies between two moments, on a clock that begins there. */
export function heardIn(heard: Heard, { startSec, endSec }: Passage): Heard {
  const inside = ({ timeSec }: { readonly timeSec: number }): boolean =>
    timeSec >= startSec && timeSec < endSec;
  const moved = <Note extends { readonly timeSec: number; readonly releaseSec: number | null }>(
    note: Note,
  ): Note => ({
    ...note,
    timeSec: note.timeSec - startSec,
    releaseSec: note.releaseSec === null ? null : note.releaseSec - startSec,
  });
  return {
    ...heard,
    notes: heard.notes.filter(inside).map(moved),
    passages: [{ startSec: 0, endSec: endSec - startSec }],
    durationSec: endSec - startSec,
    ...(heard.candidates !== undefined && {
      candidates: heard.candidates.filter(inside).map((candidate) => ({
        ...candidate,
        timeSec: candidate.timeSec - startSec,
        note: candidate.note === null ? null : moved(candidate.note),
      })),
    }),
  };
}
