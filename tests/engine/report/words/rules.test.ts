import { describe, expect, it } from 'vitest';
import type { ExerciseChoice } from '../../../../src/engine/exercise/index.ts';
import { allChoices, buildExercise } from '../../../../src/engine/exercise/index.ts';
import { findingOf } from '../../../../src/engine/listen/findings.ts';
import { matchNotes } from '../../../../src/engine/match/index.ts';
import { DEFAULT_CRITERIA, writeReport } from '../../../../src/engine/report/index.ts';
import { createRandom } from '../../../support/random.ts';
import { attempt, GOOD_LISTENER, heardOf } from '../../match/simulated.ts';
import { playNotes, tell } from './scenes.ts';

const A: ExerciseChoice = { key: 'A major', form: 'arpeggio', hands: 'right', octaves: 2 };

describe('the course of the attempt', () => {
  it('a going back is told with both places', () => {
    const notes = playNotes({ choice: A });
    const back = [
      ...notes.slice(0, 6),
      ...notes.slice(3).map((note) => ({ ...note, timeSec: note.timeSec + 1.9, releaseSec: null })),
    ];
    const heard = heardOf(back);
    const { words } = writeReport(heard, matchNotes(heard, tellExercise()));
    expect(words).toMatchObject({
      situation: 'restarted',
      verdict: 'At E going up you went back to A going up.',
      nextStep:
        'only A–C♯–E–A–E, ♩ = 48, two notes a beat, straight through that place, three times in a row without a stop; then the whole.',
      practice: { fromStep: 3, toStep: 7, tempoBpm: 48 },
    });
  });

  it('a late beginning is told with the first note heard', () => {
    const heard = heardOf(playNotes({ choice: A }).slice(2));
    expect(writeReport(heard, matchNotes(heard, tellExercise())).words).toMatchObject({
      situation: 'started-late',
      verdict: 'The first that was heard is E going up.',
    });
  });
});

