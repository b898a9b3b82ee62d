import type { Intention, Rhythm } from '../../../../exercise/index.ts';
import type { Saying } from '../../said/index.ts';
import type { Clause } from '../types.ts';
import { count } from './places.ts';

/** Rhythms to practise in, as an adverb. */
export const RHYTHMS: Readonly<Record<Rhythm, string>> = {
  even: 'even',
  'long-short': 'long–short',
  'short-long': 'short–long',
  'groups-of-2': 'in twos, the first of each held',
  'groups-of-3': 'in threes, the first of each held',
  'groups-of-4': 'in fours, the first of each held',
  'groups-of-6': 'in sixes, the first of each held',
  'stop-before-crossings': 'with a stop before each crossing',
  'stop-on-each-beat': 'with a stop on each beat',
  'stop-on-each-step': 'with a stop on each',
  'prepared-silently': 'each pressed without a sound first, then struck',
  'one-note-more': 'two notes, then three, then one more each time',
};

export const times = (number: number): string =>
  number === 1 ? 'once' : number === 2 ? 'twice' : `${count(number)} times`;

/** How something is to be practised: "long–short, twice in a row" */
export const practising = ({ rhythm, times: often, blocked }: How): string => {
  const how = blocked === true ? 'each hand position as one chord' : RHYTHMS[rhythm];
  if (often === 1) return how;
  return rhythm === 'one-note-more'
    ? `${how}, each length ${times(often)}`
    : `${how}, ${times(often)} in a row`;
};

type How = Pick<Intention, 'rhythm' | 'times' | 'blocked'>;

type Practised = Saying<'practised'>;

function lacking(lack: Practised['lacks'][number]): string {
  switch (lack.kind) {
    case 'times':
      if (lack.wanted === 1) return 'it is not right all through';
      return lack.right === 0
        ? 'no time is right all through'
        : `right ${times(lack.right)} in a row; ${times(lack.wanted)} was meant`;
    case 'length':
      return lack.right === 0
        ? 'two notes are not right yet'
        : `right up to ${count(lack.right)} notes; up to ${count(lack.wanted)} was meant`;
    case 'rhythm':
      return lack.turned
        ? `the other way round than ${RHYTHMS[lack.rhythm]}`
        : `hardly ${RHYTHMS[lack.rhythm]}: ${lack.played.toFixed(1)} : 1, meant 3 : 1`;
    case 'holds':
      return lack.group === null
        ? 'hardly a stop is made'
        : `the first of each group of ${count(lack.group)} is hardly held`;
    case 'tempo':
      return `at ♩ = ${lack.playedBpm}, where ${lack.aimBpm} was meant`;
    case 'whole':
      return 'you played the whole; only a stretch of it was meant';
  }
}

/** What was to be practised: done, nearly, not yet; and what is left of it. */
export function practised({ outcome, wanted, right, rhythm, longToShort, lacks }: Practised): Clause {
  const pairs = rhythm === 'long-short' || rhythm === 'short-long';
  const often = rhythm === 'one-note-more' ? `each length ${times(right)}` : `${times(right)} in a row`;
  const row = `${wanted === 1 ? '' : `${often} `}every note right`;
  const ratio =
    pairs && longToShort !== undefined
      ? `, ${RHYTHMS[rhythm]} ${longToShort.value.toFixed(1)} : 1 (meant ${longToShort.meant} : 1)`
      : '';
  const what = lacks.length === 0 ? row + ratio : lacks.map(lacking).join(', ');
  const head = { done: 'done', nearly: 'nearly', 'not-yet': 'not yet' }[outcome];
  return { sentence: `${head}: ${what}`, half: what, emphasis: head };
}
