/**
 * Passages of one's own against their aims: `npm run bench:passages [-- --piano dev --count 30 --from 0]`.
 * Passages of our own invention, written to MusicXML by another library (musicxml-io), opened as a user opens them, played by students who
 * stray by 5 to 25 ms, rendered, and assessed. Notes against the true strokes within ±50 ms; time against the figure that a listener without
 * error would tell of the same strokes. Prints tables and never fails.
 */
import { parseArgs } from 'node:util';
import { serialize } from 'musicxml-io';
import { assess } from '../../src/engine/index.ts';
import { openPassages } from '../../src/io/scores/index.ts';
import { inventedPassage } from '../support/passages.ts';
import { render } from '../support/render.ts';
import type { PianoName } from '../support/render.ts';
import { asMusicXml } from '../support/scores.ts';
import { addCounts, fMeasure, matchToTruth } from './note-score.ts';
import type { NoteCounts } from './note-score.ts';
import { fixed, table } from './table.ts';
import { trueMeasures } from './truth-report.ts';

const { values } = parseArgs({
  options: {
    piano: { type: 'string', default: 'dev' },
    count: { type: 'string', default: '30' },
    from: { type: 'string', default: '0' },
  },
});
const WINDOW_MS = 50;
const first = Number(values.from);
const rows: string[][] = [];
const counts: { readonly hands: string; readonly notes: NoteCounts }[] = [];
const errors: number[] = [];
let accused = 0;
for (let index = first; index < first + Number(values.count); index++) {
  const invented = inventedPassage(index);
  const [choice] = await openPassages(new File([serialize(asMusicXml(invented))], 'passage.musicxml'));
  const jitterMs = 5 + 5 * (index % 5);
  const student = { bpm: invented.passage!.bpm!, jitterMs };
  const sound = await render({
    seed: 4200 + index,
    piano: values.piano as PianoName,
    exercise: choice!,
    student,
  });
  const result = assess(sound, choice!);
  if (result.kind !== 'report') {
    rows.push([String(index), choice!.hands, result.kind]);
    continue;
  }
  const { report } = result;
  const { notes: truth } = sound.truth;
  const matched = matchToTruth(report.notes, truth, WINDOW_MS).length;
  const notes = { matched, heard: report.notes.length, truth: truth.length };
  counts.push({ hands: choice!.hands, notes });
  const wrong = report.notes.filter(({ verdict }) => verdict !== 'correct').length + report.missed.length;
  accused += wrong;
  const [told, real] = [report.measures, trueMeasures(sound.truth)].map(({ evennessPercent }) =>
    'value' in evennessPercent ? evennessPercent.value : undefined,
  );
  if (told !== undefined && real !== undefined) errors.push(Math.abs(told - real));
  rows.push([
    String(index),
    choice!.hands,
    String(choice!.passage!.bars.length),
    String(truth.length),
    fixed(fMeasure(notes), 4),
    String(wrong),
    String(report.unsure.length),
    fixed(real, 2),
    fixed(told, 2),
  ]);
}
const head = [
  'passage',
  'hands',
  'bars',
  'notes',
  'F ±50',
  'accused',
  'unsure',
  'time, true %',
  'time, told %',
];
console.log(`${table(head, rows)}\n`);
const of = (both: boolean): NoteCounts =>
  addCounts(counts.filter(({ hands }) => (hands === 'together') === both).map(({ notes }) => notes));
const all = addCounts(counts.map(({ notes }) => notes));
const inOrder = errors.toSorted((a, b) => a - b);
const at = (share: number): number | undefined =>
  inOrder[Math.min(inOrder.length - 1, Math.floor(share * inOrder.length))];
console.log(
  table(
    ['figure', `on ${values.piano}`, 'aim'],
    [
      ['notes F ±50 ms, all', fixed(fMeasure(all), 4), '≥ 0.985'],
      ['  one hand', fixed(fMeasure(of(false)), 4), ''],
      ['  both hands', fixed(fMeasure(of(true)), 4), ''],
      ['notes of faultless attempts accused', `${accused} of ${all.truth}`, ''],
      ['time against the written rhythm, error: median, points', fixed(at(0.5), 2), '≤ 0.5'],
      ['  95th percentile', fixed(at(0.95), 2), ''],
    ],
  ),
);