describe('what comes first', () => {
  it('a wrong note comes before a stop, and the stop comes second', () => {
    const { words } = tell({
      choice: A,
      change: (step) => (step === 5 ? { lateMs: 3000 } : step === 9 ? { wrong: { midi: 67 } } : {}),
    });
    expect(words.situation).toBe('wrong-notes');
    expect(words.verdict).toBe(
      '12 of 13 notes right. One wrong: G instead of A coming down; you stopped after C♯ going up, for 3.4 s.',
    );
    expect(words.steps).toEqual([9, 4]);
  });

  it('a wrong note comes before a late thumb, and the thumb comes second', () => {
    const { words } = tell({
      choice: A,
      change: (step) => (step === 3 ? { lateMs: 90 } : step === 8 ? { wrong: { midi: 75 } } : {}),
    });
    expect(words.verdict).toBe(
      '12 of 13 notes right. One wrong: D♯ instead of C♯ coming down; the crossing comes late going up to A.',
    );
  });

  it.each([
    [120, 150, ['crossing-late', 'late-at-the-turn']],
    [200, 120, ['late-at-the-turn', 'crossing-late']],
  ])(
    'of two faults of one kind the graver: the turn %i ms late, a crossing %i',
    (turnMs, crossingMs, said) => {
      const choice: ExerciseChoice = { ...A, form: 'scale', octaves: 4 };
      const turn = buildExercise(choice).steps.find((step) => step.turn)!.step;
      const { words } = tell({
        choice,
        change: (step) => (step === turn + 1 ? { lateMs: turnMs } : step === 3 ? { lateMs: crossingMs } : {}),
      });
      expect(words.said!.statements.map(({ situation }) => situation)).toEqual(said);
    },
  );

  it('of chords that spread the widest is practised', () => {
    const choice: ExerciseChoice = { ...A, form: 'triads', octaves: 1 };
    for (const widest of [1, 4]) {
      const { situation, practice } = tell({
        choice,
        spreadMs: (note, _finger, step) => (step === widest ? 60 : 30) * note,
      }).words;
      expect(situation).toBe('chords-spread');
      expect(practice!.fromStep).toBeLessThan(widest);
      expect(practice!.toStep).toBeGreaterThan(widest);
    }
  });

  it('never names more than two things, and counts the rest', () => {
    const random = createRandom(21);
    const choices = allChoices();
    for (let seed = 0; seed < 150; seed++) {
      const mistakes = { wrong: 1, missed: 1, slips: 1, repeats: 1, restarts: 1 };
      const { heard, exercise } = attempt(
        random.pick(choices),
        { mistakes, jitterMs: 40, driftPercent: 25, thumbDb: 5, overlapMs: -150, chordSpreadMs: 90 },
        GOOD_LISTENER,
        seed,
      );
      const { verdict, emphasis, steps, nextStep, said } = writeReport(
        heard,
        matchNotes(heard, exercise),
      ).words;
      expect(said!.named).toBeLessThanOrEqual(2);
      const unnamed = said!.statements.slice(said!.named).reduce((sum, { faults }) => sum + faults, 0);
      expect(/more things?\.$/.test(verdict)).toBe(unnamed > 0);
      expect(verdict).toContain(emphasis);
      expect(`${verdict} ${nextStep}`).not.toMatch(/undefined|NaN|!| {2}|\[object/);
      for (const step of steps) expect(exercise.steps[step]).toBeDefined();
    }
  });
});

describe('what is better than last time', () => {
  it('comes second, with both figures, while the trouble lasts', () => {
    const before = tell({ choice: A, change: (step) => (step === 3 ? { lateMs: 90 } : {}) });
    const now = tell(
      { choice: A, change: (step) => (step === 3 ? { lateMs: 50 } : {}) },
      { earlier: [before] },
    );
    expect(now.words.verdict).toBe(
      'Every note right. The crossing comes late going up to A, by 50 ms; better than last time, when it was 90 ms.',
    );
  });

  it('is not said of a difference within the ±', () => {
    const before = tell({ choice: A, change: (step) => (step === 3 ? { lateMs: 90 } : {}) });
    const now = tell(
      { choice: A, change: (step) => (step === 3 ? { lateMs: 86 } : {}) },
      { earlier: [before] },
    );
    expect(now.words.verdict).not.toContain('better');
  });

  it('is not said of another exercise', () => {
    const before = tell({
      choice: { ...A, key: 'E major' },
      change: (step) => (step === 3 ? { lateMs: 90 } : {}),
    });
    expect(tell({ choice: A }, { earlier: [before] }).words.situation).toBe('at-the-criterion');
  });
});

describe('what is not said', () => {
  it('a tidy student (12 ms of scatter) is hardly ever told of a late crossing', () => {
    const said = Array.from({ length: 200 }, (_, seed) => {
      const { heard, exercise } = attempt(A, { jitterMs: 12 }, { onsetSdMs: 2 }, seed);
      return writeReport(heard, matchNotes(heard, exercise)).words.situation;
    });
    expect(said.filter((situation) => situation.startsWith('crossing')).length).toBeLessThanOrEqual(12);
  });

  it('one late crossing of notes that are uneven without it is no cause', () => {
    const strays = [0, 70, -80, 95, -60, 30, 85, -90, 40, 65, -50, -85, 60];
    const crossing = (lateMs: number, share: number) =>
      tell({ choice: A, change: (step) => ({ lateMs: step === 3 ? lateMs : share * strays[step]! }) }).words;
    expect(crossing(600, 0).situation).toBe('crossing-late');
    expect(crossing(600, 1).situation).toBe('uneven');
    expect(crossing(600, 1).verdict).not.toMatch(/crossing/);
  });

  it('drift is not said where only the crossings on the way up are late', () => {
    const { words } = tell({
      choice: { ...A, key: 'Ab major' },
      change: (step) => (step === 1 || step === 4 ? { lateMs: 120 } : {}),
    });
    expect(words.verdict).not.toMatch(/rushes|drags/);
  });
});

describe('an ending', () => {
  const codes = (words: { said?: { statements: readonly { situation: string }[] } }): readonly string[] =>
    words.said!.statements.map(({ situation }) => situation);
  const ending = (step: number): number => (step > 9 ? 60 * (step - 9) : 0);

  it.each([
    ['that slows', 'slows-to-the-end', ending],
    ['of one broad last note', 'broad-last-note', (step: number) => (step === 12 ? 200 : 0)],
  ])('%s is in no figure of evenness or drift, and is told beside', (_, code, lateMs) => {
    const plain = tell({ choice: A, change: (step) => ({ lateMs: step % 2 === 0 ? 6 : -6 }) });
    const shaped = tell({
      choice: A,
      change: (step) => ({ lateMs: (step % 2 === 0 ? 6 : -6) + lateMs(step) }),
    });
    expect(codes(shaped.words)).toEqual(['at-the-criterion', code]);
    for (const name of ['evennessPercent', 'evennessMs', 'npvi', 'driftPercent'] as const) {
      const [now, before] = [shaped.measures[name], plain.measures[name]];
      if (!('value' in now) || !('value' in before)) throw new Error('not measured');
      expect(Math.abs(now.value - before.value), name).toBeLessThan(1.2);
    }
  });

  it('leaves what is not quite even before it to be told as that', () => {
    const sway = [0, 20, -22, 29, -14, 7, 22, -27, 10, 17, -12, -22, 14];
    const { words } = tell({
      choice: A,
      change: (step) => ({ lateMs: sway[step]! + (step === 12 ? 250 : 0) }),
    });
    expect(codes(words)).toEqual(['nearly-even', 'broad-last-note']);
  });

  it('that comes only as late as others do counts like any other', () => {
    const { words, measures } = tell({ choice: A, change: (step) => ({ lateMs: step === 12 ? 30 : 0 }) });
    expect(codes(words)).toEqual(['at-the-criterion']);
    expect('value' in measures.evennessPercent && measures.evennessPercent.value).toBeGreaterThan(2);
  });
});

describe('a sway is no drift, and a drift no sway', () => {
  const scatterMs = (seed: number): readonly number[] => {
    const random = createRandom(seed);
    const off = Array.from({ length: 14 }, () => random.normal(6));
    return off.map((value, step) => value - (off[step - 1] ?? 0));
  };

  it.each([12, 16, 20])('over two octaves, faster and slower once in %d notes', (notes) => {
    for (const seed of [1, 2, 3]) {
      const own = scatterMs(seed);
      const { words } = tell({
        choice: A,
        change: (step) => ({ lateMs: own[step]! + 45 * Math.sin((2 * Math.PI * step) / notes) }),
      });
      expect(words.situation).toBe('tempo-sways');
    }
  });

  it('of less than half of what counts as uneven it is none', () => {
    const swaying = (byMs: number): readonly string[] =>
      tell({
        choice: A,
        change: (step) => ({ lateMs: byMs * Math.sin((2 * Math.PI * step) / 16) }),
      }).words.said!.statements.map(({ situation }) => situation);
    expect(swaying(45)).toContain('tempo-sways');
    expect(swaying(4)).not.toContain('tempo-sways');
  });

  it.each([-12, 12])('each interval longer (or shorter) than the one before, %d ms in all twelve', (byMs) => {
    for (const seed of [1, 2, 3]) {
      const own = scatterMs(seed);
      expect(
        tell({ choice: A, change: (step) => ({ lateMs: own[step]! + byMs * (step - 6) }) }).words,
      ).toMatchObject({
        situation: 'drift',
      });
    }
  });
});

describe('the rest of the table', () => {
  it('hands that fall now before, now after each other', () => {
    const triads: ExerciseChoice = { ...A, form: 'triads', hands: 'together', octaves: 1 };
    const notes = playNotes({ choice: triads }).map((note, index) => ({
      ...note,
      timeSec: note.timeSec + (index % 6 < 3 ? 0.03 : -0.03) * (Math.floor(index / 6) % 2 === 0 ? 1 : -1),
    }));
    const heard = heardOf(notes, { onsetSdMs: 1 });
    const { words, measures } = writeReport(heard, matchNotes(heard, attempt(triads).exercise));
    expect(words).toMatchObject({
      situation: 'hands-apart',
      verdict: 'Every note right. The hands are not together, now one first, now the other.',
      nextStep:
        'only from the root position up to the top root position, ♩ = 53, one chord a beat: stop on each beat, both hands together, until right three times in a row.',
    });
    expect(measures.togetherness?.steps).toHaveLength(7);
  });

  it.each([
    ['both are as loud', 0, 'one-hand-leads'],
    ['it is the louder by 6 dB: such keys arrive earlier', 6, 'nothing-to-remark'],
    ['it is the softer by 6 dB', -6, 'one-hand-leads'],
  ])('a left hand 45 ms ahead is told or not where %s', (_, louderDb, situation) => {
    const triads: ExerciseChoice = { ...A, form: 'triads', hands: 'together', octaves: 1 };
    const { words } = tell({
      choice: triads,
      handMs: (_step, hand) => (hand === 'right' ? 45 : 0),
      noteDb: (note) => (note < 3 ? louderDb : 0),
    });
    expect(words.situation).toBe(situation);
  });

  it('a left hand ahead by no more than a louder one is not told where the sound is cut off, and which is louder nobody knows', () => {
    const triads: ExerciseChoice = { ...A, form: 'triads', hands: 'together', octaves: 1 };
    const notes = playNotes({ choice: triads, handMs: (_step, hand) => (hand === 'right' ? 45 : 0) });
    const toldOf = (times: number): string => {
      const findings = [findingOf({ notice: 'clipping', times })];
      const heard = heardOf(notes, { findings });
      return writeReport(heard, matchNotes(heard, attempt(triads).exercise)).words.situation;
    };
    expect([toldOf(9), toldOf(9000)]).toEqual(['one-hand-leads', 'nothing-to-remark']);
  });

  it('nearly even is told with its figure', () => {
    const sway = [0, 30, -34, 45, -22, 11, 34, -41, 15, 26, -19, -34, 22];
    const { words } = tell({ choice: A, change: (step) => ({ lateMs: 0.65 * sway[step]! }) });
    expect(words.situation).toBe('nearly-even');
    expect(words.verdict).toMatch(
      /^Every note right\. Not yet quite even: the time from note to note varies by \d+\.\d %; at this tempo up to \d+\.\d % counts as even\.$/,
    );
  });

  it('notes that could not be told are said to be so', () => {
    const notes = playNotes({ choice: A }).map((note, step) =>
      step === 3 || step === 8 ? { ...note, midi: note.midi - 1, confidence: 0.3 } : note,
    );
    const heard = heardOf(notes);
    const report = writeReport(heard, matchNotes(heard, tellExercise()));
    expect(report.words.verdict).toBe('11 of 13 notes right; two could not be told.');
    expect(report.unsure).toMatchObject([{ step: 3, midi: 69, hand: 'right' }, { step: 8 }]);
  });
});

describe('a teacher’s own criteria', () => {
  it('move the bounds', () => {
    const playing = { choice: A, change: (step: number) => ({ lateMs: step === 7 ? 250 : 0 }) };
    const criteria = { ...DEFAULT_CRITERIA, turnShareOfInterval: 0.8 };
    expect(tell(playing).words.situation).toBe('late-at-the-turn');
    expect(tell(playing, { criteria }).words.situation).not.toBe('late-at-the-turn');
  });
});

function tellExercise() {
  return attempt(A).exercise;
}
