import type { Fault } from './faults.ts';
import { sayPlayed } from './played.ts';
import type { Scene, Statement } from './scene.ts';
import { placeOf, practiceAround, say, taskOf } from './scene.ts';
import type { FaultFacts, HowOften } from './types.ts';

const OCTAVE = 12;

/** A fault as it can be said: what was wanted, what was struck, where, and with both hands by which. */
export function factsOf(scene: Scene, fault: Fault): FaultFacts {
  const { step, expected } = fault;
  return {
    wanted: say(scene, expected),
    struck: struckFor(scene, fault),
    place: placeOf(scene, step),
    hand: scene.exercise.choice.hands === 'together' ? expected.hand : null,
  };
}

function struckFor(scene: Scene, { playedMidi, expected }: Fault): FaultFacts['struck'] {
  if (playedMidi === null) return null;
  const off = playedMidi - expected.midi;
  if (Math.abs(off) === OCTAVE) return off > 0 ? 'octave too high' : 'octave too low';
  return sayPlayed(scene, playedMidi, expected);
}

/** Of faults alike in note and kind: how often, of how often the note comes at all. */
export function howOften(scene: Scene, alike: readonly Fault[]): HowOften {
  const name = say(scene, alike[0]!.expected);
  const all = scene.alignment.matched.filter((note) => say(scene, note.expected) === name).length;
  if (alike.length === 1)
    return all === 1 ? { kind: 'unsaid' } : { kind: 'once', place: placeOf(scene, alike[0]!.step) };
  if (alike.length === all) return { kind: all === 2 ? 'both' : 'each' };
  return { kind: 'some', count: alike.length };
}

/** "G#4" → "G#" */
export function pitchClassName(name: string): string {
  return name.replace(/-?\d+$/, '');
}

/** Faults of the same note, off by as many semitones; none where `like` is. */
export function sameFault(faults: readonly Fault[], like: Fault | null): readonly Fault[] {
  if (like === null) return [];
  return faults.filter(
    ({ expected, playedMidi }) =>
      pitchClassName(expected.name) === pitchClassName(like.expected.name) &&
      playedMidi !== null &&
      like.playedMidi !== null &&
      playedMidi - expected.midi === like.playedMidi - like.expected.midi,
  );
}

/** Faults in general: how many, which and where; the next step is round the first of them. */
export function told(scene: Scene, faults: readonly Fault[]): Statement {
  const first = faults[0]!;
  const practice = practiceAround(scene, first.step - 2, first.step + 1, 0.6);
  const said = scene.wording.faults(
    faults.map((fault) => factsOf(scene, fault)),
    taskOf(scene, practice),
  );
  return { ...said, steps: faults.map((fault) => fault.step), practice };
}
