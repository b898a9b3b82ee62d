import type { ExpectedNote } from '../../exercise/index.ts';
import type { Scene } from './scene.ts';

/** An expected note that another key was struck for, or none. */
export interface Fault {
  readonly step: number;
  readonly expected: ExpectedNote;
  /** the key struck in its place; null: none */
  readonly playedMidi: number | null;
}

/** Wrong and missed notes of the part that was played: what a late start or a breaking off left out is told as such. */
export function faultsOf(scene: Scene): readonly Fault[] {
  const { alignment, heard } = scene;
  const late = alignment.remarks.find((remark) => remark.kind === 'started-late');
  const off = alignment.remarks.find((remark) => remark.kind === 'broken-off');
  const from = late?.kind === 'started-late' ? late.firstStep : 0;
  const to = off?.kind === 'broken-off' ? off.lastStep : Infinity;
  return alignment.matched.flatMap((note): Fault[] => {
    if (note.step < from || note.step > to) return [];
    const { step, expected } = note;
    if (note.verdict === 'missed') return [{ step, expected, playedMidi: null }];
    if (note.verdict !== 'wrong') return [];
    return [{ step, expected, playedMidi: heard.notes[note.played]!.midi + alignment.semitoneShift }];
  });
}

/** Nothing wrong, missed, unsure or extra. */
export function everyNoteRight(scene: Scene): boolean {
  const { matched, extras } = scene.alignment;
  return extras.length === 0 && matched.every((note) => note.verdict === 'correct');
}
