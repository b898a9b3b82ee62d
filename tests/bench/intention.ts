/**
 * What is said of players who were to practise something: `npm run bench:intention [-- --players 20 --rendered 2 --piano test
 * --only accents --before 8 --list]`.
 *
 * Each work is played by so many who do it well and so many who do it badly in a known way: lists of notes with the ear's measured
 * errors, and of each `--rendered` with sound. `--only` takes works whose names hold that; `--before`: from so many attempts a piano
 * that is known is known; `--list` prints everything that was not said as it should be. The same seeds every
 * time. Prints tables and never fails.
 */
import { parseArgs } from 'node:util';
import { assessPractised, BEFORE, isTold, recordOf } from './intention/judge.ts';
import type { PracticeRecord } from './intention/judge.ts';
import { practisedAttempt } from './intention/players.ts';
import { WORKS } from './intention/works.ts';
import { fixed, table } from './table.ts';

const { values } = parseArgs({
  options: {
    players: { type: 'string', default: '20' },
    rendered: { type: 'string', default: '0' },
    before: { type: 'string', default: String(BEFORE) },
    piano: { type: 'string', default: 'dev' },
    only: { type: 'string', default: '' },
    list: { type: 'boolean', default: false },
  },
});
const works = WORKS.filter(({ name }) => name.includes(values.only));
const piano = values.piano === 'test' ? 'test' : 'dev';

async function recordsOf(
  source: 'notes' | 'dev' | 'test',
  players: number,
): Promise<readonly PracticeRecord[]> {
  const records: PracticeRecord[] = [];
  for (const work of works)
    for (const flawed of [false, true])
      for (let index = 0; index < players; index++) {
        const attempt = practisedAttempt(work, index, flawed);
        const record = recordOf(attempt, await assessPractised(attempt, source, Number(values.before)));
        records.push(record);
        const fine = isTold(record) && (flawed || record.blamed.length === 0) && record.counted;
        if (values.list && !fine)
          console.log(
            `${work.name} #${index}, ${record.flaw ?? 'well'}: ${record.sentence} [${[...record.lacks, ...record.blamed].join(', ')}]`,
          );
      }
  return records;
}

function show(records: readonly PracticeRecord[]): string {
  const share = (some: readonly PracticeRecord[], of: (one: PracticeRecord) => boolean): string =>
    some.length === 0 ? '–' : `${some.filter(of).length} of ${some.length}`;
  /** median / 95th percentile of what was not told right */
  const off = (errors: readonly (number | null)[]): string => {
    const sorted = errors.flatMap((error) => (error === null ? [] : [Math.abs(error)])).sort((a, b) => a - b);
    const at = (share: number): string => fixed(sorted[Math.floor(share * sorted.length)], 2);
    return sorted.length === 0 ? '–' : `${at(0.5)} / ${at(0.95)}`;
  };
  const row = (name: string, some: readonly PracticeRecord[]): readonly string[] => {
    const well = some.filter(({ flaw }) => flaw === null);
    const badly = some.filter(({ flaw }) => flaw !== null);
    return [
      name,
      share(well, isTold),
      share(well, ({ blamed }) => blamed.length > 0),
      share(badly, isTold),
      share(badly, (one) => one.unsaid && !isTold(one)),
      share(some, ({ counted }) => counted),
      off(well.map(({ ratioError }) => ratioError)),
      off(well.map(({ louderErrorDb }) => louderErrorDb)),
    ];
  };
  return table(
    [
      'work',
      'well: done',
      'well: blamed',
      'badly: told so',
      '… left unsaid',
      'repeats counted',
      'ratio, error',
      'loudness, error dB',
    ],
    [
      ...works.map(({ name }) =>
        row(
          name,
          records.filter(({ work }) => work === name),
        ),
      ),
      row('all', records),
    ],
  );
}

if (Number(values.players) > 0)
  console.log(
    `## lists of notes; errors median / 95th percentile\n\n${show(await recordsOf('notes', Number(values.players)))}`,
  );
if (Number(values.rendered) > 0)
  console.log(
    `\n## rendered on the ${piano} piano\n\n${show(await recordsOf(piano, Number(values.rendered)))}`,
  );
