import { readFileSync } from 'node:fs';
import { resolve } from 'node:path';
import { describe, expect, it } from 'vitest';
import { attempt, GOOD_LISTENER } from '../match/simulated.ts';
import { allChoices } from '../../../src/engine/exercise/index.ts';
import type { Form } from '../../../src/engine/exercise/index.ts';
import { matchNotes } from '../../../src/engine/match/index.ts';
import { tellWords, writeReport } from '../../../src/engine/report/index.ts';
import type { Report } from '../../../src/engine/report/index.ts';
import { tellReport } from '../../../src/engine/report/version-0-1.ts';
import { ENGLISH_WORDS } from '../../support/english.ts';
import { createRandom } from '../../support/random.ts';

const ENGLISH = { language: 'en', naming: 'letters' } as const;
const GERMAN = { language: 'de', naming: 'german' } as const;

const REPORTS = readFileSync(resolve(import.meta.dirname, '../../version-0.1/reports.jsonl'), 'utf8')
  .trim()
  .split('\n')
  .map((line) => JSON.parse(line) as Report);

describe('a report of version 0.1', () => {
  it.each(REPORTS.map((report) => [report.exercise.title, report] as const))(
    'of %s is told in the language chosen now, by the rules of today',
    (_, report) => {
      const [english, german] = [tellReport(report, ENGLISH), tellReport(report, GERMAN)];
      for (const text of [german.verdict, german.nextStep, ...german.list.map(({ text }) => text)])
        expect(text).not.toMatch(ENGLISH_WORDS);
      expect(english.verdict).not.toBe(german.verdict);
      // A strained thumb was once advised.
      expect(english.nextStep).not.toMatch(/while \d still holds/);
    },
  );

  it('names the faults that it named', () => {
    const told = (situation: string) =>
      tellReport(
        REPORTS.find(({ words }) => words.situation === situation)!,
        ENGLISH,
      ).verdict;
    expect(told('missed-notes')).toMatch(/One missing: A coming down/);
    expect(told('crossing-late-one-direction')).toMatch(
      /C going up in the (lower|upper) octave and C going up in the (lower|upper) octave come late, by 124 and 118 ms/,
    );
    expect(told('at-the-criterion')).toBe('Every note right, and even.');
  });
});

/** All that version 0.1 knew. */
const FORMS_THEN: readonly Form[] = ['arpeggio', 'scale', 'triads', 'broken-triads', 'progression'];

describe('any report without its values', () => {
  it('is told of the same notes as with them', () => {
    const random = createRandom(12);
    const choices = allChoices().filter(
      ({ form, hands }) => hands === 'together' && FORMS_THEN.includes(form),
    );
    for (let seed = 0; seed < 40; seed++) {
      const mistakes = {
        wrong: random.integer(3),
        missed: random.integer(2),
        slips: 1,
        repeats: 1,
        restarts: 0,
      };
      const { heard, exercise } = attempt(
        random.pick(choices),
        { mistakes, jitterMs: 5 },
        GOOD_LISTENER,
        seed,
      );
      const report = writeReport({ ...heard, onsetSdMs: 2 }, matchNotes(heard, exercise));
      const { said, ...words } = report.words;
      expect(said).toBeDefined();
      expect(tellReport({ ...report, words }, ENGLISH).verdict).toBe(
        tellWords(report.words, ENGLISH).verdict,
      );
    }
  });
});
