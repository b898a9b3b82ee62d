import type { Records } from './errors.ts';
import { percent } from './errors.ts';
import { registerOf } from './labels.ts';
import type { PlaceRecord } from './place-score.ts';
import { fixed, table } from './table.ts';

/** How one part of the octave pairs was heard. */
export interface PairCounts {
  readonly struck: number;
  readonly recall: number;
  readonly absent: number;
  /** absent notes that the report calls struck */
  readonly invented: number;
}

export function pairCounts(records: Records, part: PlaceRecord['part']): PairCounts {
  return countsOf(records.flatMap(({ places }) => places).filter((place) => place.part === part));
}

function countsOf(places: readonly PlaceRecord[]): PairCounts {
  const struck = places.filter(({ truth }) => truth === 'struck');
  const absent = places.filter(({ truth }) => truth === 'absent');
  const heard = (of: readonly PlaceRecord[]): number => of.filter(({ said }) => said === 'correct').length;
  return {
    struck: struck.length,
    recall: heard(struck) / struck.length,
    absent: absent.length,
    invented: heard(absent),
  };
}

const INTERVALS: readonly (readonly [number, string])[] = [
  [12, '5 above the octave'],
  [11, '4 octave'],
  [7, '3 sixths and sevenths'],
  [4, '2 fourths and fifths'],
  [2, '1 thirds'],
  [0, '0 seconds'],
];

/** Ways to look at the places, each from the place and its attempt's labels to the name of its group; null: none. */
type Grouping = (place: PlaceRecord, spreadMs: number) => string | null;
export const GROUPINGS: Readonly<Record<string, Grouping>> = {
  'interval above the next note of the step': ({ interval }) =>
    interval === null ? null : INTERVALS.find(([over]) => interval > over)![1].slice(2),
  register: ({ midi }) => registerOf(midi).slice(2),
  'chord spread or hands apart': (_, spreadMs) => bandOf(spreadMs, [0, 15, 30], ' ms'),
  'this hand against the other': ({ part, leftLouderDb }) =>
    part === 'alone'
      ? null
      : bandOf(part === 'lower' ? leftLouderDb : -leftLouderDb, [-12, -6, -2, 2, 6], ' dB'),
};

function bandOf(value: number, from: readonly number[], unit: string): string {
  const at = Math.max(
    0,
    from.findLastIndex((bound) => value >= bound),
  );
  return at === from.length - 1 ? `${from[at]}${unit} and more` : `${from[at]} … ${from[at + 1]}${unit}`;
}

/** Expected notes by group: of struck ones how many are called right, unsure, wrong or missed; of others how many are found. */
export function placeTable(records: Records, by: string, part: PlaceRecord['part'] | null): string {
  const group = GROUPINGS[by]!;
  const named = records.flatMap(({ places, spreadMs }) =>
    places
      .filter((place) => part === null || place.part === part)
      .flatMap((place) => {
        const name = group(place, spreadMs);
        return name === null ? [] : [{ name, place }];
      }),
  );
  const names = [...new Set(named.map(({ name }) => name))].sort((a, b) =>
    a.localeCompare(b, 'en', { numeric: true }),
  );
  return table(
    [
      by + (part === null ? '' : `: ${part}`),
      'struck',
      'recall',
      'unsure',
      'called missed or wrong',
      'absent',
      'invented',
      'wrong',
      'found wrong',
    ],
    names.map((name) => {
      const places = named.filter((one) => one.name === name).map(({ place }) => place);
      const { struck, recall, absent, invented } = countsOf(places);
      const of = (truth: PlaceRecord['truth'], said: readonly PlaceRecord['said'][]): number =>
        places.filter((place) => place.truth === truth && said.includes(place.said)).length;
      const wrong = places.filter(({ truth }) => truth === 'wrong').length;
      return [
        name,
        String(struck),
        fixed(recall, 4),
        percent(of('struck', ['unsure']), struck, 1),
        percent(of('struck', ['missed', 'wrong', undefined]), struck, 2),
        String(absent),
        percent(invented, absent),
        String(wrong),
        percent(of('wrong', ['wrong']), wrong),
      ];
    }),
  );
}
