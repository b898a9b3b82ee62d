import { beforeAll, describe, expect, it } from 'vitest';
import { standardDeviation } from '../../../src/engine/base/statistics.ts';
import { buildExercise } from '../../../src/engine/exercise/index.ts';
import type { ExerciseChoice } from '../../../src/engine/exercise/index.ts';
import { listenAndKeep } from '../../../src/engine/listen/index.ts';
import type { Heard } from '../../../src/engine/listen/index.ts';
import { matchNotes } from '../../../src/engine/match/index.ts';
import type { Alignment, MatchedNote } from '../../../src/engine/match/index.ts';
import { recheck } from '../../../src/engine/recheck/index.ts';
import type { Rechecked } from '../../../src/engine/recheck/index.ts';
import { render } from '../../support/render.ts';
import type { RenderSpec, Truth } from '../../support/render.ts';

interface Case {
  readonly truth: Truth;
  readonly heard: Heard;
  readonly blind: Alignment;
  readonly again: Rechecked;
}

// Truth from a sampled grand with known strokes (development piano, see tests/support).
async function play(
  exercise: ExerciseChoice,
  student: NonNullable<RenderSpec['student']>,
  home: NonNullable<RenderSpec['home']> = { room: { decaySec: 0.3, directDb: 4 } },
): Promise<Case> {
  const sound = await render({ seed: 5, piano: 'dev', exercise, student, home });
  const { heard, sound: kept } = listenAndKeep(sound);
  const blind = matchNotes(heard, buildExercise(exercise));
  return { truth: sound.truth, heard, blind, again: recheck(heard, blind, kept) };
}

const keyOf = (choice: ExerciseChoice, step: number, note: number): number =>
  buildExercise(choice).steps[step]!.notes[note]!.midi;

const countRight = (notes: readonly MatchedNote[], hand?: string): number =>
  notes.filter(({ verdict, expected }) => verdict === 'correct' && (hand ?? expected.hand) === expected.hand)
    .length;

/** Errors of the onsets of right notes against truth, ms. */
function onsetErrorsMs({ truth }: Case, heard: Heard, { matched, semitoneShift }: Alignment): number[] {
  return matched.flatMap((note) => {
    if (note.verdict !== 'correct') return [];
    const { midi, timeSec } = heard.notes[note.played]!;
    const struck = truth.notes.find((one) => one.step === note.step && one.midi === midi + semitoneShift);
    return struck ? [(timeSec - struck.timeSec) * 1000] : [];
  });
}

describe('both hands an octave apart, the left 5 dB louder, three upper notes left out', () => {
  const leftOut = [3, 7, 10];
  let octaves: Case;
  beforeAll(async () => {
    octaves = await play(
      { key: 'D major', form: 'arpeggio', hands: 'together', octaves: 2 },
      {
        leftHandDb: 5,
        velocity: 60,
        mistakes: leftOut.map((step) => ({ kind: 'missed', step, note: 1 }) as const),
      },
    );
  });

  it('most upper notes that were struck are found, and at most one that was not', () => {
    const { blind, again } = octaves;
    const upper = again.alignment.matched.filter(({ expected }) => expected.hand === 'right');
    expect(countRight(again.alignment.matched, 'right')).toBeGreaterThanOrEqual(
      countRight(blind.matched, 'right'),
    );
    expect(countRight(upper)).toBeGreaterThanOrEqual(0.9 * (upper.length - leftOut.length));
    const invented = upper.filter(({ step, verdict }) => leftOut.includes(step) && verdict === 'correct');
    expect(invented.length).toBeLessThanOrEqual(1);
  });

  it('every question keeps what the blind ear found beside what was decided', () => {
    const { blind, again } = octaves;
    const written = again.rechecks.filter(({ asked }) => asked === 'written');
    expect(written).toHaveLength(blind.matched.length);
    for (const { step, midi, blind: found, spreadSec } of written) {
      expect(found).toBe(
        blind.matched.find((note) => note.step === step && note.expected.midi === midi)!.verdict,
      );
      expect(spreadSec).toBeGreaterThan(0);
    }
  });

  it('every note still answers the key that it answered, in order of time', () => {
    const { heard, alignment } = octaves.again;
    const times = heard.notes.map(({ timeSec }) => timeSec);
    expect(times).toEqual(times.toSorted((a, b) => a - b));
    for (const note of alignment.matched)
      if (note.verdict === 'correct') expect(heard.notes[note.played]!.midi).toBe(note.expected.midi);
  });

  it('the blind finding itself is not written to', async () => {
    const { heard, blind } = octaves;
    const copy = structuredClone({ heard, blind });
    const samples = new Float32Array(22_050);
    recheck(heard, blind, { samples, gainAt: () => 1 });
    expect({ heard, blind }).toEqual(copy);
  });
});

const TRIADS: ExerciseChoice = { key: 'E minor', form: 'triads', hands: 'right', octaves: 1 };

describe('triads whose notes are spread over 50 ms', () => {
  let spread: Case;
  beforeAll(async () => {
    spread = await play(TRIADS, {
      chordSpreadMs: 50,
      mistakes: [{ kind: 'wrong', step: 2, note: 1, midi: keyOf(TRIADS, 2, 1) + 1 }],
    });
  });

  it('onsets that the blind ear drew together are told apart', () => {
    const { heard, blind, again } = spread;
    const before = standardDeviation(onsetErrorsMs(spread, heard, blind))!;
    const after = standardDeviation(onsetErrorsMs(spread, again.heard, again.alignment))!;
    expect(after).toBeLessThan(before);
    expect(after).toBeLessThan(5);
  });

  it('a key struck in place of an inner note is not taken for it', () => {
    const note = spread.again.alignment.matched.find(
      ({ step, expected }) => step === 2 && expected.midi === wanted(spread, 2),
    )!;
    expect(note.verdict).toBe('wrong');
    expect(note.verdict === 'wrong' && spread.again.heard.notes[note.played]!.midi).toBe(
      spread.truth.notes.find(({ step, verdict }) => step === 2 && verdict === 'wrong')!.midi,
    );
  });

  const wanted = ({ truth }: Case, step: number): number =>
    truth.notes.find((note) => note.step === step && note.verdict === 'wrong')!.wantedMidi!;
});

it('a neighbour caught with a note of a chord is never explained away', async () => {
  const choice: ExerciseChoice = { key: 'A major', form: 'progression', hands: 'right', octaves: 1 };
  const { truth, again } = await play(choice, {
    mistakes: [{ kind: 'slip', step: 1, note: 1, midi: keyOf(choice, 1, 1) + 1 }],
  });
  const slip = truth.notes.find(({ verdict }) => verdict === 'extra')!;
  const extras = again.alignment.extras.map(({ played }) => again.heard.notes[played]!);
  expect(extras.map(({ midi }) => midi)).toEqual([slip.midi]);
  expect(Math.abs(extras[0]!.timeSec - slip.timeSec)).toBeLessThan(0.03);
});
