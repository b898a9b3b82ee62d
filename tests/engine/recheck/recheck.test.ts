import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { buildExercise } from '../../../src/engine/exercise/index.ts';
import { listen } from '../../../src/engine/listen/index.ts';
import type { Candidate, Heard, PlayedNote } from '../../../src/engine/listen/index.ts';
import { matchNotes } from '../../../src/engine/match/index.ts';
import type { MatchedNote } from '../../../src/engine/match/index.ts';
import { recheck } from '../../../src/engine/recheck/index.ts';
import type { Rechecked } from '../../../src/engine/recheck/index.ts';
import { render } from '../../support/render.ts';
import { heardOf, played } from '../match/simulated.ts';

const SCALE = buildExercise({ key: 'C major', form: 'scale', hands: 'together', octaves: 1 });
/** The step whose upper note is in question, and its time and key. */
const STEP = 4;
const AT_SEC = 0.5 + 0.4 * STEP;
const UPPER = SCALE.steps[STEP]!.notes[1]!.midi;

/** Both hands struck as one, but for the upper note of one step. */
const NOTES: readonly PlayedNote[] = SCALE.steps.flatMap(({ step, notes }) =>
  notes
    .filter(({ midi }) => step !== STEP || midi !== UPPER)
    .map(({ midi }) => played(0.5 + 0.4 * step, midi)),
);

const sure = (note: PlayedNote): Candidate => ({
  timeSec: note.timeSec,
  midi: note.midi,
  probability: 0.99,
  loudnessDb: 0,
  note,
});

function faint(over: Partial<Candidate> = {}): Candidate {
  const { timeSec = AT_SEC, midi = UPPER } = over;
  const note = played(timeSec, midi, { confidence: 0.4 });
  return { timeSec, midi, probability: 0.45, loudnessDb: 0, note, ...over };
}

function heardWith(...more: readonly Candidate[]): Heard {
  const candidates = [...NOTES.map(sure), ...more].sort((a, b) => a.timeSec - b.timeSec || a.midi - b.midi);
  return heardOf(NOTES, { candidates });
}

function again(heard: Heard): Rechecked {
  return recheck(heard, matchNotes(heard, SCALE));
}

function inQuestion({ alignment }: Rechecked): MatchedNote {
  return alignment.matched.find((note) => note.step === STEP && note.expected.midi === UPPER)!;
}

describe('the upper note of an octave that blind listening did not report', () => {
  it('is unsure before it is listened for again', () => {
    const blind = matchNotes(heardWith(), SCALE);
    expect(blind.matched.filter(({ verdict }) => verdict === 'unsure')).toHaveLength(1);
  });

  it('is found again where the ear half believed in it, as loud as the rest of its hand', () => {
    const rechecked = again(heardWith(faint()));
    const note = inQuestion(rechecked);
    expect(note.verdict).toBe('correct');
    expect(note.verdict === 'correct' && rechecked.heard.notes[note.played]).toMatchObject({
      midi: UPPER,
      timeSec: AT_SEC,
    });
    expect(rechecked.rechecks).toMatchObject([
      { blind: 'unsure', decision: 'struck', step: STEP, midi: UPPER },
    ]);
  });

  it('is missed where the ear heard nothing of it', () => {
    const rechecked = again(heardWith());
    expect(inQuestion(rechecked).verdict).toBe('missed');
    expect(rechecked.rechecks).toMatchObject([{ blind: 'unsure', decision: 'not-struck' }]);
  });

  it('stays unsure where the evidence does not decide', () => {
    const rechecked = again(heardWith(faint({ probability: 0.2, loudnessDb: -6 })));
    expect(inQuestion(rechecked)).toMatchObject({ verdict: 'unsure' });
    expect(rechecked.rechecks[0]!.probability).toBeGreaterThan(0.1);
  });

  it.each([
    ['another key', faint({ midi: UPPER + 2 })],
    ['another moment', faint({ timeSec: AT_SEC + 0.2 })],
  ])('is not found again in what was heard of %s', (_, candidate) => {
    expect(inQuestion(again(heardWith(candidate))).verdict).toBe('missed');
  });

  it('is not found again in a strike too faint to have been looked at', () => {
    expect(inQuestion(again(heardWith(faint({ note: null })))).verdict).toBe('unsure');
  });

  it('is the more probable the surer the ear was and the louder it is', () => {
    const probability = fc.double({ min: 0.01, max: 0.97, noNaN: true });
    const loudnessDb = fc.double({ min: -15, max: 10, noNaN: true });
    const chance = (candidate: Partial<Candidate>): number =>
      again(heardWith(faint(candidate))).rechecks[0]!.probability;
    fc.assert(
      fc.property(probability, probability, loudnessDb, loudnessDb, (p, q, a, b) => {
        const less = chance({ probability: Math.min(p, q), loudnessDb: Math.min(a, b) });
        const more = chance({ probability: Math.max(p, q), loudnessDb: Math.max(a, b) });
        expect(more).toBeGreaterThanOrEqual(less);
        expect(more).toBeLessThanOrEqual(1);
        expect(less).toBeGreaterThanOrEqual(0);
      }),
    );
  });
});

