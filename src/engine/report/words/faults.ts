import type { ExpectedNote } from '../../exercise/index.ts';
import { sureOfFault } from '../criteria/evidence.ts';
import { placeOf } from './place.ts';
import type { FaultFacts, HowOften } from './said/index.ts';
import type { Scene } from './scene.ts';
import { handIfBoth, nameOf } from './scene.ts';
import { spellPlayed } from './spelling.ts';

/** An expected note that another key was struck for, or none. */
export interface Fault {
  readonly step: number;
  readonly expected: ExpectedNote;
  /** the key struck in its place; null: none */
  readonly playedMidi: number | null;
  /** probability that it is one */
  readonly sure: number;
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
    const sure = sureOfFault(heard, note);
    if (note.verdict === 'missed') return [{ step, expected, playedMidi: null, sure }];
    if (note.verdict !== 'wrong') return [];
    return [{ step, expected, playedMidi: heard.notes[note.played]!.midi + alignment.semitoneShift, sure }];
  });
}

/** Nothing wrong, missed, unsure or extra. */
export function everyNoteRight(scene: Scene): boolean {
  const { matched, extras } = scene.alignment;
  return extras.length === 0 && matched.every((note) => note.verdict === 'correct');
}

/** Nothing wrong, missed or extra; some may be unsure. */
export function noNoteWrong(scene: Scene): boolean {
  const { matched, extras } = scene.alignment;
  return extras.length === 0 && matched.every(({ verdict }) => verdict === 'correct' || verdict === 'unsure');
}

const OCTAVE = 12;

/** A fault as it can be said: what was wanted, what was struck, where, and with both hands by which. */
export function factsOf(scene: Scene, fault: Fault): FaultFacts {
  const { step, expected } = fault;
  return {
    step,
    wanted: nameOf(expected),
    struck: struckFor(scene, fault),
    place: placeOf(scene, step),
    hand: handIfBoth(scene, expected.hand),
  };
}

function struckFor(scene: Scene, { step, playedMidi, expected }: Fault): FaultFacts['struck'] {
  if (playedMidi === null) return null;
  const off = playedMidi - expected.midi;
  if (off === OCTAVE) return 'octave-high';
  if (off === -OCTAVE) return 'octave-low';
  return spellPlayed(scene.exercise, step, playedMidi, expected);
}

/** Of faults alike in note and kind: how often, of how often the note comes at all. */
export function howOften(scene: Scene, alike: readonly Fault[]): HowOften {
  const name = nameOf(alike[0]!.expected);
  const all = scene.alignment.matched.filter((note) => nameOf(note.expected) === name).length;
  if (alike.length === 1)
    return all === 1 ? { kind: 'unsaid' } : { kind: 'once', place: placeOf(scene, alike[0]!.step) };
  if (alike.length === all) return { kind: all === 2 ? 'both' : 'each' };
  return { kind: 'some', count: alike.length };
}

/** Faults of the same note, off by as many semitones; none where `like` is. */
export function sameFault(faults: readonly Fault[], like: Fault | undefined): readonly Fault[] {
  if (like === undefined) return [];
  return faults.filter(
    ({ expected, playedMidi }) =>
      nameOf(expected) === nameOf(like.expected) &&
      playedMidi !== null &&
      like.playedMidi !== null &&
      playedMidi - expected.midi === like.playedMidi - like.expected.midi,
  );
}
