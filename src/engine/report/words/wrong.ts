import { EXTRAS } from './extras.ts';
import { factsOf, howOften, pitchClassName, sameFault, told } from './fault-words.ts';
import { faultsOf } from './faults.ts';
import type { Fault } from './faults.ts';
import type { Scene, Situation } from './scene.ts';
import { fingerOf, isChordForm, placeOf, practiceAround, say, taskOf } from './scene.ts';
import { isBlack, isNaturalOf, pitchClassOf } from './spelling.ts';

/** 4. Wrong and missed notes. */

const sameAgain: Situation = {
  name: 'same-place-again',
  takesSecond: false,
  tell: (scene) => {
    const before = scene.earlier.at(-1);
    if (before === undefined) return null;
    const troubled = new Set([
      ...before.notes.filter((note) => note.verdict === 'wrong').map((note) => note.step),
      ...before.missed.map((note) => note.step),
    ]);
    const offBefore = before.remarks.find((remark) => remark.kind === 'broken-off');
    const faults = faultsOf(scene);
    const fault = faults.find(
      ({ step }) => troubled.has(step) && !(offBefore?.kind === 'broken-off' && step > offBefore.lastStep),
    );
    if (fault === undefined || faults.length > 1) return null;
    const practice = practiceAround(scene, fault.step - 2, fault.step + 1, 0.5);
    const said = scene.wording.sameAgain(factsOf(scene, fault), taskOf(scene, practice));
    return { ...said, steps: [fault.step], practice };
  },
};

/** The leading note left unraised in minor: in V7, or in a harmonic or melodic scale. */
const leadingNote: Situation = {
  name: 'leading-note',
  takesSecond: true,
  tell: (scene) => {
    const { facts } = scene;
    const raised = facts.minorScales?.harmonic.at(-1);
    if (raised === undefined || facts.mode !== 'minor') return null;
    const fault = faultsOf(scene).find(
      ({ expected, playedMidi }) =>
        playedMidi !== null &&
        pitchClassOf(pitchClassName(expected.name)) === pitchClassOf(raised) &&
        (playedMidi - expected.midi + 120) % 12 === 11,
    );
    if (fault === undefined) return null;
    const alike = sameFault(faultsOf(scene), fault);
    if (alike.length < faultsOf(scene).length) return null;
    const often = alike.length > 1 ? howOften(scene, alike) : null;
    const progression = scene.exercise.choice.form === 'progression';
    const practice = progression
      ? practiceAround(scene, fault.step - 1, fault.step + 1, 0.5)
      : practiceAround(scene, fault.step - 2, fault.step + 1, 0.5);
    const task = progression ? null : taskOf(scene, practice);
    return {
      ...scene.wording.leadingNote(factsOf(scene, fault), often, task),
      steps: alike.map((one) => one.step),
      practice,
    };
  },
};

/**
 * The natural for a note of the signature, or a sharp or flat for a natural, each time that note comes and more than once:
 * one alone is a slip of the finger, not a forgotten signature.
 */
const signature: Situation = {
  name: 'signature',
  takesSecond: true,
  tell: (scene) => {
    const { facts } = scene;
    const faults = faultsOf(scene);
    const alike = sameFault(faults, faults[0] ?? null);
    const [first] = alike;
    if (first === undefined || alike.length < 2 || alike.length < faults.length) return null;
    const { expected, playedMidi } = first;
    if (playedMidi === null || Math.abs(playedMidi - expected.midi) !== 1) return null;
    const often = howOften(scene, alike);
    if (often.kind !== 'both' && often.kind !== 'each') return null;
    const name = pitchClassName(expected.name);
    const natural = isNaturalOf(playedMidi, expected.name) && facts.signature.includes(name);
    const altered = name.length === 1 && isBlack(playedMidi);
    if (!natural && !altered) return null;
    const signs = { kind: facts.accidental, names: facts.signature.map((sign) => say(scene, sign)) };
    return {
      ...scene.wording.signature(factsOf(scene, first), often, signs),
      steps: alike.map((fault) => fault.step),
    };
  },
};

