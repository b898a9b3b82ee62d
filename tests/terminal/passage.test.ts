import { mkdtempSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { serialize } from 'musicxml-io';
import { describe, expect, it } from 'vitest';
import { buildExercise } from '../../src/engine/index.ts';
import { encodePassages } from '../../src/io/scores/index.ts';
import { parseCommand } from '../../src/terminal/arguments.ts';
import type { Command } from '../../src/terminal/commands.ts';
import { exercises } from '../../src/terminal/exercises.ts';
import { passageIn } from '../../src/terminal/passage.ts';
import { inventedPassages } from '../support/passages.ts';
import { asMusicXml } from '../support/scores.ts';

const FOLDER = mkdtempSync(join(tmpdir(), 'evenfall-passages-'));
const [ONE, TWO] = inventedPassages(2);
const written = (name: string, content: string): string => {
  const path = join(FOLDER, name);
  writeFileSync(path, content);
  return path;
};
const SCORE = written('two.musicxml', serialize(asMusicXml(TWO!)));
const BOTH = written('both.json', encodePassages([ONE!, TWO!]));

const parse = async (...words: readonly string[]): Promise<Command> =>
  parseCommand(words, await passageIn(words));

describe('--exercise FILE', () => {
  it('is what was played, for the hands that it is written for or those that are said', async () => {
    const whole = await parse('analyse', 'a.wav', '--exercise', SCORE);
    expect(whole).toMatchObject({
      kind: 'analyse',
      choice: { form: 'passage', hands: 'together', key: TWO!.key },
    });
    const right = await parse(
      'analyse',
      'a.wav',
      '--exercise',
      SCORE,
      '--hands',
      'right',
      '--stretch',
      '1-4',
    );
    expect(right).toMatchObject({
      choice: { hands: 'right' },
      intention: { stretch: { fromStep: 0, toStep: 3 } },
    });
  });

  it('is cut by --bars, and one of several by --passage', async () => {
    const cut = await parse('analyse', 'a.wav', '--exercise', SCORE, '--bars', '2-3');
    expect(cut.kind === 'analyse' && cut.choice?.passage?.bars.length).toBe(2);
    const second = await parse('analyse', 'a.wav', '--exercise', BOTH, '--passage', '2');
    expect(second.kind === 'analyse' && second.choice).toEqual(buildExercise(TWO!).choice);
  });

  it('is shown note by note, without fingers where they are left open', async () => {
    const command = await parse('exercises', '--exercise', SCORE);
    const lines: string[] = [];
    const console = { out: (text: string) => lines.push(text), paper: { columns: 80, unicode: true } };
    if (command.kind !== 'exercises') throw new Error('another command');
    exercises(command, console as unknown as Parameters<typeof exercises>[1]);
    expect(lines.join('\n')).toContain(TWO!.passage!.title);
    expect(lines.join('\n')).not.toContain('null');
  });

  const wrong: readonly (readonly [string, readonly string[], RegExp, number])[] = [
    [
      'a file that is not there',
      ['--exercise', join(FOLDER, 'none.mid')],
      /none\.mid: There is no such file/,
      3,
    ],
    ['a folder', ['--exercise', FOLDER], /It is a folder/, 3],
    ['no music', ['--exercise', written('a.txt', 'hello')], /a\.txt: It holds no music/, 3],
    ['a passage that is not in it', ['--exercise', BOTH, '--passage', '3'], /holds 2 passages/, 2],
    ['bars that are none', ['--exercise', SCORE, '--bars', 'x'], /--bars "x" are no bars/, 2],
    ['bars that are not in it', ['--exercise', SCORE, '--bars', '90-91'], /no bars 90 to 91/, 3],
    ['another exercise beside it', ['--exercise', SCORE, '--key', 'C major'], /leave --key out/, 2],
    ['bars without it', ['--bars', '2'], /--bars goes with --exercise/, 2],
    [
      'a hand for which nothing is written',
      ['--exercise', BOTH, '--hands', 'left'],
      /--hands left: there is nothing/,
      2,
    ],
  ];
  for (const [name, words, why, exitCode] of wrong)
    it(`says what is wrong with ${name}`, async () => {
      const thrown: unknown = await parse('analyse', 'a.wav', ...words).catch((error: unknown) => error);
      expect(String(thrown)).toMatch(why);
      expect(thrown).toMatchObject({ exitCode });
    });
});
