import { describe, expect, it } from 'vitest';
import type { ExerciseChoice, NoteNaming, Locale } from '../../../../src/engine/exercise/index.ts';
import { allChoices, buildExercise } from '../../../../src/engine/exercise/index.ts';
import { matchNotes } from '../../../../src/engine/match/index.ts';
import { writeReport } from '../../../../src/engine/report/index.ts';
import { tellWords } from '../../../../src/engine/report/words/index.ts';
import { tellSaid } from '../../../../src/engine/report/words/telling/index.ts';
import { createRandom } from '../../../support/random.ts';
import { attempt, GOOD_LISTENER, heardOf } from '../../match/simulated.ts';
import { GERMAN_ROWS } from './german-rows.ts';
import { ROWS, told } from './rows.ts';
import { playNotes, tell } from './scenes.ts';

const GERMAN: Locale = { language: 'de', naming: 'german' };
const ENGLISH: Locale = { language: 'en', naming: 'letters' };
const A: ExerciseChoice = { key: 'A major', form: 'arpeggio', hands: 'right', octaves: 2 };

describe('every situation in German', () => {
  it.each(
    ROWS.map((row, at) => [row.situation, GERMAN_ROWS[at]?.verdict ?? '', row, GERMAN_ROWS[at]] as const),
  )('%s: “%s”', (_, __, row, german) => {
    expect(german?.english).toBe(row.verdict);
    const { words } = told(row, 'de');
    expect(words).toMatchObject({
      situation: row.situation,
      verdict: german?.verdict,
      nextStep: german?.nextStep,
    });
    expect(words.verdict).toContain(words.emphasis);
  });

  it.each(ROWS.map((row) => [row.situation, row.verdict, row] as const))(
    '%s, listed and beside another: “%s”',
    (_, __, row) => {
      const { said } = told(row).words;
      const [first] = said!.statements;
      if (first === undefined) return;
      for (const locale of [ENGLISH, GERMAN]) {
        for (const { text } of tellSaid(said!, locale).list) expect(text).toMatch(/^[\p{Lu}\d♩].*[^.;\s]$/u);
        const beside = tellSaid({ ...said!, statements: [first, first], named: 2 }, locale).verdict;
        expect(beside).toMatch(/; [^;]*[^;.\s]\.$/);
      }
    },
  );

  it('a going back, with both places', () => {
    const notes = playNotes({ choice: A });
    const back = [
      ...notes.slice(0, 6),
      ...notes.slice(3).map((note) => ({ ...note, timeSec: note.timeSec + 1.9, releaseSec: null })),
    ];
    const heard = heardOf(back);
    const { words } = writeReport(heard, matchNotes(heard, buildExercise(A)), { locale: GERMAN });
    expect(words.verdict).toBe('Bei E aufwärts bist du zu A aufwärts zurückgegangen.');
    expect(words.nextStep).toBe(
      'nur A–Cis–E–A–E, ♩ = 48, zwei Töne auf jeden Schlag, dreimal hintereinander ohne Halt durch diese Stelle; dann das Ganze.',
    );
  });

  it('a late beginning', () => {
    const heard = heardOf(playNotes({ choice: A }).slice(2));
    const { words } = writeReport(heard, matchNotes(heard, buildExercise(A)), { locale: GERMAN });
    expect(words.verdict).toBe('Zu hören ist es erst ab E aufwärts.');
  });

  it('hands that fall now before, now after each other', () => {
    const triads: ExerciseChoice = { ...A, form: 'triads', hands: 'together', octaves: 1 };
    const notes = playNotes({ choice: triads }).map((note, index) => ({
      ...note,
      timeSec: note.timeSec + (index % 6 < 3 ? 0.03 : -0.03) * (Math.floor(index / 6) % 2 === 0 ? 1 : -1),
    }));
    const heard = heardOf(notes, { onsetSdMs: 1 });
    const { words } = writeReport(heard, matchNotes(heard, buildExercise(triads)), { locale: GERMAN });
    expect(words.verdict).toBe(
      'Jeder Ton richtig. Die Hände sind nicht zusammen, mal ist die eine zuerst, mal die andere.',
    );
  });

  it('nearly even, with a comma in its figure', () => {
    const sway = [0, 30, -34, 45, -22, 11, 34, -41, 15, 26, -19, -34, 22];
    const { words } = tell(
      { choice: A, change: (step) => ({ lateMs: 0.65 * sway[step]! }) },
      { locale: GERMAN },
    );
    expect(words.verdict).toMatch(
      /^Jeder Ton richtig\. Noch nicht ganz gleichmäßig: Die Zeit von Ton zu Ton schwankt um \d+,\d %; bei diesem Tempo gilt bis \d+,\d % als gleichmäßig\.$/,
    );
  });

  it('notes that could not be told', () => {
    const notes = playNotes({ choice: A }).map((note, step) =>
      step === 3 || step === 8 ? { ...note, midi: note.midi - 1, confidence: 0.3 } : note,
    );
    const heard = heardOf(notes);
    const { words } = writeReport(heard, matchNotes(heard, buildExercise(A)), { locale: GERMAN });
    expect(words.verdict).toBe('11 von 13 Tönen richtig; zwei waren nicht zu erkennen.');
  });

  it('chords in their grammatical case', () => {
    const triads: ExerciseChoice = { ...A, form: 'triads', octaves: 1 };
    const slow = tell(
      { choice: triads, change: (step) => (step === 2 ? { lateMs: 4000 } : {}) },
      { locale: GERMAN },
    );
    expect(slow.words.verdict).toMatch(
      /^Jeder Ton richtig\. Nach der ersten Umkehrung aufwärts hast du \d,\d s lang angehalten/,
    );
    expect(slow.words.nextStep).toBe(
      'nur von der Grundstellung hinauf zur oberen Grundstellung, ♩ = 48, ein Akkord auf jeden Schlag, dreimal hintereinander ohne Halt durch diese Stelle; dann das Ganze.',
    );
    const twice = tell(
      {
        choice: { ...A, form: 'progression', octaves: 1 },
        change: (step) => (step === 4 ? { twice: true } : {}),
      },
      { locale: GERMAN },
    );
    expect(twice.words.verdict).toBe('Alle 15 Töne richtig. Die letzte I. Stufe ist zweimal angeschlagen.');
    const wrong = tell(
      {
        choice: { ...A, form: 'progression', octaves: 1 },
        change: (step) => (step === 3 ? { wrong: { note: 1, midi: 61 } } : {}),
      },
      { locale: GERMAN },
    );
    expect(wrong.words.verdict).toBe('14 von 15 Tönen richtig. Einer falsch: Cis statt D im V7.');
  });
});

