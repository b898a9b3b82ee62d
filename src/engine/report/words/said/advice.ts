import * as v from 'valibot';
import { listOf, told, type Shape } from '../../../base/shapes.ts';
import { INTENTION, RHYTHM } from '../../../exercise/index.ts';
import { HAND } from '../../../exercise/types.ts';
import { NOTICE } from '../../../notices/index.ts';
import { COUNT, NAME, SIGNATURE, TASK } from './places.ts';

/** What to do next, as values: each can be played as it stands. */

const asks = <Name extends string, Values extends v.ObjectEntries>(step: Name, values: Values) =>
  v.object({ step: v.literal(step), ...values });
const IN_PAIRS = v.picklist(['long-short', 'short-long']);

export const ADVICE = v.variant('step', [
  asks('record-again', { finding: told('what to change', v.nullable(NOTICE)) }),
  asks('check-the-choice', {}),
  asks('switch-or-again', {}),
  asks('go-on-or-the-other', {}),
  asks('wait-then-begin', {}),
  asks('straight-through', { task: TASK }),
  asks('until-right', {
    task: TASK,
    note: told('until this sounds every time; null: until it is right', v.nullable(NAME)),
  }),
  asks('one-note-more', { task: TASK }),
  asks('five-times-right', { task: TASK }),
  asks('cadence-alone', { task: TASK, note: NAME }),
  asks('say-the-note', { task: TASK, note: NAME }),
  asks('say-the-signature', { signature: SIGNATURE, task: TASK, note: NAME }),
  asks('position-as-a-chord', { names: listOf(NAME), task: TASK }),
  asks('shape-silently', { task: TASK }),
  asks('middle-of-the-key', { task: TASK }),
  asks('these-keys-only', { task: TASK }),
  asks('go-on', { task: TASK }),
  asks('cross-early', { task: TASK }),
  asks('cross-in-rhythm', { task: TASK, rhythm: IN_PAIRS }),
  asks('one-way-first', { task: TASK }),
  asks('each-hand-alone', { task: TASK }),
  asks('next-shape', { task: TASK }),
  asks('think-of-the-way-down', { task: TASK, chords: v.boolean() }),
  asks('the-other-rhythm', { task: TASK, rhythm: IN_PAIRS }),
  asks('rest', {}),
  asks('rhythms', { task: TASK }),
  asks('slower-with-the-pulse', { task: TASK }),
  asks('listen-to-the-other', { task: TASK, hand: HAND }),
  asks('stop-on-each-beat', { task: TASK }),
  asks('fall-as-one', { task: TASK, last: v.nullable(v.picklist(['lowest', 'inner', 'highest'])) }),
  asks('at-the-tempo', { task: TASK }),
  asks('practise', {
    task: TASK,
    rhythm: RHYTHM,
    times: COUNT,
    before: told('now with what comes before it', v.boolean()),
    rung: v.exactOptional(
      told(
        'of a ladder of tempi: the next rung, or two back from where it is uneven',
        v.picklist(['up', 'back']),
      ),
    ),
    intention: v.exactOptional(
      told('all of how it is meant; in earlier reports only how often, and the rhythm', INTENTION),
    ),
  }),
  asks('now-the-whole', { task: TASK }),
  asks('same-tempo-with-the-pulse', { task: TASK }),
  asks('if-meant', {}),
  asks('the-same-again', {
    inARow: told('so many in a row make it ready; null: not said', v.nullable(COUNT)),
    days: v.exactOptional(told('… where they lie on so many days', COUNT)),
  }),
  asks('on-another-day', {}),
  asks('make-it-stay', {}),
  asks('other-hand', { hand: HAND, task: TASK }),
  asks('hands-together', { task: TASK, other: HAND }),
  asks('faster-or-next-key', { task: TASK, nextKey: NAME }),
]);
/** One concrete thing to do next. */
export type Advice = Shape<typeof ADVICE>;
export type AdviceName = Advice['step'];
/** The values of one next step. */
export type Asking<Name extends AdviceName> = Extract<Advice, { readonly step: Name }>;
