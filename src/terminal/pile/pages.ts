import type { Language } from '../../engine/index.ts';
import { MESSAGES } from '../language/index.ts';
import type { Review } from '../../io/review/index.ts';
import type { Pile, PileAttempt, Recording } from './types.ts';
import { leftOut } from './left-out.ts';
import { summary } from './lines.ts';
import { changedWords, clock, exerciseOf, placeOf, tempoOf, verdictOf } from './words.ts';

/** A file to write, below the folder that was asked for. */
export interface Page {
  readonly name: string;
  readonly html: string;
}

/** What the summary page shows. */
export type PileSummary = ReturnType<typeof summaryOf>;

/** What writes the pages. */
export interface PageWriters {
  readonly writeSummary: (pile: PileSummary) => Promise<string>;
  readonly writePage: (review: Review, language: Language) => Promise<string>;
}

/** A pile → its pages: index.html, and one for each recording with an attempt in it, on which the attempts are drawn. */
export async function* pagesOf(
  pile: Pile,
  madeMs: number,
  writers: PageWriters,
  language: Language = 'en',
): AsyncGenerator<Page> {
  const numbers = numbered(pile);
  yield { name: 'index.html', html: await writers.writeSummary(summaryOf(pile, numbers, language)) };
  for (const { name, attempts } of pile.students) {
    for (const [recording, number] of numbers) {
      const own = attempts.filter((one) => one.recording === recording && one.found.report !== null);
      if (own.length === 0) continue;
      yield {
        name: pageName(number),
        html: await writers.writePage(
          sent(name === '' ? MESSAGES[language].desk.noName : name, own, madeMs),
          language,
        ),
      };
    }
  }
}

/** The names of files come from outside, so pages are called by numbers. */
const pageName = (number: number): string => `recording-${number}.html`;

function numbered({ students }: Pile): ReadonlyMap<Recording, number> {
  const attempts = students.flatMap((student) => student.attempts);
  const recordings = new Set(
    attempts.filter(({ found }) => found.report !== null).map(({ recording }) => recording),
  );
  return new Map([...recordings].map((recording, index) => [recording, index + 1]));
}

function summaryOf(pile: Pile, numbers: ReadonlyMap<Recording, number>, language: Language) {
  const { students } = pile;
  const { desk: t, beatsAMinute } = MESSAGES[language];
  return {
    title: t.title,
    notListed: t.notListed,
    language,
    summary: summary(pile, language),
    students: students.map(({ name, attempts }) => ({
      name: name === '' ? t.noName : name,
      attempts: attempts.map((attempt) => {
        const { recording, found } = attempt;
        const tempo = tempoOf(attempt);
        const number = numbers.get(recording);
        return {
          exercise: exerciseOf(attempt, language),
          verdict: verdictOf(attempt, language),
          tempo: tempo === null ? '' : beatsAMinute(tempo.toFixed(0)),
          changed: changedWords(attempt, language),
          where: placeOf(attempt, language),
          page: found.report === null || number === undefined ? null : pageName(number),
        };
      }),
    })),
    without: leftOut(pile, language).map(({ file, reason }) => `${file}: ${reason}`),
  };
}

/** Attempts of a recording as they would be sent, without sound: the page of a review draws them. */
function sent(student: string, attempts: readonly PileAttempt[], madeMs: number): Review {
  return {
    kind: 'attempts',
    id: 'desk',
    madeMs,
    student,
    teacher: '',
    words: '',
    assignment: [],
    attempts: attempts.flatMap(({ recording, found }, index) =>
      found.report === null
        ? []
        : [
            {
              id: String(index),
              whenMs: recording.whenMs,
              name: `${recording.name} ${clock(found.startSec)}–${clock(found.endSec)}`,
              report: found.report,
              recognisedAs: null,
              sound: null,
              remarks: [],
              corrections: [],
            },
          ],
    ),
  };
}
