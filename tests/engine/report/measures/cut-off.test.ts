import { describe, expect, it } from 'vitest';
import { assess } from '../../../../src/engine/index.ts';
import type { ExerciseChoice, Report } from '../../../../src/engine/index.ts';
import { learnPiano } from '../../../../src/engine/listen/index.ts';
import { render } from '../../../support/render.ts';

const SCALE: ExerciseChoice = { key: 'A major', form: 'scale', hands: 'right', octaves: 2 };

/** A scale on the development piano, played unevenly loud and recorded so many dB over full scale → what comes of it. */
async function assessed(clipDb: number | null) {
  const sound = await render({
    seed: 10,
    piano: 'dev',
    exercise: SCALE,
    student: { loudnessJitterDb: 3 },
    home: { clipDb },
  });
  const assessment = assess(sound, SCALE);
  if (assessment.kind !== 'report') throw new Error(assessment.kind);
  return assessment;
}

const LEVELS = ['loudnessEvennessDb', 'thumbAccentDb', 'endsFadeDb'] as const;
const levelsIn = ({ measures }: Report) => LEVELS.map((name) => measures[name]);

describe('levels of a sound that is cut off', () => {
  it('a little are measured as they are without it', async () => {
    const [whole, cut] = await Promise.all([assessed(null), assessed(3)]);
    expect(cut.heard.findings.map(({ kind }) => kind)).toContain('clipping');
    for (const [at, figure] of levelsIn(cut.report).entries()) {
      const before = levelsIn(whole.report)[at]!;
      if (!('value' in figure) || !('value' in before)) throw new Error(`${LEVELS[at]} is not measured`);
      expect(Math.abs(figure.value - before.value), LEVELS[at]).toBeLessThan(0.3);
    }
    expect(learnPiano(cut.heard)).not.toBeNull();
  });

  it('so often that they are bent are not measured, and teach nothing of the piano', async () => {
    const { report, heard } = await assessed(12);
    for (const figure of levelsIn(report)) expect(figure).toMatchObject({ notice: { notice: 'levels-cut' } });
    expect(report.words.said!.statements.map(({ situation }) => situation)).toEqual(['at-the-criterion']);
    expect(learnPiano(heard)).toBeNull();
  });
});
