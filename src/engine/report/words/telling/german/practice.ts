import type { Intention, Loudness, Rhythm, Touch } from '../../../../exercise/index.ts';
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

const TOUCHES: Readonly<Record<Touch, string>> = {
  legato: 'legato',
  detached: 'non legato',
  staccato: 'staccato',
};

const LOUDNESSES: Readonly<Record<Loudness, string>> = {
  p: 'piano',
  mf: 'mezzoforte',
  f: 'forte',
  growing: 'bis zum Schluss lauter werdend',
  fading: 'bis zum Schluss leiser werdend',
  'accents-of-2': 'mit einem Akzent auf dem ersten von je zwei Tönen',
  'accents-of-3': 'mit einem Akzent auf dem ersten von je drei Tönen',
  'accents-of-4': 'mit einem Akzent auf dem ersten von je vier Tönen',
  'accents-of-6': 'mit einem Akzent auf dem ersten von je sechs Tönen',
  'left-over-right': 'die linke Hand lauter',
  'right-over-left': 'die rechte Hand lauter',
};

/** How something is to be practised, `part`: of what it is a part, where it is not said already: "lang–kurz, zweimal hintereinander" */
export const practising = (
  { rhythm, times: often, blocked, touch, loudness, ladderBpm }: How,
  part = '',
): string => {
  const besides = [
    touch === undefined ? '' : TOUCHES[touch],
    loudness === undefined ? '' : LOUDNESSES[loudness],
  ];
  const first =
    blocked === true
      ? 'jede Handlage als ein Akkord'
      : rhythm === 'even' && (besides.join('') !== '' || part !== '')
        ? ''
        : RHYTHMS[rhythm];
  const row =
    often === 1
      ? ''
      : rhythm === 'one-note-more'
        ? `jede Länge ${times(often)}`
        : `${times(often)} hintereinander`;
  const ladder =
    ladderBpm === undefined ? '' : `jedes Mal um ${ladderBpm} schneller, bis es ungleichmäßig wird`;
  return [part, first, ...besides, row, ladder].filter((one) => one !== '').join(', ');
};

type How = Pick<Intention, 'rhythm' | 'times' | 'blocked' | 'touch' | 'loudness' | 'ladderBpm'>;

type Practised = Saying<'practised'>;

function lacking(lack: Practised['lacks'][number], { touch, loudness }: Practised): string {
  switch (lack.kind) {
    case 'touch':
      return touch?.meant === 'legato'
        ? `gemeint war legato: zwischen den Tönen sind ${touch.gapMs ?? 0} ms still`
        : `gemeint war ${TOUCHES[touch?.meant ?? 'detached']}: die Töne gehen ineinander über`;
    case 'loudness':
      return loudnessLacking(loudness);
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

/** A level with its sign, dB: "+3,2", "−0,4" */
const signed = (db: number): string => `${db < 0 ? '−' : '+'}${figure(Math.abs(db), 1)}`;

function loudnessLacking(loudness: Practised['loudness']): string {
  const [meant, db] = [loudness?.meant ?? 'growing', signed(loudness?.db ?? 0)];
  if (meant === 'growing') return `es sollte lauter werden: ${db} dB vom ersten zum letzten Ton`;
  if (meant === 'fading')
    return `es sollte leiser werden: ${signed(-(loudness?.db ?? 0))} dB vom ersten zum letzten Ton`;
  if (meant === 'left-over-right' || meant === 'right-over-left')
    return `gemeint war ${LOUDNESSES[meant]}: sie liegt ${db} dB gegen die andere`;
  return `die Akzente sind kaum zu hören: ${db} dB`;
}

/** Touch and loudness as they were heard, where they were as meant; and what of them could not be told. */
function besides({ touch, loudness }: Practised): string {
  const unheard = [
    ...(touch?.outcome === 'untold' ? ['die Artikulation'] : []),
    ...(loudness?.outcome === 'untold' ? ['die Lautstärke'] : []),
  ];
  return [
    ...(touch?.outcome === 'so' ? [`, ${TOUCHES[touch.meant]}`] : []),
    ...(loudness?.outcome === 'so' ? [`, ${loudnessSo(loudness)}`] : []),
    ...(unheard.length > 0
      ? [` (${unheard.join(' und ')} ${unheard.length > 1 ? 'lassen' : 'lässt'} sich hier nicht sagen)`]
      : []),
  ].join('');
}

function loudnessSo({ meant, db = 0, bent }: NonNullable<Practised['loudness']>): string {
  const by = figure(Math.abs(db), 0);
  const where = bent === undefined ? '' : bent === 'early' ? ', das meiste früh' : ', das meiste spät';
  if (meant === 'growing') return `${by} dB lauter werdend${where}`;
  if (meant === 'fading') return `${by} dB leiser werdend${where}`;
  if (meant === 'left-over-right' || meant === 'right-over-left') return `${LOUDNESSES[meant]}, um ${by} dB`;
  return `die Akzente ${figure(db, 1)} dB lauter`;
}

/** What was to be practised: done, nearly, not yet; and what is left of it. */
export function practised(saying: Practised): Clause {
  const { outcome, wanted, right, rhythm, longToShort, lacks } = saying;
  const pairs = rhythm === 'long-short' || rhythm === 'short-long';
  const often = rhythm === 'one-note-more' ? `jede Länge ${times(right)}` : `${times(right)} hintereinander`;
  const row = `${wanted === 1 ? '' : `${often} `}jeder Ton richtig`;
  const ratio =
    pairs && longToShort !== undefined
      ? `, ${RHYTHMS[rhythm]} ${figure(longToShort.value, 1)} : 1 (gemeint ${longToShort.meant} : 1)`
      : '';
  const what =
    (lacks.length === 0 ? row + ratio : lacks.map((lack) => lacking(lack, saying)).join(', ')) +
    besides(saying);
  const head = { done: 'geschafft', nearly: 'fast', 'not-yet': 'noch nicht' }[outcome];
  return { sentence: `${head}: ${what}`, half: what, emphasis: head };
}
