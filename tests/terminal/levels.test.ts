import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, describe, expect, it } from 'vitest';
import { buildExercise, listenAndKeep, USUAL_GOALS } from '../../src/engine/index.ts';
import type { Assessment, ExerciseChoice, Syllabus } from '../../src/engine/index.ts';
import { assessBy, openLevels } from '../../src/terminal/levels.ts';
import { renderPerformance } from '../support/render.ts';
import { createRandom } from '../support/random.ts';
import { STUDENT_DEFAULTS } from '../support/student/knobs.ts';
import { perform } from '../support/student/perform.ts';

const folder = mkdtempSync(join(tmpdir(), 'levels-'));
afterAll(() => rmSync(folder, { recursive: true }));

function written(value: unknown): string {
  const file = join(folder, 'levels.json');
  writeFileSync(file, typeof value === 'string' ? value : JSON.stringify(value));
  return file;
}

describe('a file of levels', () => {
  it('is what the page saves, or none at all', async () => {
    expect(await openLevels(null)).toBeNull();
    expect(await openLevels(written(USUAL_GOALS.syllabus))).toEqual(USUAL_GOALS.syllabus);
  });

  it.each([
    ['is no JSON', 'Level 1: C major', /levels\.json: .*holds no levels/],
    ['is something else', { format: 'evenfall-review' }, /levels\.json: .*holds no levels/],
    ['is of a later version', { ...USUAL_GOALS.syllabus, version: 2 }, /levels\.json: .*newer/],
    [
      'asks for a key that is none',
      { ...USUAL_GOALS.syllabus, levels: [{ name: '1', keys: ['H major'] }] },
      /levels\.json: /,
    ],
  ])('that %s is refused', async (_, value, why) => {
    await expect(openLevels(written(value))).rejects.toThrow(why);
  });

  it('that is not there is refused', async () => {
    await expect(openLevels(join(folder, 'none.json'))).rejects.toThrow(/none\.json/);
  });
});

describe('levels', async () => {
  const choice: ExerciseChoice = { key: 'C major', form: 'scale', hands: 'right', octaves: 1 };
  const [level] = USUAL_GOALS.syllabus.levels;
  const asking = (leastBpm: number): Syllabus => ({
    ...USUAL_GOALS.syllabus,
    levels: [{ ...level!, asks: level!.asks.map((ask) => ({ ...ask, leastBpm })) }],
  });
  const performance = perform(
    buildExercise(choice),
    { ...STUDENT_DEFAULTS, bpm: 90, jitterMs: 3 },
    createRandom(5),
  );
  const rendered = await renderPerformance(performance, { seed: 5, piano: 'dev', exercise: choice });
  const { heard, sound } = listenAndKeep(rendered);
  const situationOf = (levels: Syllabus | null, chosen: ExerciseChoice | null): string => {
    const told: Assessment = assessBy(levels, heard, chosen, {}, sound);
    return told.kind === 'report' ? told.report.words.situation : told.kind;
  };

  it.each<readonly [string, ExerciseChoice | null]>([
    ['that was chosen', choice],
    ['that was recognised', null],
  ])('say how fast an exercise is to be %s', (_, chosen) => {
    expect(situationOf(asking(140), chosen)).toBe('under-tempo');
    expect(situationOf(asking(60), chosen)).not.toBe('under-tempo');
    expect(situationOf(null, chosen)).not.toBe('under-tempo');
  });
});
