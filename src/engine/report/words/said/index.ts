import * as v from 'valibot';
import { COUNT } from './places.ts';
import { listOf, told, type Shape } from '../../../base/shapes.ts';
import { ADVICE } from './advice.ts';
import { IMPROVED, STATEMENT } from './statements.ts';

export type * from './advice.ts';
export type * from './places.ts';
export type * from './statements.ts';

const FIELDS = v.object({
  statements: told('all that holds, the gravest first', v.pipe(listOf(STATEMENT), v.minLength(1))),
  named: told(
    'so many of them are in the sentence; the rest is counted there and listed below',
    v.picklist([1, 2]),
  ),
  notes: told(
    'how many of the expected notes are right: what is said first',
    v.object({ right: COUNT, of: COUNT }),
  ),
  opening: told(
    'whether the right notes are named first: every one, every one that could be told, every one of the part played, some of them, or nothing of it',
    v.picklist(['every-note', 'every-sure-note', 'so-far', 'some-notes', 'none']),
  ),
  restIsEven: told('no other step came audibly early or late', v.boolean()),
  improved: v.exactOptional(told('the named trouble, clearly less than last time', IMPROVED)),
  advice: ADVICE,
  dotted: v.exactOptional(told('three notes make a beat: tempi are said of a dotted one', v.literal(true))),
});
export interface Said extends Shape<typeof FIELDS> {}

/** All that is said of one attempt, without any language. By its name alone: written out, the type of a report would be too long. */
export const SAID: v.GenericSchema<unknown, Said> = FIELDS;
