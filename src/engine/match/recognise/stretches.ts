import type { Heard, Passage } from '../../listen/index.ts';
import type { RecogniseOptions } from '../types.ts';
import { follow } from './follow.ts';
import { momentsOf } from './moments.ts';
import type { Moment } from './moments.ts';
import { knownPianos, misreading } from './priors.ts';
import { ownTemplates } from './own.ts';
import { shortlist } from './shortlist.ts';
import { FOLLOWING } from '../costs/index.ts';

/**
 * All that was heard in a recording → the stretches of it that an exercise explains, from first to last note, in order of time.
 * Where one exercise ends and begins again, two; where it stops and goes on, one; what is no exercise lies between them.
 */
export function exerciseStretches(
  heard: Heard,
  { own = [], ...pianos }: Partial<RecogniseOptions> = {},
): readonly Passage[] {
  const { notes } = heard;
  const moments = momentsOf(notes);
  const momentOf = momentsByNote(moments);
  const runners = shortlist(
    notes,
    ownTemplates(own, misreading(heard.tuning.cents, knownPianos(pianos))),
  ).map((listed) => ({
    ...listed,
    from: momentOf(notes[listed.from]!.timeSec),
    to: listed.to < notes.length ? momentOf(notes[listed.to]!.timeSec) : moments.length,
  }));
  return passagesOf(follow(moments, runners).stretches, moments);
}

/** What was followed → its first to its last note, with first or last keys struck twice. */
export function passagesOf(
  stretches: readonly { readonly from: number; readonly to: number }[],
  moments: readonly Moment[],
): readonly Passage[] {
  return stretches.map(({ from, to }, index) => {
    const [before, after] = [stretches[index - 1]?.to ?? -1, stretches[index + 1]?.from ?? moments.length];
    const first = from - 1 > before && isAgain(moments[from - 1]!, moments[from]!) ? from - 1 : from;
    const last = to + 1 < after && isAgain(moments[to]!, moments[to + 1]!) ? to + 1 : to;
    return { startSec: moments[first]!.timeSec, endSec: moments[last]!.lastSec };
  });
}

/** The first or last keys of a stretch struck twice, or a key caught with them. */
function isAgain(first: Moment, second: Moment): boolean {
  const keys = second.keys.every((key) => first.keys.includes(key));
  return second.timeSec - first.lastSec <= (keys ? FOLLOWING.againSec : FOLLOWING.caughtSec);
}

/** The moment in which something was struck. */
function momentsByNote(moments: readonly Moment[]): (timeSec: number) => number {
  return (timeSec) => {
    let [low, high] = [0, moments.length - 1];
    while (low < high) {
      const middle = (low + high + 1) >> 1;
      if (moments[middle]!.timeSec <= timeSec) low = middle;
      else high = middle - 1;
    }
    return low;
  };
}
