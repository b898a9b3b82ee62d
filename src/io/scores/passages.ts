import * as v from 'valibot';
import { OWN_PASSAGE } from '../../engine/index.ts';
import type { ExerciseChoice } from '../../engine/index.ts';
import { checked, parseJson } from '../check/index.ts';
import { playable } from './cut.ts';
import { ScoreError } from './types.ts';

const FORMAT = 'evenfall-passages';
const MOST_PASSAGES = 200;

/** Passages of one's own as one file, published as passages.schema.json (`npm run schemas`). */
export const PASSAGES = v.pipe(
  v.object({
    format: v.literal(FORMAT),
    version: v.literal(1),
    passages: v.pipe(
      v.array(
        v.object({
          key: v.pipe(v.string(), v.regex(/^[A-G](#|b)? (major|minor)$/), v.description('e.g. "F# minor"')),
          passage: OWN_PASSAGE,
        }),
      ),
      v.minLength(1),
      v.maxLength(MOST_PASSAGES),
    ),
  }),
  v.metadata({
    title: 'Evenfall passages, version 1',
    description:
      'Passages of one’s own, up to 16 bars each. Beats are quarter notes from the beginning of the first bar. A file of version 1 may gain fields; none is taken away or changes its meaning.',
  }),
);

/** Any version: enough to say that it is newer. */
const HEAD = v.object({ format: v.literal(FORMAT), version: v.pipe(v.number(), v.integer(), v.minValue(1)) });

/** Passages → the file that holds them. */
export function encodePassages(choices: readonly ExerciseChoice[]): string {
  const passages = choices.flatMap(({ key, passage }) => (passage === undefined ? [] : [{ key, passage }]));
  return `${JSON.stringify({ format: FORMAT, version: 1, passages }, null, 2)}\n`;
}

/** Such a file → the passages in it. Throws ScoreError where it is none, or one of them is not in order. */
export function fromPassages(bytes: Uint8Array): readonly ExerciseChoice[] {
  const value = parseJson(bytes);
  const head = v.safeParse(HEAD, value);
  if (!head.success) throw new ScoreError({ trouble: 'no-music' });
  if (head.output.version > 1) throw new ScoreError({ trouble: 'music-newer' });
  const found = checked(PASSAGES, value);
  if (!('value' in found)) throw new ScoreError({ trouble: 'music-damaged' });
  return found.value.passages.map(({ key, passage }) => playable(key, passage));
}
