import { median } from '../../base/statistics.ts';
import type { PlayedNote } from '../../listen/index.ts';
import { FOLLOWING, weightOf } from '../costs/index.ts';

/** Keys struck together, or nearly so. */
export interface Moment {
  /** of its first and its last note */
  readonly timeSec: number;
  readonly lastSec: number;
  /** MIDI numbers, lowest first */
  readonly keys: readonly number[];
  /** so soon after the moment before, beside the times about it, that both may be one chord not struck as one */
  readonly close: boolean;
  /** so long after the moment before, beside the times about it, that the player stopped to think or began anew */
  readonly paused: boolean;
  /** how much each counts, 0..1: little where the listener doubts it */
  readonly weights: readonly number[];
}

/** Played notes in order of time → what was struck together. */
export function momentsOf(notes: readonly PlayedNote[]): readonly Moment[] {
  const groups: PlayedNote[][] = [];
  for (const note of notes) {
    const group = groups.at(-1);
    const joins =
      group !== undefined &&
      note.timeSec - group.at(-1)!.timeSec <= FOLLOWING.strokeGapSec &&
      note.timeSec - group[0]!.timeSec <= FOLLOWING.strokeSec;
    if (joins) group.push(note);
    else groups.push([note]);
  }
  const gapsSec = groups.map((group, at) =>
    at === 0 ? 0 : group[0]!.timeSec - groups[at - 1]!.at(-1)!.timeSec,
  );
  return groups.map((group, at) => {
    const aroundSec = Math.max(...gapsSec.slice(Math.max(1, at - 2), at + 4));
    const close = gapsSec[at]! <= Math.min(FOLLOWING.brokenChordSec, FOLLOWING.brokenChordShare * aroundSec);
    return momentOf(
      group,
      at > 0 && close,
      at > 0 && gapsSec[at]! > FOLLOWING.pauseTimes * usualGapSec(gapsSec, at),
    );
  });
}

/** From moment to moment about this one, chords that were not struck as one left out. */
function usualGapSec(gapsSec: readonly number[], at: number): number {
  const near = gapsSec.slice(Math.max(1, at - FOLLOWING.pauseAmong), at + FOLLOWING.pauseAmong + 1);
  return median(near.filter((sec) => sec > FOLLOWING.strokeSec)) ?? Infinity;
}

function momentOf(group: readonly PlayedNote[], close: boolean, paused: boolean): Moment {
  const surest = new Map<number, PlayedNote>();
  for (const note of group) {
    const same = surest.get(note.midi);
    if (same === undefined || same.confidence < note.confidence) surest.set(note.midi, note);
  }
  const notes = [...surest.values()].sort((a, b) => a.midi - b.midi);
  return {
    timeSec: group[0]!.timeSec,
    lastSec: group.at(-1)!.timeSec,
    close,
    paused,
    keys: notes.map(({ midi }) => midi),
    weights: notes.map(({ confidence }) => weightOf(confidence)),
  };
}
