import * as v from 'valibot';
import { describe, expect, it } from 'vitest';
import type { ExerciseChoice, Locale } from '../../../../src/engine/exercise/index.ts';
import { allChoices } from '../../../../src/engine/exercise/index.ts';
import { matchNotes } from '../../../../src/engine/match/index.ts';
import type { Heard } from '../../../../src/engine/listen/index.ts';
import type { Report } from '../../../../src/engine/report/index.ts';
import { writeReport } from '../../../../src/engine/report/index.ts';
import { RULES, SAID, SITUATIONS, tellWords } from '../../../../src/engine/report/words/index.ts';
import { createRandom } from '../../../support/random.ts';
import { attempt, GOOD_LISTENER, heardOf } from '../../match/simulated.ts';
import { ROWS, told } from './rows.ts';
import { playNotes, tell } from './scenes.ts';

const A: ExerciseChoice = { key: 'A major', form: 'arpeggio', hands: 'right', octaves: 2 };
const GERMAN: Locale = { language: 'de', naming: 'german' };

/** Uneven without a pattern, by so many times 10 ms and more. */
const SCATTER = [0, 80, -90, 120, -60, 30, 90, -110, 40, 70, -50, -90, 60];
const scattered = (share: number) => (step: number) => ({ lateMs: share * SCATTER[step]! });

/** As stored and read again. */
const stored = (report: Report): Report => JSON.parse(JSON.stringify(report)) as Report;

const CHOICES = allChoices();
const random = createRandom(77);
/** Attempts with mistakes of every kind. */
const ATTEMPTS = Array.from({ length: 120 }, (_, seed): Report => {
  const mistakes = {
    wrong: random.integer(3),
    missed: random.integer(2),
    slips: 1,
    repeats: random.integer(2),
    restarts: 0,
  };
  const knobs = { mistakes, jitterMs: 20 };
  const { heard, exercise } = attempt(random.pick(CHOICES), knobs, GOOD_LISTENER, seed);
  return writeReport(heard, matchNotes(heard, exercise));
});

describe('what is said is data', () => {
  it.each(ROWS.map((row) => [row.verdict, row] as const))(
    'a stored report is told in the language chosen now: “%s”',
    (_, row) => {
      const english = told(row);
      const german = told(row, 'de');
      expect(v.is(SAID, stored(english).words.said)).toBe(true);
      expect(tellWords(stored(english).words, GERMAN)).toMatchObject({
        verdict: german.words.verdict,
        emphasis: german.words.emphasis,
        nextStep: german.words.nextStep,
      });
      expect(tellWords(stored(german).words, { language: 'en', naming: 'letters' }).verdict).toBe(
        row.verdict,
      );
    },
  );

  it('a report of version 0.1 is told as it was stored', () => {
    const { said: _, ...words } = tell({ choice: A }).words;
    expect(tellWords(words, GERMAN)).toEqual({ ...words, list: [], counted: [] });
  });

  it('a report that speaks of a situation of a later version is told as it was stored', () => {
    const { words } = tell({ choice: A });
    const later = {
      ...words,
      said: { ...words.said!, statements: [{ situation: 'hums-along', steps: [] }] },
    };
    expect(tellWords(later as unknown as typeof words, GERMAN).verdict).toBe(words.verdict);
  });
});