describe('what a second listening leaves as it was', () => {
  it('the blind finding: notes and alignment handed in are not written to', () => {
    const heard = heardWith(faint());
    const blind = matchNotes(heard, SCALE);
    const copy = structuredClone({ heard, blind });
    recheck(heard, blind);
    expect({ heard, blind }).toEqual(copy);
  });

  it('everything, where the listener kept no candidates', () => {
    const heard = heardOf(NOTES);
    const blind = matchNotes(heard, SCALE);
    expect(recheck(heard, blind)).toEqual({ heard, alignment: blind, rechecks: [] });
  });

  it('every note that was heard: it answers the same place, whatever is found beside it', () => {
    const some = fc.subarray(
      NOTES.map((_, index) => index),
      { minLength: 20 },
    );
    fc.assert(
      fc.property(some, (kept) => {
        const notes = NOTES.filter((_, index) => kept.includes(index));
        const lost = NOTES.filter((_, index) => !kept.includes(index));
        const candidates = [
          ...notes.map(sure),
          ...lost.map(({ timeSec, midi }) => faint({ timeSec, midi })),
        ].sort((a, b) => a.timeSec - b.timeSec || a.midi - b.midi);
        const heard = heardOf(notes, { candidates });
        const blind = matchNotes(heard, SCALE);
        const after = recheck(heard, blind);
        const times = after.heard.notes.map(({ timeSec }) => timeSec);
        expect(times).toEqual(times.toSorted((a, b) => a - b));
        blind.matched.forEach((before, place) => {
          if (before.verdict !== 'correct') return;
          const now = after.alignment.matched[place]!;
          expect(now.verdict).toBe('correct');
          expect(now.verdict === 'correct' && after.heard.notes[now.played]).toBe(heard.notes[before.played]);
        });
        blind.extras.forEach((before, index) =>
          expect(after.heard.notes[after.alignment.extras[index]!.played]).toBe(heard.notes[before.played]),
        );
      }),
    );
  });
});

// Truth from a sampled grand with known strokes (development piano, see tests/support).
describe('both hands an octave apart on a sampled piano, the left 5 dB louder', () => {
  const choice = { key: 'D major', form: 'arpeggio', hands: 'together', octaves: 2 } as const;
  const leftOut = [3, 7, 10].map((step) => ({ kind: 'missed', step, note: 1 }) as const);

  it('most upper notes that were struck are found, and none that was not', async () => {
    const sound = await render({
      seed: 5,
      piano: 'dev',
      exercise: choice,
      student: { leftHandDb: 5, velocity: 60, mistakes: leftOut },
      home: { room: { decaySec: 0.3, directDb: 4 } },
    });
    const heard = listen(sound);
    const blind = matchNotes(heard, buildExercise(choice));
    const { alignment } = recheck(heard, blind);
    const upper = (notes: readonly MatchedNote[]): readonly MatchedNote[] =>
      notes.filter(({ expected }) => expected.hand === 'right');
    const right = (notes: readonly MatchedNote[]): number =>
      upper(notes).filter(({ verdict }) => verdict === 'correct').length;
    expect(right(alignment.matched)).toBeGreaterThan(right(blind.matched));
    expect(right(alignment.matched)).toBeGreaterThanOrEqual(0.9 * (upper(alignment.matched).length - 3));
    for (const { step } of leftOut)
      expect(upper(alignment.matched).find((note) => note.step === step)!.verdict).not.toBe('correct');
  });
});
