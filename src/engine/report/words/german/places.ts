import type { Hands } from '../../../exercise/index.ts';
import type {
  ChordPlace,
  FaultFacts,
  FingerOf,
  HowOften,
  StepPlace,
  NamedStep,
  NamedStretch,
} from '../types.ts';

const COUNTS = [
  'kein',
  'ein',
  'zwei',
  'drei',
  'vier',
  'fünf',
  'sechs',
  'sieben',
  'acht',
  'neun',
  'zehn',
  'elf',
  'zwölf',
];
/** As the article of "Akkord" asks for them; with -n after a preposition. */
const ORDINALS = ['erste', 'zweite', 'dritte', 'vierte', 'fünfte', 'sechste', 'siebte'];

/** 3 → "drei"; figures from thirteen on. */
export const count = (number: number): string => COUNTS[number] ?? String(number);

/** 2 → "zweimal" */
export const times = (number: number): string =>
  number === 1 ? 'einmal' : number < COUNTS.length ? `${count(number)}mal` : `${number}-mal`;

/** 1 → "einer", 2 → "zwei": standing alone */
export const some = (number: number): string => (number === 1 ? 'einer' : count(number));

export const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);

/** ["E", "G", "C"] → "E, G und C" */
export function list(words: readonly string[]): string {
  if (words.length < 2) return words[0] ?? '';
  return `${words.slice(0, -1).join(', ')} und ${words.at(-1)!}`;
}

export const hands = (who: Hands): string =>
  ({ left: 'linke Hand', right: 'rechte Hand', together: 'beide Hände' })[who];

/** "der Daumen", "Finger 3" */
export const finger = (number: number): string => (number === 1 ? 'der Daumen' : `Finger ${number}`);

/** "Daumen", "Finger 3"; of both hands together "Finger 3 der linken Hand" */
export function fingerOf({ finger: number, hand }: FingerOf, thumb = 'der Daumen'): string {
  const name = number === 1 ? thumb : finger(number);
  return hand === null ? name : `${name} der ${hand === 'left' ? 'linken' : 'rechten'} Hand`;
}

const WAYS = { up: 'aufwärts', down: 'abwärts' } as const;

/** Positions of a triad are feminine, chords with a numeral masculine; the adjective is written without its ending. */
function parts({ label, number, which }: ChordPlace): {
  readonly feminine: boolean;
  readonly adjective: string;
  readonly noun: string;
} {
  const place = { first: 'erst', middle: 'mittler', last: 'letzt', top: 'ober' } as const;
  const adjective = which === 'only' || which === 'up' || which === 'down' ? '' : place[which];
  const way = which === 'up' || which === 'down' ? ` ${WAYS[which]}` : '';
  switch (label) {
    case 'root position':
      return { feminine: true, adjective, noun: `Grundstellung${way}` };
    case 'first inversion':
      return { feminine: true, adjective: 'erst', noun: `Umkehrung${way}` };
    case 'second inversion':
      return { feminine: true, adjective: 'zweit', noun: `Umkehrung${way}` };
    case null:
      return {
        feminine: false,
        adjective: (ORDINALS[number - 1] ?? `${number}.`).slice(0, -1),
        noun: `Akkord${way}`,
      };
    default:
      return { feminine: false, adjective, noun: `Akkord ${label}${way}` };
  }
}

/** "der letzte Akkord I", "die erste Umkehrung aufwärts" */
export function theChord(one: ChordPlace): string {
  const { feminine, adjective, noun } = parts(one);
  return `${feminine ? 'die' : 'der'} ${adjective === '' ? '' : `${adjective}e `}${noun}`;
}

/** Prepositions with the dative, drawn together with the article where the language does so. */
const WITH_ARTICLE = {
  in: ['im', 'in der'],
  bei: ['beim', 'bei der'],
  nach: ['nach dem', 'nach der'],
  zu: ['zum', 'zur'],
  ab: ['ab dem', 'ab der'],
  von: ['vom', 'von der'],
} as const;
type Preposition = keyof typeof WITH_ARTICLE;

/** "im letzten Akkord I", "zur ersten Umkehrung aufwärts" */
export function chordAfter(preposition: Preposition, one: ChordPlace): string {
  const { feminine, adjective, noun } = parts(one);
  const article = WITH_ARTICLE[preposition][feminine ? 1 : 0];
  return `${article} ${adjective === '' ? '' : `${adjective}en `}${noun}`;
}

/** "aufwärts", "oben", or in the chord: "im Akkord V7" */
export function where(place: StepPlace): string {
  switch (place.kind) {
    case 'chord':
      return chordAfter('in', place.chord);
    case 'up':
    case 'down':
      return WAYS[place.kind];
    case 'start':
      return 'am Anfang';
    case 'end':
      return 'am Ende';
    case 'top':
      return 'oben';
    case 'anywhere':
      return '';
  }
}

/** "nach Es aufwärts", "nach dem Akkord V7" */
export function spotAfter(preposition: Preposition, { note, place }: NamedStep): string {
  return place.kind === 'chord'
    ? chordAfter(preposition, place.chord)
    : `${preposition} ${note} ${where(place)}`.trim();
}

/** "As–C–Es", "von der Grundstellung aufwärts bis zur oberen Grundstellung", "von As aufwärts bis As" */
export function stretch(one: NamedStretch): string {
  switch (one.kind) {
    case 'all':
      return one.names.join('–');
    case 'chords':
      return `${chordAfter('von', one.from)} bis ${chordAfter('zu', one.to)}`;
    case 'ends': {
      const way = { up: 'aufwärts', down: 'abwärts', 'up-and-down': 'hinauf und hinunter' }[one.way];
      return `von ${one.from} ${way} bis ${one.to}`;
    }
  }
}

/** "F statt E", "E fehlt" */
export function fault({ wanted, struck }: FaultFacts): string {
  if (struck === null) return `${wanted} fehlt`;
  if (struck === 'octave too high') return `${wanted} eine Oktave zu hoch`;
  if (struck === 'octave too low') return `${wanted} eine Oktave zu tief`;
  return `${struck} statt ${wanted}`;
}

/** "aufwärts", and with both hands the hand: "aufwärts (linke Hand)" */
export function faultPlace({ place, hand }: FaultFacts): string {
  return hand === null ? where(place) : `${where(place)} (${hands(hand)})`;
}

/** "F statt E aufwärts" */
export const placed = (one: FaultFacts): string => `${fault(one)} ${faultPlace(one)}`.trim();

export function often(how: HowOften): string {
  switch (how.kind) {
    case 'unsaid':
      return '';
    case 'once':
      return where(how.place);
    case 'both':
      return 'beide Male';
    case 'each':
      return 'jedes Mal';
    case 'some':
      return times(how.count);
  }
}
