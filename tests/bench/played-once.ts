/**
 * A passage played once, slowly, against its aims: `npm run bench:played-once [-- --piano dev --count 30 --from 0 --strokes]`.
 * Passages of our own invention at ♩ = 50 by students whose beat is 8 % faster or slower, who stray by 15 to 45 ms and slow down or hurry by
 * 6 %, rendered, heard blind, and laid on a staff of which only the metre is said. `--strokes`: the true strokes are laid out, without
 * sound. Notes right: key and moment within ±50 ms of a stroke. Rhythm right: a note's distance in beats from the one before is as written.
 * Prints tables and never fails.
 */
import { parseArgs } from 'node:util';
import { buildExercise, layOut, listenAndKeep } from '../../src/engine/index.ts';
import type { ExerciseChoice, PlayedNote } from '../../src/engine/index.ts';
import { inventedPassage } from '../support/passages.ts';
import { createRandom } from '../support/random.ts';
import { NO_MISTAKES, render } from '../support/render.ts';
import type { PianoName } from '../support/render.ts';
import { perform } from '../support/student/perform.ts';
import { STUDENT_DEFAULTS } from '../support/student/knobs.ts';
import { addCounts, fMeasure, matchToTruth } from './note-score.ts';
import type { NoteCounts, Timed } from './note-score.ts';
import { fixed, table } from './table.ts';

const { values } = parseArgs({
  options: {
    piano: { type: 'string', default: 'dev' },
    count: { type: 'string', default: '30' },
    from: { type: 'string', default: '0' },
    strokes: { type: 'boolean', default: false },
  },
});
const WINDOW_MS = 50;
const SLOW_BPM = 50;
type Laid = Pick<PlayedNote, 'timeSec' | 'midi' | 'releaseSec'>;

interface Played {
  readonly truth: readonly Timed[];
  readonly heard: readonly Laid[];
}

async function play(choice: ExerciseChoice, index: number): Promise<Played> {
  const student = {
    bpm: SLOW_BPM * [0.92, 1, 1.08][index % 3]!,
    jitterMs: 15 + 10 * (index % 4),
    driftPercent: [-6, 0, 6][Math.floor(index / 3) % 3]!,
    chordSpreadMs: 25,
    handsApartMs: { mean: 0, sd: 15 },
    mistakes: NO_MISTAKES,
  };
  const seed = 5300 + index;
  if (values.strokes) {
    const random = createRandom(seed);
    const { strokes } = perform(
      buildExercise(choice),
      { ...STUDENT_DEFAULTS, ...student },
      random.fork('student'),
    );
    const truth = strokes
      .map(({ timeSec, midi, releaseSec }) => ({ timeSec, midi, releaseSec }))
      .sort((a, b) => a.timeSec - b.timeSec);
    return { truth, heard: truth };
  }
  const sound = await render({ seed, piano: values.piano as PianoName, exercise: choice, student });
  return { truth: sound.truth.notes, heard: listenAndKeep(sound).heard.notes };
}

/** Of the moments written those that are laid as far from the one before as they are written. */
function rhythmRight(choice: ExerciseChoice, laid: ExerciseChoice): { right: number; of: number } {
  const [written, found] = [choice, laid].map((one) => buildExercise(one).steps);
  let from = 0;
  let right = 0;
  let before: { readonly written: number; readonly found: number } | null = null;
  for (const { beat, notes } of written!) {
    const keys = notes.map(({ midi }) => midi);
    const at = found!.findIndex(
      (step, index) =>
        index >= from && index < from + 4 && step.notes.some(({ midi }) => keys.includes(midi)),
    );
    if (at < 0) {
      before = null;
      continue;
    }
    const own = { written: beat, found: found![at]!.beat };
    if (before === null ? at === 0 : Math.abs(own.written - before.written - own.found + before.found) < 0.02)
      right++;
    before = own;
    from = at + 1;
  }
  return { right, of: written!.length };
}

const rows: string[][] = [];
const counts: NoteCounts[] = [];
const rhythms: { right: number; of: number }[] = [];
let [hands, ofHands, keys] = [0, 0, 0];
for (let index = Number(values.from); index < Number(values.from) + Number(values.count); index++) {
  const choice = inventedPassage(index);
  const { truth, heard } = await play(choice, index);
  const [bar] = choice.passage!.bars;
  const laid = layOut(heard, { bpm: SLOW_BPM, time: { count: bar!.count, unit: bar!.unit } });
  if (laid === null) {
    rows.push([String(index), choice.hands, 'nothing']);
    continue;
  }
  const notes = {
    matched: matchToTruth(heard, truth, WINDOW_MS).length,
    heard: heard.length,
    truth: truth.length,
  };
  const rhythm = rhythmRight(choice, laid.choice);
  counts.push(notes);
  rhythms.push(rhythm);
  const own = new Map(choice.passage!.notes.map(({ name, beat, hand }) => [`${name} ${beat}`, hand]));
  for (const { name, beat, hand } of laid.choice.passage!.notes) {
    const real = own.get(`${name} ${beat}`);
    if (real === undefined) continue;
    ofHands++;
    if (real === hand) hands++;
  }
  if (laid.choice.key === choice.key) keys++;
  rows.push([
    String(index),
    choice.hands,
    `${bar!.count}/${bar!.unit}`,
    String(truth.length),
    fixed(fMeasure(notes), 4),
    `${rhythm.right} of ${rhythm.of}`,
    `${choice.passage!.bars.length}, ${laid.choice.passage!.bars.length}`,
    `${choice.key}, ${laid.choice.key}`,
  ]);
}
console.log(
  `${table(['passage', 'hands', 'metre', 'notes', 'F ±50', 'rhythm right', 'bars', 'key'], rows)}\n`,
);
const all = addCounts(counts);
const sum = (of: (one: { right: number; of: number }) => number): number =>
  rhythms.reduce((total, one) => total + of(one), 0);
console.log(
  table(
    ['figure', values.strokes ? 'strokes' : `on ${values.piano}`, 'aim'],
    [
      ['notes right, F ±50 ms', fixed(fMeasure(all), 4), '≥ 0.99'],
      [
        'rhythm right without correction, moments',
        `${sum(({ right }) => right)} of ${sum((one) => one.of)} (${fixed((100 * sum(({ right }) => right)) / sum((one) => one.of), 1)} %)`,
        '≥ 90 %',
      ],
      [
        '  passages wholly right',
        `${rhythms.filter((one) => one.right === one.of).length} of ${rhythms.length}`,
        '',
      ],
      ['hand right, of notes at their place', `${hands} of ${ofHands}`, ''],
      ['key as written', `${keys} of ${rows.length}`, ''],
    ],
  ),
);