describe('sentence, list and figures agree', () => {
  it('every note that is wrong, missing or too many has a line of its own with its step', () => {
    for (const report of ATTEMPTS) {
      const { said } = report.words;
      if (said!.statements[0]!.situation === 'other-exercise') continue;
      const { list } = tellWords(report.words, GERMAN);
      const faulty = report.notes.filter(
        ({ verdict, extraKind }) => verdict === 'wrong' || (verdict === 'extra' && extraKind !== 'restart'),
      );
      for (const { step } of [...faulty, ...report.missed])
        expect(
          list.some(({ steps }) => steps.includes(step!)),
          JSON.stringify(list),
        ).toBe(true);
    }
  });

  it('a wrong note has one name, in sentence, list and string', () => {
    let compared = 0;
    for (const report of ATTEMPTS)
      for (const statement of report.words.said!.statements) {
        const faults = 'notes' in statement && statement.situation === 'wrong-notes' ? statement.notes : [];
        const keys = statement.situation === 'slips' ? statement.keys : [];
        for (const { step, struck } of [...faults, ...keys]) {
          if (struck === null || struck.startsWith('octave')) continue;
          const names = report.notes
            .filter((note) => note.step === step && note.verdict !== 'correct')
            .map(({ name }) => name.replace(/-?\d+$/, ''));
          expect(names).toContain(struck);
          compared += 1;
        }
      }
    expect(compared).toBeGreaterThan(30);
  });

  it('another exercise than chosen is said first, and what is wrong in it beside it', () => {
    const notes = playNotes({ choice: A, change: (step) => (step === 2 ? { wrong: { midi: 66 } } : {}) });
    const heard = heardOf(notes, { onsetSdMs: 1 });
    const alignment = { ...matchNotes(heard, attempt(A).exercise), chosen: { ...A, form: 'scale' as const } };
    expect(writeReport(heard, alignment).words.verdict).toBe(
      'You played the arpeggio, not the scale; that is what is measured here; F♯ instead of E going up.',
    );
  });

  it('nothing is blamed that is not 99 % sure by its figure’s own error', () => {
    for (const report of ATTEMPTS)
      for (const { faults, sure } of report.words.said!.statements)
        if (faults > 0 && sure !== undefined) expect(sure).toBeGreaterThanOrEqual(0.99);
  });

  it('nobody is called tired by attempts of other days, at a rising tempo, or that are all even', () => {
    const at = (share: number, bpm = 80) => tell({ choice: A, bpm, change: scattered(share) });
    const series = [0.1, 0.35, 0.65].map((share) => at(share));
    const last = { choice: A, change: scattered(1) };
    expect(tell(last, { earlier: series, sitting: 3 }).words.situation).toBe('tired');
    expect(tell(last, { earlier: series, sitting: 2 }).words.situation).toBe('uneven');
    expect(tell(last, { earlier: series }).words.situation).toBe('uneven');
    const slower = [0.1, 0.35, 0.65].map((share) => at(share, 60));
    expect(tell(last, { earlier: slower, sitting: 3 }).words.situation).toBe('uneven');
    const even = [0.02, 0.05, 0.09].map((share) => at(share));
    const lastEven = { choice: A, change: scattered(0.13) };
    expect(tell(lastEven, { earlier: even, sitting: 3 }).words.situation).toBe('often-enough');
  });

  const choice = A;
  const withExtra = (midi: number, afterSec: number, confidence: number): Report => {
    const notes = playNotes({ choice });
    const extra = { ...notes[4]!, midi, timeSec: notes[4]!.timeSec + afterSec, confidence };
    const heard = heardOf([...notes, extra]);
    return writeReport(heard, matchNotes(heard, attempt(choice).exercise));
  };

  it.each([
    ['a key beside a right one, believed in by 99.5 %', 74, 0.02, 0.995, 'slips'],
    ['… and by 98.5 %', 74, 0.02, 0.985, 'at-the-criterion'],
    ['a key struck again after 160 ms', 73, 0.16, 0.95, 'repeats'],
    ['… and after 120 ms', 73, 0.12, 1, 'repeats'],
    ['… and after 80 ms, sooner than a finger can', 73, 0.08, 1, 'at-the-criterion'],
  ])('what is not sure is left out of sentence, list, string and figures: %s', (_, midi, sec, sure, said) => {
    const report = withExtra(midi, sec, sure);
    expect(report.words.situation).toBe(said);
    const told = report.notes.filter(({ verdict }) => verdict === 'extra').length;
    expect(told).toBe(said === 'at-the-criterion' ? 0 : 1);
    expect(report.words.steps).toHaveLength(told);
  });

  it.each([
    [0.995, 'missed-notes', 0],
    [0.98, 'at-the-criterion', 1],
  ])('a note that is missing with a probability of %d: %s', (sure, said, asked) => {
    const heard = heardOf(playNotes({ choice }).filter((_note, step) => step !== 4));
    const alignment = matchNotes(heard, attempt(choice).exercise);
    const matched = alignment.matched.map((note) => (note.verdict === 'missed' ? { ...note, sure } : note));
    const report = writeReport(heard, { ...alignment, matched });
    expect(report.words.situation).toBe(said);
    expect(report.unsure).toHaveLength(asked);
    expect(report.missed).toHaveLength(1 - asked);
    const list = tellWords(report.words, GERMAN).list.filter(({ steps }) => steps.includes(4));
    expect(list).toHaveLength(1);
  });

  it.each([
    ['too-quiet', 'missed-notes', 'repeats'],
    ['noise', 'missed-notes', 'repeats'],
    ['speech', 'missed-notes', 'repeats'],
    ['clipping', 'repeats'],
  ] as const)('sound that is poor (%s) lets nobody be told: %s', (kind, ...untold) => {
    const change = (step: number) =>
      step === 4 ? { missed: {} } : step === 7 ? { twice: true as const } : {};
    const findings = [{ kind, detail: 'as it is' }];
    const said = (heard: Partial<Heard>): readonly string[] =>
      tell({ choice, change, heard }).words.said!.statements.map(({ situation }) => situation);
    expect(said({})).toEqual(expect.arrayContaining(['missed-notes', 'repeats']));
    for (const situation of untold) expect(said({ findings })).not.toContain(situation);
    expect(said({ findings }).includes('missed-notes')).toBe(kind === 'clipping');
  });

  it('every fault that is told carries how sure it is', () => {
    for (const report of ATTEMPTS)
      for (const statement of report.words.said!.statements) {
        const kind = RULES[statement.situation].kind;
        const ofCourse = RULES[statement.situation].rank === RULES.stopped.rank;
        if (kind === 'fault' && !ofCourse)
          expect(statement.sure, statement.situation).toBeGreaterThanOrEqual(0.99);
      }
  });

  it('a note in doubt is asked about, not blamed', () => {
    const notes = playNotes({ choice: A }).map((note, step) =>
      step === 3 ? { ...note, midi: note.midi - 1, confidence: 0.3 } : note,
    );
    const heard = heardOf(notes);
    const { words } = writeReport(heard, matchNotes(heard, attempt(A).exercise));
    expect(words.verdict).toBe('Every note that could be told is right, and even.');
    expect(tellWords(words, { language: 'en', naming: 'letters' }).list).toContainEqual({
      steps: [3],
      text: 'Not sure: was the A going up struck?',
    });
  });
});