describe('what is better than last time, in German', () => {
  it('has both figures', () => {
    const before = tell({ choice: A, change: (step) => (step === 3 ? { lateMs: 90 } : {}) });
    const now = tell(
      { choice: A, change: (step) => (step === 3 ? { lateMs: 50 } : {}) },
      { earlier: [before], locale: GERMAN },
    );
    expect(now.words.verdict).toBe(
      'Jeder Ton richtig. Der Untersatz aufwärts zu A kommt 50 ms zu spät; besser als beim letzten Mal, vorher 90 ms.',
    );
  });
});

describe('unevenness that is less than last time', () => {
  it('is not told again as another figure', () => {
    const sway = [0, 80, -90, 120, -60, 30, 90, -110, 40, 70, -50, -90, 60];
    const uneven = (share: number) => ({
      choice: A,
      change: (step: number) => ({ lateMs: share * sway[step]! }),
    });
    const { words } = tell(uneven(0.7), { earlier: [tell(uneven(1))], locale: GERMAN });
    expect(words.verdict).toMatch(/schwankt um 15 %; .*; besser als beim letzten Mal, vorher 21 %\.$/);
  });
});

describe('in any locale', () => {
  const LOCALES: readonly Locale[] = (['en', 'de'] as const).flatMap((language) =>
    (['letters', 'german', 'fixed-do'] as const satisfies readonly NoteNaming[]).map((naming) => ({
      language,
      naming,
    })),
  );

  it('the same situation is told with the same steps and practice, in whole sentences', () => {
    const random = createRandom(31);
    const choices = allChoices();
    for (let seed = 0; seed < 60; seed++) {
      const mistakes = {
        wrong: 1,
        missed: random.integer(2),
        slips: 1,
        repeats: 1,
        restarts: random.integer(2),
      };
      const knobs = seed % 3 === 0 ? { jitterMs: 30 } : { mistakes, jitterMs: 25, chordSpreadMs: 60 };
      const { heard, exercise } = attempt(random.pick(choices), knobs, GOOD_LISTENER, seed);
      const alignment = matchNotes(heard, exercise);
      const plain = writeReport(heard, alignment);
      const locale = LOCALES[1 + (seed % (LOCALES.length - 1))]!;
      const { words: theirs, ...rest } = writeReport(heard, alignment, { locale });
      const { words: english, ...same } = plain;
      expect(rest).toEqual(same);
      expect([theirs.situation, theirs.steps, theirs.practice]).toEqual([
        english.situation,
        english.steps,
        english.practice,
      ]);
      expect(tellWords(english, locale)).toMatchObject({
        verdict: theirs.verdict,
        emphasis: theirs.emphasis,
        nextStep: theirs.nextStep,
      });
      expect(english.said!.named).toBeLessThanOrEqual(2);
      for (const each of LOCALES) {
        const { verdict, emphasis, nextStep } = tellWords(english, each);
        expect(verdict).toContain(emphasis);
        expect(verdict).toMatch(/^[A-ZÄÖÜ0-9]/);
        expect(`${verdict} ${nextStep}`).not.toMatch(/undefined|NaN|!| {2}|\[object|#|\bnull\b/);
      }
    }
  });

  it('says G natural for G sharp where both are called G, and no more than G and Gis in German', () => {
    const playing = {
      choice: A,
      change: (step: number) => (step === 1 ? { wrong: { midi: 60 } } : {}),
    };
    const heads = LOCALES.map((locale) => tell(playing, { locale }).words.emphasis);
    expect(heads).toEqual([
      'C natural instead of C♯ going up',
      'C instead of Cis going up',
      'do natural instead of do♯ going up',
      'C ohne Vorzeichen statt C♯ aufwärts',
      'C statt Cis aufwärts',
      'do ohne Vorzeichen statt do♯ aufwärts',
    ]);
  });
});
