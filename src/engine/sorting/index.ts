import type { Heard, Passage, PlayedNote } from '../listen/index.ts';
import { exerciseStretches, LEAST_LIKELY, recogniseFrom } from '../match/index.ts';
import type { Recognition, RecogniseOptions } from '../match/index.ts';
import { cutOut } from './cuts.ts';
import { heardIn } from './heard-in.ts';
import type { SortedPassage } from './types.ts';

export { heardIn } from './heard-in.ts';
export type * from './types.ts';

/** Other playing ends with a pause so long, seconds (common practice, no source: who pauses longer has stopped). */
const PAUSE_SEC = 2.5;
/** Fewer notes, surely heard, are no playing: a word or a knock. */
const LEAST_NOTES = 5;
const SURE = 0.6;

/**
 * What was heard in a recording → its attempts and its other playing, in order, each recognised.
 *
 * Attempts are found by what exercises explain, not by pauses: an attempt may hold a stop, another may follow without a pause, and
 * other playing may stand close before it. What no exercise explains is other playing, from pause to pause.
 */
export function sortPassages(
  heard: Heard,
  options: Partial<RecogniseOptions> = {},
): readonly SortedPassage[] {
  const recognise = (passage: Passage): Recognition => recogniseFrom(heardIn(heard, passage), options);
  const stretches = exerciseStretches(heard, options)
    .map((stretch) => ({ ...stretch, recognition: recognise(justAround(stretch)) }))
    // A stretch so unlikely to be any exercise is other playing, with what stands beside it.
    .filter(({ recognition }) => recognition.choice !== null || recognition.confidence >= LEAST_LIKELY);
  const others = otherPlaying(heard.notes, stretches).map(({ enough, ...other }) => ({
    ...other,
    recognition: enough ? recognise(justAround(other)) : null,
  }));
  const pieces = [...stretches, ...others].sort((a, b) => a.startSec - b.startSec);
  const cuts = cutOut(pieces, heard.durationSec);
  return pieces.flatMap(({ recognition }, at) =>
    recognition === null ? [] : [{ ...cuts[at]!, recognition }],
  );
}

/** From the first note to the last, both inside. */
function justAround({ startSec, endSec }: Passage): Passage {
  return { startSec: startSec - 1e-3, endSec: endSec + 1e-3 };
}

interface OtherPlaying extends Passage {
  /** enough notes of it are sure to be told */
  readonly enough: boolean;
}

/** Notes that lie in no stretch → playing between pauses and stretches. */
function otherPlaying(notes: readonly PlayedNote[], stretches: readonly Passage[]): readonly OtherPlaying[] {
  const pieces: PlayedNote[][] = [];
  let lastSec = -Infinity;
  let next = 0;
  for (const note of notes) {
    while (next < stretches.length && stretches[next]!.endSec < note.timeSec)
      lastSec = stretches[next++]!.endSec;
    if (next < stretches.length && stretches[next]!.startSec <= note.timeSec) continue;
    const piece = pieces.at(-1);
    const goesOn = piece !== undefined && piece.at(-1)!.timeSec >= lastSec;
    if (goesOn && note.timeSec - piece.at(-1)!.timeSec <= PAUSE_SEC) piece.push(note);
    else pieces.push([note]);
  }
  return pieces.map((piece) => ({
    startSec: piece[0]!.timeSec,
    endSec: piece.at(-1)!.timeSec,
    enough: piece.filter(({ confidence }) => confidence >= SURE).length >= LEAST_NOTES,
  }));
}
