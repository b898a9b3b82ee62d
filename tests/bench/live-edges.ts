/**
 * Where attempts begin and end at the piano, in the cases that are hard: `npm run bench:live-edges [-- --piano test] [--edges slow]
 * [--sittings 6] [--from 0] [--any]`. Rendered sittings through the live ear, one exercise chosen for each (`--any`: none is). A line a
 * kind: how many attempts were told whole, missed, split, joined or invented, whose first note was lost, and how long after the last
 * note each end was told. A hundred attempts of evenings at home: `--edges evening --sittings 25`.
 */
import { parseArgs } from 'node:util';
import { quantile } from '../../src/engine/base/statistics.ts';
import type { PianoName } from '../support/render.ts';
import { EDGES, edgeSitting } from './live-edges-sittings.ts';
import type { Edge, EdgeSitting } from './live-edges-sittings.ts';
import { followLive } from './live-follow.ts';
import type { Followed } from './live-follow.ts';
import { table } from './table.ts';

const { values } = parseArgs({
  options: {
    piano: { type: 'string', default: 'dev' },
    edges: { type: 'string', default: EDGES.join(',') },
    sittings: { type: 'string', default: '6' },
    from: { type: 'string', default: '0' },
    any: { type: 'boolean', default: false },
    verbose: { type: 'boolean', default: false },
  },
});
const piano = values.piano as PianoName;
/** sound before the first and after the last note that an attempt must hold, seconds */
const AROUND_SEC = { before: 0.05, after: 0.3 } as const;

interface Tally {
  attempts: number;
  whole: number;
  missed: number;
  split: number;
  joined: number;
  invented: number;
  firstLost: number;
  readonly endSec: number[];
  computeSec: number;
  lengthSec: number;
}

function count(tally: Tally, { attempts, channel, sampleRateHz }: EdgeSitting, followed: Followed): void {
  const lies = attempts.map((strokesSec) => {
    const from = strokesSec[0]!;
    const to = strokesSec.at(-1)!;
    return { from, to, over: followed.attempts.filter((one) => one.startSec <= to && one.endSec > from) };
  });
  for (const { from, to, over } of lies) {
    const [only, ...others] = over;
    tally.attempts += 1;
    if (only === undefined) tally.missed += 1;
    else if (others.length > 0) tally.split += 1;
    else if (lies.filter((other) => other.over.includes(only)).length > 1) tally.joined += 1;
    else if (only.startSec > from - AROUND_SEC.before) tally.firstLost += 1;
    else if (only.endSec >= to + AROUND_SEC.after) {
      tally.whole += 1;
      tally.endSec.push(only.toldSec - to);
    }
  }
  tally.invented += followed.attempts.filter((one) => !lies.some(({ over }) => over.includes(one))).length;
  tally.computeSec += followed.computeSec;
  tally.lengthSec += channel.length / sampleRateHz;
}

const seconds = (sec: number | null | undefined): string =>
  sec === null || sec === undefined ? '–' : sec.toFixed(2);
const rows: string[][] = [];
for (const edge of values.edges.split(',') as Edge[]) {
  const endSec: number[] = [];
  const tally: Tally = {
    attempts: 0,
    whole: 0,
    missed: 0,
    split: 0,
    joined: 0,
    invented: 0,
    firstLost: 0,
    endSec,
    computeSec: 0,
    lengthSec: 0,
  };
  const from = Number(values.from);
  for (let index = from; index < from + Number(values.sittings); index++) {
    const sitting = await edgeSitting(edge, piano, index);
    const followed = followLive(sitting.channel, sitting.sampleRateHz, {
      expected: values.any ? 'any' : sitting.chosen,
    });
    count(tally, sitting, followed);
    if (values.verbose) {
      console.log(
        edge,
        index,
        sitting.attempts.map((one) => [one[0]!.toFixed(1), one.at(-1)!.toFixed(1)].join('–')).join(' '),
      );
      console.log(
        '   found',
        followed.attempts
          .map((one) => `${one.startSec.toFixed(1)}–${one.endSec.toFixed(1)} (${one.toldSec.toFixed(1)})`)
          .join(' '),
      );
    }
  }
  rows.push([
    edge,
    `${tally.whole} of ${tally.attempts}`,
    ...[tally.missed, tally.split, tally.joined, tally.invented, tally.firstLost].map(String),
    `${seconds(quantile(endSec, 0.5))} / ${seconds(quantile(endSec, 0.95))}`,
    `${((100 * tally.computeSec) / tally.lengthSec).toFixed(1)} %`,
  ]);
}
console.log(
  `\nEdges of attempts at the piano, ${piano} piano, ${values.any ? 'any exercise' : 'one chosen'}.\n`,
);
console.log(
  table(
    [
      'kind',
      'whole',
      'missed',
      'split',
      'joined',
      'invented',
      'first lost',
      'end told, s, median / 95th',
      'of one core',
    ],
    rows,
  ),
);
