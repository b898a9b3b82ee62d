import { describe, expect, it } from 'vitest';
import { buildExercise } from '../../../src/engine/exercise/index.ts';
import { matchNotes } from '../../../src/engine/match/index.ts';
import { heardOf, played } from './simulated.ts';

// The tonic arpeggio of C major over two octaves, right hand: C E G C E G C G E C G E C.
const ARPEGGIO = buildExercise({ key: 'C major', form: 'arpeggio', hands: 'right', octaves: 2 });
const KEYS = ARPEGGIO.steps.map((step) => step.notes[0]!.midi);
const LAST = KEYS.length - 1;

/** Keys at an even pace of 0.4 s; a number under 1 among them is a pause of so many seconds more. */
function evenly(...what: readonly number[]) {
  let timeSec = 1;
  return what.flatMap((value) => {
    if (value < 20) {
      timeSec += value;
      return [];
    }
    timeSec += 0.4;
    return [played(timeSec - 0.4, value)];
  });
}

/** Alignment told in short: what is not right, what is extra, what is remarked. */
function told(notes: ReturnType<typeof evenly>) {
  const alignment = matchNotes(heardOf(notes), ARPEGGIO);
  return {
    notRight: alignment.matched
      .filter((note) => note.verdict !== 'correct')
      .map(({ step, verdict }) => `${verdict} ${step}`),
    extras: alignment.extras.map((extra) => `${extra.kind} ${extra.step}`),
    remarks: alignment.remarks.map((remark) => {
      switch (remark.kind) {
        case 'restarted':
          return `restarted ${remark.atStep}→${remark.backToStep}`;
        case 'stopped':
          return `stopped ${remark.atStep}`;
        case 'broken-off':
          return `broken-off ${remark.lastStep}`;
        case 'started-late':
          return `started-late ${remark.firstStep}`;
        case 'played-again':
          return `played-again ${remark.passages.length}`;
        default:
          return remark.kind;
      }
    }),
  };
}

const steps = (from: number, to: number): number[] => KEYS.slice(from, to + 1);
const nothing = { notRight: [], extras: [], remarks: [] };

describe('the course of an attempt', () => {
  it.each([
    ['a hesitation of a second', [...steps(0, 5), 1, ...steps(6, LAST)], nothing],
    [
      'a stop of three seconds',
      [...steps(0, 5), 3, ...steps(6, LAST)],
      { ...nothing, remarks: ['stopped 5'] },
    ],
    [
      'a going back of three steps after a pause',
      [...steps(0, 5), 0.8, ...steps(3, LAST)],
      { ...nothing, extras: ['restart 3', 'restart 4', 'restart 5'], remarks: ['restarted 5→3'] },
    ],
    [
      'two goings back',
      [...steps(0, 5), 0.8, ...steps(3, 9), 0.8, ...steps(8, LAST)],
      {
        ...nothing,
        extras: ['restart 3', 'restart 4', 'restart 5', 'restart 8', 'restart 9'],
        remarks: ['restarted 5→3', 'restarted 9→8'],
      },
    ],
    [
      'a false start',
      [...steps(0, 3), 1, ...steps(0, LAST)],
      {
        ...nothing,
        extras: ['restart 0', 'restart 1', 'restart 2', 'restart 3'],
        remarks: ['restarted 3→0'],
      },
    ],
    [
      'all but the last note, and again from the top',
      [...steps(0, LAST - 1), 1, ...KEYS],
      {
        ...nothing,
        extras: steps(0, LAST - 1).map((_, step) => `restart ${step}`),
        remarks: [`restarted ${LAST - 1}→0`],
      },
    ],
    [
      'a breaking off',
      steps(0, 7),
      {
        ...nothing,
        notRight: ['missed 8', 'missed 9', 'missed 10', 'missed 11', 'missed 12'],
        remarks: ['broken-off 7'],
      },
    ],
    [
      'a late beginning',
      steps(2, LAST),
      { ...nothing, notRight: ['missed 0', 'missed 1'], remarks: ['started-late 2'] },
    ],
    ['two runs', [...KEYS, 1, ...KEYS], { ...nothing, remarks: ['played-again 1'] }],
    [
      'a run with a mistake and then a right one',
      [...steps(0, 4), 68, ...steps(6, LAST), 1, ...KEYS],
      { ...nothing, remarks: ['played-again 1'] },
    ],
    [
      'a right run and then a broken-off one',
      [...KEYS, 1, ...steps(0, 6)],
      { ...nothing, remarks: ['played-again 1'] },
    ],
    [
      'a key struck twice',
      [...steps(0, 4), KEYS[4]!, ...steps(5, LAST)],
      { ...nothing, extras: ['repeat 4'] },
    ],
    [
      'a wrong key put right at once',
      [...steps(0, 4), 68, ...steps(5, LAST)],
      { ...nothing, extras: ['other 4'] },
    ],
    [
      'a wrong key, and back from it',
      [...steps(0, 4), 68, 0.8, ...steps(3, LAST)],
      { ...nothing, extras: ['other 4', 'restart 3', 'restart 4'], remarks: ['restarted 4→3'] },
    ],
    [
      'two notes left out together',
      [...steps(0, 3), ...steps(6, LAST)],
      { ...nothing, notRight: ['missed 4', 'missed 5'] },
    ],
    [
      'two wrong keys in a row',
      [...steps(0, 3), 77, 80, ...steps(6, LAST)],
      { ...nothing, notRight: ['wrong 4', 'wrong 5'] },
    ],
    [
      'a wrong key that is right elsewhere',
      [60, 67, ...steps(2, LAST)],
      { ...nothing, notRight: ['wrong 1'] },
    ],
    [
      'the last two left out',
      steps(0, LAST - 2),
      { ...nothing, notRight: [`missed ${LAST - 1}`, `missed ${LAST}`], remarks: [`broken-off ${LAST - 2}`] },
    ],
    ['the last left out', steps(0, LAST - 1), { ...nothing, notRight: [`missed ${LAST}`] }],
    [
      'the first two left out',
      steps(2, LAST),
      { ...nothing, notRight: ['missed 0', 'missed 1'], remarks: ['started-late 2'] },
    ],
    ['the first left out', steps(1, LAST), { ...nothing, notRight: ['missed 0'] }],
    ['a wrong first key', [61, ...steps(1, LAST)], { ...nothing, notRight: ['wrong 0'] }],
    ['a wrong last key', [...steps(0, LAST - 1), 62], { ...nothing, notRight: [`wrong ${LAST}`] }],
  ])('%s', (_, what, expected) => {
    expect(told(evenly(...what))).toEqual(expected);
  });

  it('slows down to half the tempo and is still right', () => {
    let timeSec = 0;
    const notes = KEYS.map((midi, step) => played((timeSec += 0.25 * (1 + step / LAST)), midi));
    expect(told(notes)).toEqual(nothing);
  });

  it('sways by half between notes and is still right', () => {
    let timeSec = 0;
    const notes = KEYS.map((midi, step) => played((timeSec += step % 3 === 0 ? 0.6 : 0.3), midi));
    expect(told(notes)).toEqual(nothing);
  });

  it('says how long a stop was, from onset to onset', () => {
    const { remarks } = matchNotes(heardOf(evenly(...steps(0, 5), 3, ...steps(6, LAST))), ARPEGGIO);
    expect(remarks).toEqual([{ kind: 'stopped', atStep: 5, gapSec: expect.closeTo(3.4, 6) }]);
  });

  it('keeps other runs outside its own stretch', () => {
    const { run, remarks } = matchNotes(heardOf(evenly(...KEYS, 1, ...steps(0, 6))), ARPEGGIO);
    expect(run.startSec).toBeCloseTo(1, 6);
    expect(run.endSec).toBeLessThan(1 + 13 * 0.4 + 1 + 1e-6);
    expect(remarks).toMatchObject([
      { kind: 'played-again', passages: [{ startSec: expect.closeTo(7.2, 6) }] },
    ]);
  });
});

