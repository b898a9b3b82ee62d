import { describe, expect, it } from 'vitest';
import {
  assessHeard,
  buildExercise,
  copiesMeant,
  isWhole,
  practisedExercise,
  stretchIn,
} from '../../../src/engine/index.ts';
import type { ExerciseChoice, Report } from '../../../src/engine/index.ts';
import { createRandom } from '../../support/random.ts';
import { STUDENT_DEFAULTS } from '../../support/student/knobs.ts';
import { perform } from '../../support/student/perform.ts';
import { heardAsPlayed } from '../../bench/truth-report.ts';
import { truthOf } from '../../bench/verdict/truth.ts';
import { ROWS, told } from '../report/words/rows.ts';
import { tell } from '../report/words/scenes.ts';

/** Each situation, told to somebody who aims at a tempo, too: only then is "the same again" at a tempo that somebody chose. */
const AIM_BPM = 76;
const TOLD = ROWS.flatMap((row) => [told(row), tell(row.playing, { targetBpm: AIM_BPM, ...row.options })]);

/** Next steps after which nothing is played, or of which nobody knows yet what it should be. */
const NOT_PLAYED = [
  'check-the-choice',
  'go-on-or-the-other',
  'on-another-day',
  'record-again',
  'rest',
  'switch-or-again',
];
/** The same again, of somebody who aims at no tempo: there is nothing to set up. */
const AS_BEFORE = ['if-meant', 'make-it-stay', 'the-same-again', 'wait-then-begin'];

type Step = NonNullable<Report['words']['practice']>;

/** Somebody does as the next step says, and is listened to with what was set up; `earlier`: what was played before. */
function done(
  choice: ExerciseChoice,
  { intention, tempoBpm }: Step,
  earlier: Report[],
  seed: number,
): Report {
  const meant = intention!;
  const repeats = copiesMeant(meant, stretchIn(buildExercise(choice), meant).length);
  const played = practisedExercise(choice, { intention: meant, repeats, longToShort: 3 });
  const knobs = { ...STUDENT_DEFAULTS, bpm: tempoBpm, jitterMs: 4 };
  const performance = perform(played, knobs, createRandom(seed));
  const truth = truthOf({ performance, spec: { seed, piano: 'dev', exercise: choice } });
  const assessment = assessHeard(heardAsPlayed(truth), choice, {
    intention: meant,
    targetBpm: tempoBpm,
    earlier,
  });
  if (assessment.kind !== 'report') throw new Error(assessment.kind);
  return assessment.report;
}

function choiceAfter({ key, form, hands, octaves, minorScale }: ExerciseChoice, step?: Step): ExerciseChoice {
  return {
    key,
    form,
    hands: step?.hands ?? hands,
    octaves,
    ...(minorScale !== undefined && { minorScale }),
  };
}

describe('a next step that is set up, played well and judged', () => {
  /** What several situations lead to is played once. */
  const judged = new Map(
    TOLD.filter(({ words }) => words.practice?.intention !== undefined).map((report) => [
      JSON.stringify([choiceAfter(report.exercise), report.words.practice]),
      report,
    ]),
  );

  it.each([...judged.values()].map((report, at) => [report.words.nextStep, report, at] as const))(
    'comes back as done, and leads to the whole: %s',
    (_, report, seed) => {
      let step = report.words.practice;
      let choice = choiceAfter(report.exercise);
      const earlier: Report[] = [];
      for (let turn = 0; ; turn++) {
        expect(turn).toBeLessThan(8);
        choice = choiceAfter(choice, step);
        const after = done(choice, step!, earlier, seed + 100 * turn);
        expect(after.words.said?.statements[0], after.words.verdict).toMatchObject({
          situation: 'practised',
          outcome: 'done',
        });
        if (isWhole(step!.intention!)) break;
        earlier.push(after);
        step = after.words.practice;
      }
    },
  );

  it('is every one after which something is to be played', () => {
    const without = TOLD.filter(({ words }) => words.practice?.intention === undefined);
    const names = (some: readonly Report[]) => new Set(some.map(({ words }) => words.said!.advice.step));
    const aimed = names(without.filter(({ targetBpm }) => targetBpm !== null));
    expect([...aimed].filter((name) => !NOT_PLAYED.includes(name))).toEqual([]);
    expect([...names(without)].filter((name) => ![...NOT_PLAYED, ...AS_BEFORE].includes(name))).toEqual([]);
  });
});