describe('the table of what is said when', () => {
  it('has every situation once, in the order of its ranks', () => {
    expect(new Set(SITUATIONS)).toEqual(new Set(Object.keys(RULES)));
    expect(SITUATIONS).toHaveLength(Object.keys(RULES).length);
    const kinds = ['sound', 'exercise', 'fault', 'meant', 'progress', 'asked'];
    const ranked = SITUATIONS.map((name) => RULES[name])
      .map(({ kind, rank }) => ({ kind: kinds.indexOf(kind === 'practice' ? 'exercise' : kind), rank }))
      .sort((a, b) => a.kind - b.kind);
    ranked.slice(1).forEach((one, at) => {
      const before = ranked[at]!;
      expect(one.rank - before.rank).toBeGreaterThanOrEqual(one.kind === before.kind ? 0 : 1);
    });
    for (const { when, why, source } of Object.values(RULES))
      for (const text of [when, why, source]) expect(text.length).toBeGreaterThan(5);
  });

  it('a situation that blames says how many faults, the others none', () => {
    for (const row of ROWS)
      for (const { situation, faults } of told(row).words.said!.statements)
        expect(faults > 0, situation).toBe(RULES[situation].kind === 'fault');
  });
});

describe('which hand', () => {
  it('is named nowhere where it was not chosen, since it cannot be heard', () => {
    for (const row of ROWS.filter(({ playing }) => (playing.as ?? playing.choice).hands !== 'together')) {
      const { words } = tell({ ...row.playing, handKnown: false }, row.options);
      const text = `${words.verdict} ${words.nextStep}`;
      expect(text).not.toMatch(/\b(left|right) hand\b|thumb|finger \d/);
    }
  });
});
