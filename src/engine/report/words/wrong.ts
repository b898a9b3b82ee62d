import { isBlack } from '../../base/units.ts';
import { isCadence, isDiatonic } from '../../exercise/index.ts';
import type { ExpectedNote, Hand } from '../../exercise/index.ts';
import type { Fault } from './faults.ts';
import { factsOf, faultsOf, howOften, sameFault } from './faults.ts';
import { inOctaves } from './octaves.ts';
import { crossesAt, practiceAround, taskOf } from './place.ts';
import { inPosition } from './position.ts';
import type { Advice, Statement, Task } from './said/index.ts';
import type { Found, Practice, Scene, Situation, Situations } from './scene.ts';
import { handIfBoth, isChordForm, isSameVoice, nameOf } from './scene.ts';
import { isNaturalOf, pitchClassOf, spellPlayed } from './spelling.ts';
import { timesBefore, turnAbout } from './variety.ts';

/*
 * Wrong and missed notes. A cause (a signature, a hand that landed off) is named where it explains all of them and was shown
 * twice; else they are told one by one. Only one of these speaks, so that no note is counted twice.
 */

const HALF_TEMPO = 0.5;
const SLOWLY = 0.6;

const stepsOf = (faults: readonly Fault[]): readonly number[] => [
  ...new Set(faults.map((fault) => fault.step)),
];

/** What all these situations have in common: they are as grave as the notes they speak of are many. */
function found(faults: readonly Fault[], statement: Statement, advice: Advice, practice?: Practice): Found {
  return { statement, gravity: faults.length, advice, ...(practice && { practice }) };
}

/** With both hands: the one in which all these faults lie, to be practised alone. */
function handOf(scene: Scene, faults: readonly Fault[]): Hand | null {
  const hands = new Set(faults.map(({ expected }) => handIfBoth(scene, expected.hand)));
  return hands.size === 1 ? [...hands][0]! : null;
}

/** Where the first way to it has been tried: one note more each time; of chords each shape pressed silently. */
function anotherWay(scene: Scene, task: Task): Advice {
  return isChordForm(scene.exercise) ? { step: 'shape-silently', task } : { step: 'one-note-more', task };
}

/** All of them are faults: as sure as the least sure of them. */
const given = (faults: readonly Fault[]) => ({
  steps: stepsOf(faults),
  faults: faults.length,
  sure: Math.min(...faults.map(({ sure }) => sure)),
});

const sameAgain: Situation = (scene) => {
  const before = scene.earlier.at(-1);
  const faults = faultsOf(scene);
  const [fault] = faults;
  if (before === undefined || fault === undefined || faults.length > 1) return null;
  const offBefore = before.remarks.find((remark) => remark.kind === 'broken-off');
  if (offBefore?.kind === 'broken-off' && fault.step > offBefore.lastStep) return null;
  const troubled =
    before.notes.some((note) => note.verdict === 'wrong' && note.step === fault.step) ||
    before.missed.some((note) => note.step === fault.step);
  if (!troubled) return null;
  const practice = practiceAround(scene, fault.step - 2, fault.step + 1, HALF_TEMPO);
  return found(
    faults,
    { situation: 'same-place-again', ...given(faults), fault: factsOf(scene, fault) },
    turnAbout<Advice>(timesBefore(scene, 'same-place-again'), [
      { step: 'five-times-right', task: taskOf(scene, practice, handOf(scene, faults)) },
      anotherWay(scene, taskOf(scene, practice, handOf(scene, faults))),
    ]),
    practice,
  );
};

/** The leading note left unraised in minor: in V7, or in a harmonic or melodic scale. */
const leadingNote: Situation = (scene) => {
  const { facts } = scene;
  const raised = facts.minorScales?.harmonic.at(-1);
  const faults = faultsOf(scene);
  const [fault] = faults;
  if (raised === undefined || fault === undefined || fault.playedMidi === null) return null;
  const unraised =
    pitchClassOf(nameOf(fault.expected)) === pitchClassOf(raised) &&
    (fault.playedMidi - fault.expected.midi + 120) % 12 === 11;
  if (!unraised || sameFault(faults, fault).length < faults.length) return null;
  const often = howOften(scene, faults);
  if (often.kind === 'once' || often.kind === 'some') return null;
  const inCadence = isCadence(scene.exercise.choice.form);
  const practice = practiceAround(scene, fault.step - (inCadence ? 1 : 2), fault.step + 1, HALF_TEMPO);
  const note = nameOf(fault.expected);
  const task = taskOf(scene, practice, handOf(scene, faults));
  return found(
    faults,
    {
      situation: 'leading-note',
      ...given(faults),
      fault: factsOf(scene, fault),
      often: faults.length > 1 ? often : null,
      inCadence,
    },
    turnAbout<Advice>(timesBefore(scene, 'leading-note'), [
      { step: inCadence ? 'cadence-alone' : 'say-the-note', task, note },
      anotherWay(scene, task),
    ]),
    practice,
  );
};

/**
 * The natural for a note of the signature, or a sharp or flat for a natural, each time that note comes and more than once:
 * one alone is a slip of the finger, not a forgotten signature.
 */
