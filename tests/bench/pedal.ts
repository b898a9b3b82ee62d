/**
 * Whether a pedal held throughout is told, and never told where none is: `npm run bench:pedal [-- --count 60 --piano test|dev --list]`.
 * Half of the attempts hold it, the others play connected, far over, detached and mixed, on dampers of half to twice the usual time in
 * rooms to 0.6 s, all forms of the standard set, one hand and both. Prints a table and never fails.
 */
import { parseArgs } from 'node:util';
import { assessHeard, listenAndKeep } from '../../src/engine/index.ts';
import { render } from '../support/render.ts';
import { pedalAttempt } from './pedal-attempts.ts';
import { table } from './table.ts';

const { values } = parseArgs({
  options: {
    count: { type: 'string', default: '60' },
    piano: { type: 'string', default: 'test' },
    list: { type: 'boolean', default: false },
  },
});

const piano = values.piano === 'dev' ? 'dev' : 'test';
const told = new Map<string, { of: number; told: number }>();
for (let index = 0; index < Number(values.count); index++) {
  const { treatment, spec } = pedalAttempt(index, piano);
  const { heard, sound } = listenAndKeep(await render(spec));
  const assessment = assessHeard(heard, spec.exercise, {}, sound);
  const isTold = assessment.kind === 'report' && assessment.report.measures.pedalHeld === true;
  const { form, hands } = spec.exercise;
  const row = treatment === 'pedal held' ? `${treatment}, ${form}` : treatment;
  const before = told.get(row) ?? { of: 0, told: 0 };
  told.set(row, { of: before.of + 1, told: before.told + (isTold ? 1 : 0) });
  if (values.list && isTold !== (treatment === 'pedal held'))
    console.log(`#${index} ${treatment}, ${form}, ${hands}`);
}

const rows = [...told].sort(([a], [b]) => a.localeCompare(b));
console.log(
  table(
    ['how the keys were treated', 'attempts', 'pedal told'],
    rows.map(([row, count]) => [row, String(count.of), String(count.told)]),
  ),
);