describe('weak findings', () => {
  const right = evenly(...KEYS);

  it.each([
    ['an extra note of little confidence', played(1.6, 66, { confidence: 0.2 })],
    ['an octave above a right note', played(1.81, KEYS[2]! + 12)],
    ['a twelfth above a right note', played(1.8, KEYS[2]! + 19)],
    ['an octave below a right note', played(1.79, KEYS[2]! - 12)],
  ])('%s is left out of the report', (_, ghost) => {
    expect(told([...right, ghost])).toEqual(nothing);
  });

  it('a wrong key heard with little confidence is unsure, with a reason, not wrong', () => {
    const notes = right.map((note, step) => (step === 3 ? { ...note, midi: 73, confidence: 0.3 } : note));
    const alignment = matchNotes(heardOf(notes), ARPEGGIO);
    expect(alignment.matched[3]).toMatchObject({
      verdict: 'unsure',
      reason: { notice: 'too-faint-to-name', name: 'C5' },
    });
  });

  it('a right key heard with little confidence is right', () => {
    const notes = right.map((note, step) => (step === 3 ? { ...note, confidence: 0.2 } : note));
    expect(told(notes)).toEqual(nothing);
  });
});

describe('keys that are not part of the attempt', () => {
  const right = evenly(...KEYS);

  it.each([
    ['a key before the first note', played(0.3, 61)],
    ['a key after the last note', played(1 + 13 * 0.4, 61)],
    ['a key two octaves from the hand', played(2.4, 108)],
  ])('%s is not reported', (_, stray) => {
    expect(told([...right, stray])).toEqual(nothing);
  });

  it.each([
    ['a slip on the first note', played(0.97, 61), 'slip 0'],
    ['a slip on the last note', played(1 + 12 * 0.4 + 0.03, 59), 'slip 12'],
    ['the last note struck again', played(1 + 13 * 0.4, 60), 'repeat 12'],
  ])('%s is', (_, stray, extra) => {
    expect(told([...right, stray])).toEqual({ ...nothing, extras: [extra] });
  });
});

describe('nothing to match', () => {
  it.each([
    ['no notes', []],
    ['one note', [played(1, 60)]],
    ['notes that have nothing to do with it', evenly(30, 33, 34, 99, 100, 33, 30)],
  ])('%s: says so and does not fail', (_, notes) => {
    const alignment = matchNotes(heardOf(notes), ARPEGGIO);
    expect(alignment.matched).toHaveLength(KEYS.length);
    expect(alignment.fit).toBeLessThan(0.2);
  });
});