/** Two neighbouring notes or more off by one key in one direction, straight after a crossing: one alone is a wrong note. */
const landedOff: Situation = {
  name: 'landed-off',
  takesSecond: true,
  tell: (scene) => {
    if (isChordForm(scene.exercise)) return null;
    const faults = faultsOf(scene);
    const [fault, next] = faults;
    if (fault === undefined || next === undefined || next.step !== fault.step + 1) return null;
    const offs = faults.map(({ expected, playedMidi }) => (playedMidi ?? expected.midi) - expected.midi);
    const oneWay = offs.every((off) => Math.abs(off) <= 2 && Math.sign(off) === Math.sign(offs[0]!));
    const oneHand = faults.every(({ expected }) => expected.hand === fault.expected.hand);
    const after = [fault.step, fault.step - 1].some((at) =>
      (scene.exercise.steps[at]?.crossings ?? []).some((crossing) => crossing.hand === fault.expected.hand),
    );
    if (offs[0] === 0 || !oneWay || !oneHand || !after) return null;
    const position = handPosition(scene, fault);
    const practice = practiceAround(scene, fault.step - 2, fault.step + 2, 0.5);
    return {
      ...scene.wording.landedOff(
        faults.slice(0, 2).map((one) => factsOf(scene, one)),
        faults.length,
        position,
        practice.tempoBpm,
      ),
      steps: faults.map((one) => one.step),
      practice,
    };
  },
};

/** The keys of the hand's place after the crossing: from it up to the next crossing, without repetition. */
function handPosition(scene: Scene, fault: Fault): readonly string[] {
  const { hand } = fault.expected;
  const steps = scene.exercise.steps;
  const crosses = (step: number): boolean =>
    steps[step]?.crossings.some((crossing) => crossing.hand === hand) ?? false;
  const from = crosses(fault.step) ? fault.step : fault.step - 1;
  const names: string[] = [];
  for (
    let step = from;
    step < steps.length && (step === from || !crosses(step)) && names.length < 4;
    step++
  ) {
    const note = steps[step]!.notes.find((one) => one.hand === hand)!;
    const name = say(scene, note);
    if (names.includes(name) || steps[step - 1]?.turn === true) break;
    names.push(name);
  }
  return names;
}

/** An inner note of a chord that did not sound. */
const innerNote: Situation = {
  name: 'inner-note',
  takesSecond: true,
  tell: (scene) => {
    const faults = faultsOf(scene);
    if (!isChordForm(scene.exercise) || faults.length > 1) return null;
    const fault = faults.find(({ step, expected, playedMidi }) => {
      if (playedMidi !== null) return false;
      const chord = scene.exercise.steps[step]!.notes.filter((note) => note.hand === expected.hand);
      return (
        chord.length > 2 && expected.finger !== chord[0]!.finger && expected.finger !== chord.at(-1)!.finger
      );
    });
    if (fault === undefined) return null;
    const { expected, step } = fault;
    const said = scene.wording.innerNote(
      say(scene, expected),
      fingerOf(scene, expected),
      placeOf(scene, step),
    );
    return { ...said, steps: [step] };
  },
};

/** Wrong and missed notes that no row above explains. */
const wrongNotes: Situation = {
  name: 'wrong-notes',
  takesSecond: true,
  tell: (scene) =>
    faultsOf(scene).some((fault) => fault.playedMidi !== null) ? told(scene, faultsOf(scene)) : null,
};

const missedNotes: Situation = {
  name: 'missed-notes',
  takesSecond: true,
  tell: (scene) => (faultsOf(scene).length === 0 ? null : told(scene, faultsOf(scene))),
};

export const FAULTS: readonly Situation[] = [
  sameAgain,
  leadingNote,
  signature,
  landedOff,
  innerNote,
  wrongNotes,
  missedNotes,
];
export const WRONG: readonly Situation[] = [...FAULTS, ...EXTRAS];