const signature: Situation = (scene) => {
  const { facts } = scene;
  if (!isDiatonic(scene.exercise.choice.form)) return null;
  const faults = faultsOf(scene);
  const [first] = faults;
  if (first === undefined || first.playedMidi === null || faults.length < 2) return null;
  if (sameFault(faults, first).length < faults.length) return null;
  if (Math.abs(first.playedMidi - first.expected.midi) !== 1) return null;
  const often = howOften(scene, faults);
  if (often.kind !== 'both' && often.kind !== 'each') return null;
  const name = nameOf(first.expected);
  const natural = isNaturalOf(first.playedMidi, first.expected.name) && facts.signature.includes(name);
  const struck = spellPlayed(scene.exercise, first.step, first.playedMidi, first.expected);
  if (!natural && !(name.length === 1 && isBlack(first.playedMidi) && struck.startsWith(name))) return null;
  const signs = { kind: facts.accidental, names: facts.signature };
  const practice = practiceAround(scene, first.step - 2, first.step + 2, SLOWLY);
  const task = taskOf(scene, practice, handOf(scene, faults));
  return found(
    faults,
    { situation: 'signature', ...given(faults), fault: factsOf(scene, first), often, signature: signs },
    turnAbout<Advice>(timesBefore(scene, 'signature'), [
      { step: 'say-the-signature', signature: signs, task, note: name },
      { step: 'say-the-note', task, note: name },
    ]),
    practice,
  );
};

/** Two neighbouring notes or more off by one key in one direction, straight after a crossing: one alone is a wrong note. */
const landedOff: Situation = (scene) => {
  const faults = faultsOf(scene);
  const [fault, next] = faults;
  if (isChordForm(scene.exercise) || fault === undefined || next?.step !== fault.step + 1) return null;
  const offs = faults.map(({ expected, playedMidi }) => (playedMidi ?? expected.midi) - expected.midi);
  const oneWay = offs.every((off) => Math.abs(off) <= 2 && Math.sign(off) === Math.sign(offs[0]!));
  const { hand } = fault.expected;
  const oneHand = faults.every(({ expected }) => expected.hand === hand);
  const after = [fault.step, fault.step - 1].some((at) =>
    scene.exercise.steps[at]?.crossings.some((crossing) => crossing.hand === hand),
  );
  if (offs[0] === 0 || !oneWay || !oneHand || !after || !scene.handKnown) return null;
  const around = practiceAround(scene, fault.step - 2, fault.step + 2, HALF_TEMPO);
  const task = taskOf(scene, around, handOf(scene, faults));
  const from = crossesAt(scene, fault.step, hand) ? fault.step : fault.step - 1;
  const way = turnAbout<readonly [Advice, Practice]>(timesBefore(scene, 'landed-off'), [
    inPosition(scene, from, hand, around, task) ?? [anotherWay(scene, task), around],
    [anotherWay(scene, task), around],
  ]);
  return found(
    faults,
    { situation: 'landed-off', ...given(faults), notes: faults.map((one) => factsOf(scene, one)) },
    ...way,
  );
};

/** An inner note of a chord that did not sound. */
const innerNote: Situation = (scene) => {
  const faults = faultsOf(scene);
  const [fault] = faults;
  if (!isChordForm(scene.exercise) || fault === undefined || faults.length > 1) return null;
  const chord = scene.exercise.steps[fault.step]!.notes.filter((note) => note.hand === fault.expected.hand);
  const outer = (note: ExpectedNote | undefined): boolean =>
    note !== undefined && isSameVoice(note, fault.expected);
  if (fault.playedMidi !== null || chord.length < 3 || outer(chord[0]) || outer(chord.at(-1))) return null;
  const practice = practiceAround(scene, fault.step - 1, fault.step + 1, SLOWLY);
  const task = taskOf(scene, practice, handOf(scene, faults));
  return found(
    faults,
    { situation: 'inner-note', ...given(faults), fault: factsOf(scene, fault) },
    turnAbout<Advice>(timesBefore(scene, 'inner-note'), [
      { step: 'shape-silently', task },
      { step: 'fall-as-one', task, last: 'inner' },
    ]),
    practice,
  );
};

/** Wrong and missed notes that no row above explains: how many, which and where; the next step is round the first of them. */
const oneByOne =
  (name: 'wrong-notes' | 'missed-notes'): Situation =>
  (scene) => {
    const faults = faultsOf(scene);
    const [first] = faults;
    if (first === undefined) return null;
    if (name === 'wrong-notes' && faults.every((fault) => fault.playedMidi === null)) return null;
    const practice = practiceAround(scene, first.step - 2, first.step + 1, SLOWLY);
    const task = taskOf(scene, practice, handOf(scene, faults));
    const note = first.playedMidi === null ? nameOf(first.expected) : null;
    return found(
      faults,
      {
        situation: name,
        ...given(faults),
        notes: inOctaves(
          faults.map((fault) => factsOf(scene, fault)),
          faults.map(({ expected }) => expected.midi),
        ),
      },
      turnAbout<Advice>(timesBefore(scene, 'wrong-notes', 'missed-notes'), [
        { step: 'until-right', task, note },
        anotherWay(scene, task),
      ]),
      practice,
    );
  };

/** The first of these that holds tells all wrong and missed notes. */
export const NOTES: Situations = {
  'same-place-again': sameAgain,
  'leading-note': leadingNote,
  signature,
  'landed-off': landedOff,
  'inner-note': innerNote,
  'wrong-notes': oneByOne('wrong-notes'),
  'missed-notes': oneByOne('missed-notes'),
};
