import type { Heard, PlayedNote } from '../listen/index.ts';
import type { Alignment, ExtraKind } from '../match/index.ts';
import type { Asker } from './asker.ts';
import { RECHECK_BOUNDS } from './bounds.ts';
import { noteOf } from './found.ts';
import { recordOf } from './record.ts';
import type { Recheck } from './types.ts';

/** A note that answers no written one. */
export interface HeardExtra {
  readonly note: PlayedNote;
  readonly kind: ExtraKind;
  readonly step: number;
}

/** Extras less those, at the moment of a step, that the sound does not bear out: ghosts of what was struck. */
export function extrasThatStay(
  asker: Asker,
  heard: Heard,
  { extras, matched, semitoneShift }: Alignment,
  rechecks: Recheck[],
): readonly HeardExtra[] {
  return extras.flatMap(({ played, kind, step }) => {
    const note = heard.notes[played]!;
    const timeSec = asker.steps[step]?.timeSec ?? null;
    if (timeSec === null || Math.abs(note.timeSec - timeSec) > RECHECK_BOUNDS.nearSec)
      return [{ note, kind, step }];
    const { hand } = matched.find((one) => one.step === step)!.expected;
    const answer = asker.askUnwritten(step, note.midi, hand)!;
    const stays = answer.logOdds > RECHECK_BOUNDS.withdrawn;
    const decision = stays ? 'struck' : 'not-struck';
    rechecks.push(recordOf(step, note.midi + semitoneShift, hand, 'extra', 'extra', answer, decision));
    return stays ? [{ note, kind, step }] : [];
  });
}

/** Keys beside a written one that the blind ear half believed in and the closer look bears out: slips. */
export function caughtBeside(
  asker: Asker,
  heard: Heard,
  { matched, semitoneShift }: Alignment,
  rechecks: Recheck[],
): readonly HeardExtra[] {
  const { halfBelieved, nearSec, caught, slipSemitones } = RECHECK_BOUNDS;
  return asker.steps.flatMap(({ step, written, timeSec }) => {
    if (timeSec === null) return [];
    const isNear = (one: { readonly timeSec: number }): boolean => Math.abs(one.timeSec - timeSec) < nearSec;
    const reported = heard.notes.filter(isNear).map(({ midi }) => midi);
    const keys = (heard.candidates ?? [])
      .filter((one) => isNear(one) && one.probability >= halfBelieved)
      .map(({ midi }) => midi)
      .filter((midi) => !written.includes(midi) && !reported.includes(midi))
      .filter((midi) => written.some((key) => Math.abs(key - midi) <= slipSemitones));
    const { hand } = matched.find((one) => one.step === step)!.expected;
    return [...new Set(keys)].flatMap((midi): HeardExtra[] => {
      const answer = asker.askUnwritten(step, midi, hand)!;
      const struck = answer.logOdds > caught;
      const decision = struck ? 'struck' : 'not-struck';
      rechecks.push(recordOf(step, midi + semitoneShift, hand, 'extra', 'not-heard', answer, decision));
      return struck ? [{ note: noteOf(heard, midi, answer), kind: 'slip', step }] : [];
    });
  });
}
