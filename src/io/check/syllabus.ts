import * as v from 'valibot';
import { SYLLABUS } from '../../engine/index.ts';
import type { Syllabus } from '../../engine/index.ts';
import type { Trouble } from '../troubles/index.ts';
import { checked } from './json.ts';

/** Any version: enough to say that it is newer. */
const HEAD = v.object({
  format: v.literal('evenfall-syllabus'),
  version: v.pipe(v.number(), v.integer(), v.minValue(1)),
});

/** A value out of JSON → the levels in it, wholly; or why there are none. It may be anything, made by anybody. */
export function readSyllabus(value: unknown): Syllabus | Trouble {
  const head = v.safeParse(HEAD, value);
  if (!head.success) return { trouble: 'no-levels' };
  if (head.output.version > 1) return { trouble: 'levels-newer' };
  const found = checked(SYLLABUS, value);
  if ('value' in found) return found.value;
  return { trouble: 'levels-damaged', place: (v.getDotPath(found.issue) ?? '').slice(0, 300) };
}
