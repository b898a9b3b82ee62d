import { describe, expect, it } from 'vitest';
import { assessHeard, practisedExercise } from '../../../src/engine/index.ts';
import type { ExerciseChoice, Report } from '../../../src/engine/index.ts';
import { createRandom } from '../../support/random.ts';
import { STUDENT_DEFAULTS } from '../../support/student/knobs.ts';
import { perform } from '../../support/student/perform.ts';
import { heardAsPlayed } from '../../bench/truth-report.ts';
import { truthOf } from '../../bench/verdict/truth.ts';
import { ROWS } from '../report/words/rows.ts';
import { tell } from '../report/words/scenes.ts';

const TOLD = ROWS.map(({ playing, options }) => tell(playing, options));

/** Next steps that set nothing that could be judged: to the sound, to the choice, a whole at a tempo, other hands, or without keys. */
const NOT_JUDGED = [
  'at-the-tempo',
  'cadence-alone',
  'check-the-choice',
  'each-hand-alone',
  'faster-or-next-key',
  'fall-as-one',
  'go-on-or-the-other',
  'hands-together',
  'if-meant',
  'make-it-stay',
  'one-note-more',
  'other-hand',
  'position-as-a-chord',
  'record-again',
  'rest',
  'same-tempo-with-the-pulse',
  'say-the-signature',
  'shape-silently',
  'switch-or-again',
  'the-same-again',
  'wait-then-begin',
];

type Step = NonNullable<Report['words']['practice']>;

/** Somebody does as the next step says, and is listened to with what was set up. */
function done(choice: ExerciseChoice, { intention, tempoBpm }: Step, seed: number): Report {
  const played = practisedExercise(choice, {
    intention: intention!,
    repeats: intention!.times,
    longToShort: 3,
  });
  const knobs = { ...STUDENT_DEFAULTS, bpm: tempoBpm, jitterMs: 4 };
  const performance = perform(played, knobs, createRandom(seed));
  const truth = truthOf({ performance, spec: { seed, piano: 'dev', exercise: choice } });
  const assessment = assessHeard(heardAsPlayed(truth), choice, {
    intention: intention!,
    targetBpm: tempoBpm,
  });
  if (assessment.kind !== 'report') throw new Error(assessment.kind);
  return assessment.report;
}

function choiceOf({ exercise: { key, form, hands, octaves } }: Report): ExerciseChoice {
  return { key, form, hands, octaves };
}

describe('a next step that is set up, played well and judged', () => {
  const judged = TOLD.filter(({ words }) => words.practice?.intention !== undefined);

  it.each(judged.map((report, at) => [report.words.nextStep, report, at] as const))(
    'comes back as done, and leads to the whole: %s',
    (_, report, seed) => {
      let step = report.words.practice;
      for (let turn = 0; step?.intention !== undefined; turn++) {
        expect(turn).toBeLessThan(8);
        const after = done(choiceOf(report), step, seed + 100 * turn);
        expect(after.words.said?.statements[0], after.words.verdict).toMatchObject({
          situation: 'practised',
          outcome: 'done',
        });
        step = after.words.practice;
      }
      expect(step?.fromStep).toBe(0);
    },
  );

  it('can be judged, or is one of those that are not yet', () => {
    const without = TOLD.filter(({ words }) => words.practice?.intention === undefined);
    const names = new Set(without.map(({ words }) => words.said!.advice.step));
    expect([...names].filter((name) => !NOT_JUDGED.includes(name))).toEqual([]);
  });
});
