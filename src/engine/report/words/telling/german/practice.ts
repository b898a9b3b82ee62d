import type { Intention, Rhythm } from '../../../../exercise/index.ts';
import type { Saying } from '../../said/index.ts';
import type { Clause } from '../types.ts';
import { count, figure, times } from './places.ts';

/** Rhythms to practise in, as an adverb. */
export const RHYTHMS: Readonly<Record<Rhythm, string>> = {
  even: 'gleichmäßig',
  'long-short': 'lang–kurz',
  'short-long': 'kurz–lang',
  'groups-of-2': 'in Zweiergruppen, der erste Ton gehalten',
  'groups-of-3': 'in Dreiergruppen, der erste Ton gehalten',
  'groups-of-4': 'in Vierergruppen, der erste Ton gehalten',
  'groups-of-6': 'in Sechsergruppen, der erste Ton gehalten',
  'stop-before-crossings': 'mit einem Halt vor jedem Unter- und Übersatz',
  'stop-on-each-beat': 'mit einem Halt auf jedem Schlag',
  'stop-on-each-step': 'mit einem Halt nach jedem',
  'prepared-silently': 'jeder erst stumm gedrückt, dann angeschlagen',
  'one-note-more': 'zwei Töne, dann drei, dann jedes Mal einer mehr',
};

/** How something is to be practised: "lang–kurz, zweimal hintereinander" */
export const practising = ({ rhythm, times: often, blocked }: How): string => {
  const how = blocked === true ? 'jede Handlage als ein Akkord' : RHYTHMS[rhythm];
  if (often === 1) return how;
  return rhythm === 'one-note-more'
    ? `${how}, jede Länge ${times(often)}`
    : `${how}, ${times(often)} hintereinander`;
};

type How = Pick<Intention, 'rhythm' | 'times' | 'blocked'>;

type Practised = Saying<'practised'>;

function lacking(lack: Practised['lacks'][number]): string {
  switch (lack.kind) {
    case 'times':
      if (lack.wanted === 1) return 'es stimmt nicht von Anfang bis Ende';
      return lack.right === 0
        ? 'kein Mal stimmt von Anfang bis Ende'
        : `${times(lack.right)} hintereinander richtig; gemeint war ${times(lack.wanted)}`;
    case 'length':
      return lack.right === 0
        ? 'zwei Töne stimmen noch nicht'
        : `richtig bis zu ${count(lack.right)} Tönen; gemeint war bis zu ${count(lack.wanted)}`;
    case 'rhythm':
      return lack.turned
        ? `umgekehrt als ${RHYTHMS[lack.rhythm]}`
        : `kaum ${RHYTHMS[lack.rhythm]}: ${figure(lack.played, 1)} : 1, gemeint 3 : 1`;
    case 'holds':
      return lack.group === null
        ? 'kaum ein Halt'
        : `der erste von je ${count(lack.group)} Tönen ist kaum gehalten`;
    case 'tempo':
      return `bei ♩ = ${lack.playedBpm}, gemeint war ${lack.aimBpm}`;
    case 'whole':
      return 'das Ganze ist gespielt; gemeint war nur ein Ausschnitt';
  }
}

/** What was to be practised: done, nearly, not yet; and what is left of it. */
export function practised({ outcome, wanted, right, rhythm, longToShort, lacks }: Practised): Clause {
  const pairs = rhythm === 'long-short' || rhythm === 'short-long';
  const often = rhythm === 'one-note-more' ? `jede Länge ${times(right)}` : `${times(right)} hintereinander`;
  const row = `${wanted === 1 ? '' : `${often} `}jeder Ton richtig`;
  const ratio =
    pairs && longToShort !== undefined
      ? `, ${RHYTHMS[rhythm]} ${figure(longToShort.value, 1)} : 1 (gemeint ${longToShort.meant} : 1)`
      : '';
  const what = lacks.length === 0 ? row + ratio : lacks.map(lacking).join(', ');
  const head = { done: 'geschafft', nearly: 'fast', 'not-yet': 'noch nicht' }[outcome];
  return { sentence: `${head}: ${what}`, half: what, emphasis: head };
}
