import type { Intention, Loudness, Rhythm, Touch } from '../../../../exercise/index.ts';
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

const TOUCHES: Readonly<Record<Touch, string>> = {
  legato: 'legato',
  detached: 'detached',
  staccato: 'staccato',
};

const LOUDNESSES: Readonly<Record<Loudness, string>> = {
  p: 'piano',
  mf: 'mezzo-forte',
  f: 'forte',
  growing: 'growing louder to the end',
  fading: 'growing softer to the end',
  'accents-of-2': 'with an accent on the first of every two',
  'accents-of-3': 'with an accent on the first of every three',
  'accents-of-4': 'with an accent on the first of every four',
  'accents-of-6': 'with an accent on the first of every six',
  'left-over-right': 'the left hand louder',
  'right-over-left': 'the right hand louder',
};

export const times = (number: number): string =>
  number === 1 ? 'once' : number === 2 ? 'twice' : `${count(number)} times`;

/** How something is to be practised, `part`: of what it is a part, where it is not said already: "long–short, twice in a row" */
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
      ? 'each hand position as one chord'
      : rhythm === 'even' && (besides.join('') !== '' || part !== '')
        ? ''
        : RHYTHMS[rhythm];
  const row =
    often === 1
      ? ''
      : rhythm === 'one-note-more'
        ? `each length ${times(often)}`
        : `${times(often)} in a row`;
  const ladder = ladderBpm === undefined ? '' : `each time ${ladderBpm} faster, until it is uneven`;
  return [part, first, ...besides, row, ladder].filter((one) => one !== '').join(', ');
};

type How = Pick<Intention, 'rhythm' | 'times' | 'blocked' | 'touch' | 'loudness' | 'ladderBpm'>;

type Practised = Saying<'practised'>;

function lacking(lack: Practised['lacks'][number], { touch, loudness }: Practised): string {
  switch (lack.kind) {
    case 'touch':
      return touch?.meant === 'legato'
        ? `legato was meant: ${touch.gapMs ?? 0} ms are silent between the notes`
        : `${TOUCHES[touch?.meant ?? 'detached']} was meant: the notes run into each other`;
    case 'loudness':
      return loudnessLacking(loudness);
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

/** A level with its sign, dB: "+3.2", "−0.4" */
const signed = (db: number): string => `${db < 0 ? '−' : '+'}${Math.abs(db).toFixed(1)}`;

function loudnessLacking(loudness: Practised['loudness']): string {
  const [meant, db] = [loudness?.meant ?? 'growing', signed(loudness?.db ?? 0)];
  if (meant === 'growing') return `it was to grow louder: ${db} dB from first to last`;
  if (meant === 'fading')
    return `it was to grow softer: ${signed(-(loudness?.db ?? 0))} dB from first to last`;
  if (meant === 'left-over-right' || meant === 'right-over-left')
    return `${LOUDNESSES[meant]} was meant: it is ${db} dB against the other`;
  return `the accents are hardly heard: ${db} dB`;
}

/** Touch and loudness as they were heard, where they were as meant; and what of them could not be told. */
function besides({ touch, loudness }: Practised): string {
  const unheard = [
    ...(touch?.outcome === 'untold' ? ['the touch'] : []),
    ...(loudness?.outcome === 'untold' ? ['how loud'] : []),
  ];
  return [
    ...(touch?.outcome === 'so' ? [`, ${TOUCHES[touch.meant]}`] : []),
    ...(loudness?.outcome === 'so' ? [`, ${loudnessSo(loudness)}`] : []),
    ...(unheard.length > 0 ? [` (${unheard.join(' and ')} cannot be told here)`] : []),
  ].join('');
}

function loudnessSo({ meant, db = 0, bent }: NonNullable<Practised['loudness']>): string {
  const by = Math.abs(db).toFixed(0);
  const where = bent === undefined ? '' : bent === 'early' ? ', most of it early' : ', most of it late';
  if (meant === 'growing') return `growing louder by ${by} dB${where}`;
  if (meant === 'fading') return `growing softer by ${by} dB${where}`;
  if (meant === 'left-over-right' || meant === 'right-over-left') return `${LOUDNESSES[meant]} by ${by} dB`;
  return `the accents ${db.toFixed(1)} dB louder`;
}

/** What was to be practised: done, nearly, not yet; and what is left of it. */
export function practised(saying: Practised): Clause {
  const { outcome, wanted, right, rhythm, longToShort, lacks } = saying;
  const pairs = rhythm === 'long-short' || rhythm === 'short-long';
  const often = rhythm === 'one-note-more' ? `each length ${times(right)}` : `${times(right)} in a row`;
  const row = `${wanted === 1 ? '' : `${often} `}every note right`;
  const ratio =
    pairs && longToShort !== undefined
      ? `, ${RHYTHMS[rhythm]} ${longToShort.value.toFixed(1)} : 1 (meant ${longToShort.meant} : 1)`
      : '';
  const what =
    (lacks.length === 0 ? row + ratio : lacks.map((lack) => lacking(lack, saying)).join(', ')) +
    besides(saying);
  const head = { done: 'done', nearly: 'nearly', 'not-yet': 'not yet' }[outcome];
  return { sentence: `${head}: ${what}`, half: what, emphasis: head };
}
