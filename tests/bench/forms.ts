/**
 * How each form beyond the set is heard when it was chosen: `npm run bench:forms [-- --piano test|dev --each 8 --forms cadence,double
 * --workers 2]`. `--each` attempts of every form, or of those whose names begin so; the same every time. An attempt takes about
 * 1.2 s of a core, so that 40 of all forms take some ten minutes of two. Prints a table and never fails.
 */
import { parseArgs } from 'node:util';
import type { PianoName } from '../support/render.ts';
import type { AttemptRecord } from './assess-attempt.ts';
import { MORE_FORMS } from './attempts.ts';
import { percent, sum } from './errors.ts';
import type { Records } from './errors.ts';
import { addCounts, fMeasure } from './note-score.ts';
import { runAll } from './pool.ts';
import { fixed, table } from './table.ts';
import type { Task } from './worker.ts';

const { values } = parseArgs({
  options: {
    piano: { type: 'string', default: 'test' },
    each: { type: 'string', default: '8' },
    forms: { type: 'string', default: '' },
    workers: { type: 'string', default: '2' },
  },
});
const begun = values.forms.split(',');
const forms = MORE_FORMS.filter((form) => begun.some((name) => form.startsWith(name)));
const tasks = forms.flatMap((form) =>
  Array.from({ length: Number(values.each) }, (_, index): Task => ({
    set: 'forms',
    piano: values.piano as PianoName,
    index,
    form,
    ideal: false,
  })),
);
const records = await runAll<Task, AttemptRecord>('worker.ts', tasks, Math.max(1, Number(values.workers)));

const accused = ({ verdicts }: AttemptRecord): number =>
  verdicts.rightCalledWrong + verdicts.rightCalledMissed + verdicts.falseExtras;
const faults = ({ verdicts }: AttemptRecord): number => verdicts.wrong + verdicts.missed;
const extras = ({ verdicts }: AttemptRecord): number =>
  Object.values(verdicts.extras).reduce((all, { there }) => all + there, 0);

function row(name: string, own: Records): readonly string[] {
  const faultless = own.filter((record) => faults(record) + extras(record) === 0);
  const there = sum(own, faults);
  const found = sum(own, ({ verdicts }) => verdicts.wrongFound + verdicts.missedFound);
  const asked = sum(own, ({ verdicts }) => verdicts.faultsAsked);
  return [
    name,
    String(own.length),
    fixed(fMeasure(addCounts(own.map(({ within }) => within[50]))), 4),
    fixed(fMeasure(addCounts(own.map(({ final }) => final[50]))), 4),
    `${faultless.filter((record) => accused(record) > 0).length} of ${faultless.length}`,
    percent(
      sum(own, accused),
      sum(own, ({ verdicts }) => verdicts.right),
      2,
    ),
    percent(
      sum(own, ({ verdicts }) => verdicts.rightUnsure),
      sum(own, ({ verdicts }) => verdicts.right),
      2,
    ),
    `${found} of ${there}`,
    String(asked),
    String(there - found - asked),
  ];
}

const by = (hands: 'one' | 'both') =>
  records.filter(({ labels }) => (labels.hands === 'together') === (hands === 'both'));
console.log(
  table(
    [
      'form',
      'attempts',
      'F ±50 blind',
      'F ±50',
      'faultless attempts accused',
      'notes accused',
      'left unsure',
      'wrong and missed found',
      'asked about',
      'passed over',
    ],
    [
      ...forms.map((form) =>
        row(
          form,
          records.filter(({ labels }) => labels.form === form),
        ),
      ),
      row('all, one hand', by('one')),
      row('all, both hands', by('both')),
    ],
  ),
);
