import { fixed, table } from '../table.ts';
import type { FigureError } from './figures.ts';
import type { VerdictRecord } from './judge.ts';
import type { LoudnessErrors } from './known-piano.ts';
import type { Kind } from './kinds.ts';

type Records = readonly VerdictRecord[];

const share = (part: number, whole: number): string =>
  whole === 0 ? '–' : `${part} of ${whole} (${((100 * part) / whole).toFixed(1)} %)`;

const standardDeviation = (values: readonly number[]): number | undefined =>
  values.length < 2
    ? undefined
    : Math.sqrt(values.reduce((sum, value) => sum + value * value, 0) / values.length);

const accusedOfNotes = ({ falseNotes, accused }: VerdictRecord): boolean =>
  falseNotes.wrong + falseNotes.missed + falseNotes.extra > 0 || accused.includes('notes');

/** What the bench is for: each aim and what was reached. */
export function aimTable(all: Records): string {
  const faultless = all.filter(
    ({ faults, gravest }) => faults === 0 && gravest !== 'course' && gravest !== 'exercise',
  );
  const innocent = all.filter(({ gravest }) => gravest === null);
  const faulty = all.filter(({ faults }) => faults > 0);
  const guilty = all.filter(({ gravest }) => gravest !== null);
  const accusedOf = (records: Records): number => records.filter(({ accused }) => accused.length > 0).length;
  const one = faultless.filter(({ together }) => !together);
  const both = faultless.filter(({ together }) => together);
  const heard = faulty.filter(({ faultsListed }) => faultsListed > 0);
  const hands = all.flatMap(({ hand }) => hand ?? []);
  const kinds = [...new Set(innocent.flatMap(({ accused }) => accused))];
  const worst = kinds
    .map((kind) => innocent.filter(({ accused }) => accused.includes(kind)).length)
    .reduce((a, b) => Math.max(a, b), 0);
  return table(
    ['', 'aim', 'reached'],
    [
      ['faultless, accused of a note: one hand', '0', share(one.filter(accusedOfNotes).length, one.length)],
      ['… both hands', '≤ 2 %', share(both.filter(accusedOfNotes).length, both.length)],
      ['innocent, accused of anything', '≤ 2 %', share(accusedOf(innocent), innocent.length)],
      ['… of the kind most often so', '≤ 0.5 %', share(worst, innocent.length)],
      ['at fault, accused of what they did not do', '', share(accusedOf(guilty), guilty.length)],
      [
        'codes said that the scenario forbids',
        '0',
        share(all.filter(({ forbidden }) => forbidden.length > 0).length, all.length),
      ],
      [
        'faults of notes heard, of those played',
        '',
        share(sum(faulty, 'faultsListed'), sum(faulty, 'faults')),
      ],
      [
        'attempts whose listed faults are not all spoken of',
        '0',
        share(heard.filter(({ complete }) => !complete).length, heard.length),
      ],
      [
        'gravest named',
        '≥ 95 %',
        share(guilty.filter(({ first, gravest }) => first === gravest).length, guilty.length),
      ],
      [
        '… a note not named, but asked about',
        '',
        share(guilty.filter((one) => isAskedAbout(one)).length, guilty.length),
      ],
      [
        'hand called wrongly, confidence 0.9 and more',
        '0',
        share(hands.filter(({ right, confidence }) => !right && confidence >= 0.9).length, hands.length),
      ],
      [
        "a note's loudness, SD: against the sound / the blow, piano unknown, dB",
        '',
        `${fixed(standardDeviation(all.flatMap(({ levelsDb }) => levelsDb)), 1)} / ${fixed(standardDeviation(all.flatMap(({ blowsDb }) => blowsDb)), 1)}`,
      ],
    ],
  );
}

/** What is not sure is a question: a note that is not called missing, and is no silence. */
const isAskedAbout = ({ first, gravest, said }: VerdictRecord): boolean =>
  gravest === 'notes' && first !== gravest && said.includes('not-sure');

const sum = (records: Records, of: 'faults' | 'faultsListed'): number =>
  records.reduce((total, record) => total + record[of], 0);

/** SD of a note's loudness against the force of its blow, where the piano is not known and where it is. */
export function knownTable(all: readonly LoudnessErrors[]): string {
  const row = (name: string, of: (one: LoudnessErrors) => readonly number[]): readonly string[] => {
    const errors = all.flatMap(of);
    return [name, String(errors.length), fixed(standardDeviation(errors), 2)];
  };
  return table(
    ['', 'notes', 'SD, dB'],
    [
      row('straight line over pitch', ({ unknownDb }) => unknownDb),
      row("each key's own level, ten attempts before", ({ knownDb }) => knownDb),
    ],
  );
}

/** Each kind of player: what was said of them. */
export function scenarioTable(all: Records): string {
  const names = [...new Set(all.map(({ scenario }) => scenario))];
  return table(
    ['player', 'n', 'must name', 'named', 'falsely accused', 'said'],
    names.map((name) => {
      const own = all.filter(({ scenario }) => scenario === name);
      const { gravest } = own[0]!;
      const named = own.filter(({ first }) => first === gravest).length;
      return [
        name,
        String(own.length),
        gravest ?? 'nothing',
        gravest === null ? '' : String(named),
        String(own.filter((one) => one.accused.length > 0 || one.forbidden.length > 0).length),
        counted(own.flatMap(({ said }) => (said.length === 0 ? ['no report'] : said))),
      ];
    }),
  );
}

/** Of what the innocent were accused, by kind. */
export function accusedTable(all: Records): string {
  const innocent = all.filter(({ gravest }) => gravest === null);
  const kinds = [...new Set(innocent.flatMap(({ accused }) => accused))];
  const of = (kind: Kind): number => innocent.filter(({ accused }) => accused.includes(kind)).length;
  return table(
    ['innocent accused of', 'attempts'],
    kinds.sort((a, b) => of(b) - of(a)).map((kind) => [kind, share(of(kind), innocent.length)]),
  );
}

/** Each figure: how often the truth lies within its ±. */
export function plusMinusTable(all: readonly { readonly figures: readonly FigureError[] }[]): string {
  const figures = all.flatMap((record) => record.figures);
  const names = [...new Set(figures.map(({ name }) => name))];
  return table(
    ['figure', 'n', 'median |error|', 'median ±', 'within ±', 'within 2 ±'],
    names.map((name) => {
      const own = figures.filter((figure) => figure.name === name);
      const within = (times: number): string =>
        `${((100 * own.filter(({ error, plusMinus }) => Math.abs(error) <= times * plusMinus).length) / own.length).toFixed(0)} %`;
      return [
        name,
        String(own.length),
        fixed(middle(own.map(({ error }) => Math.abs(error))), 2),
        fixed(middle(own.map(({ plusMinus }) => plusMinus)), 2),
        within(1),
        within(2),
      ];
    }),
  );
}

function middle(values: readonly number[]): number | undefined {
  return [...values].sort((a, b) => a - b)[Math.floor(values.length / 2)];
}

function counted(codes: readonly string[]): string {
  const names = [...new Set(codes)];
  const of = (name: string): number => codes.filter((code) => code === name).length;
  return names
    .sort((a, b) => of(b) - of(a))
    .map((name) => `${name} ${of(name)}`)
    .join(', ');
}
