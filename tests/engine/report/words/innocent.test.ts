import { describe, expect, it } from 'vitest';
import { assess } from '../../../../src/engine/index.ts';
import type { Report } from '../../../../src/engine/index.ts';
import { matchNotes } from '../../../../src/engine/match/index.ts';
import { writeReport } from '../../../../src/engine/report/index.ts';
import { RULES } from '../../../../src/engine/report/words/index.ts';
import type { SituationName } from '../../../../src/engine/report/words/index.ts';
import { render } from '../../../support/render.ts';
import { createRandom } from '../../../support/random.ts';
import { attempt } from '../../match/simulated.ts';
import { NEAR, PLAYERS } from './innocents.ts';
import type { Player } from './innocents.ts';

/*
 * Attempts without a fault: nothing may be said against them, in the sentence or in the list. Rendered on the piano that nothing was
 * trained or tuned on; and, since no second such piano is in the registries, played note lists with the error that the ear was
 * measured to have (onsets 2 ms).
 */

/** What is said of a report that blames somebody, or names what was not meant. */
function saidAgainst({ words }: Report): readonly SituationName[] {
  return words
    .said!.statements.map(({ situation }) => situation)
    .filter((situation) => !['progress', 'asked'].includes(RULES[situation].kind));
}

const names = Object.keys(RULES) as SituationName[];
const player = (name: string): Player | undefined => PLAYERS.find((one) => one.name === name);

describe('every sentence that says something against somebody', () => {
  const against = names.filter((name) => !['progress', 'asked', 'practice'].includes(RULES[name].kind));

  it.each(against)('%s: somebody comes near it and is innocent of it', (name) => {
    expect(NEAR[name], `who is near to "${name}" and innocent? Add a player`).not.toBeUndefined();
    for (const near of NEAR[name]!) expect(player(near), near).not.toBeUndefined();
  });

  it('and no player is there for nothing', () => {
    const near = new Set(Object.values(NEAR).flat());
    expect(PLAYERS.map(({ name }) => name).filter((name) => !near.has(name))).toEqual([]);
  });
});

describe('an attempt without a fault is accused of none', () => {
  it.each(PLAYERS.filter(({ asList }) => asList !== true))(
    'rendered: $name',
    async ({ exercise, student, home = {}, pedal = false }) => {
      const { channels, sampleRateHz } = await render({
        seed: 5,
        piano: 'test',
        exercise,
        student: { jitterMs: 8, ...student },
        home,
      });
      const assessment = assess({ channels, sampleRateHz }, exercise);
      if (assessment.kind !== 'report') throw new Error(assessment.kind);
      const { report } = assessment;
      const said = saidAgainst(report).filter((situation) => !(pedal && situation === 'pedal-held'));
      expect(said, report.words.verdict).toEqual([]);
    },
  );

  it.each(PLAYERS)('as a note list, many times: $name', ({ name, exercise, student, before = [] }) => {
    const reports = Array.from({ length: 40 }, (_unused, seed) => {
      const earlier: Report[] = [];
      for (const [turn, knobs] of [...before, student].entries()) {
        const { heard, exercise: built } = attempt(
          exercise,
          { jitterMs: 8, ...knobs },
          { onsetSdMs: 2, hearsReleases: createRandom(seed).chance(0.5) },
          1000 * name.length + 100 * turn + seed,
        );
        const options = { earlier: [...earlier], sitting: earlier.length };
        earlier.push(writeReport(heard, matchNotes(heard, built), options));
      }
      return earlier.at(-1)!;
    }).filter((report) => saidAgainst(report).length > 0);
    expect(reports.map(({ words }) => words.verdict)).toEqual([]);
  });
});
