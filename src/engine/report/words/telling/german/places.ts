import type { Hands, NoteNaming } from '../../../../exercise/index.ts';
import { noteName } from '../../../../exercise/index.ts';
import type {
  ChordPlace,
  CrossingFacts,
  FaultFacts,
  HowOften,
  Octave,
  StepPlace,
  NamedStep,
  NamedStretch,
  Task,
} from '../../said/index.ts';
import { joined, ofChords } from '../types.ts';

const COUNTS = 'kein ein zwei drei vier fünf sechs sieben acht neun zehn elf zwölf'.split(' ');
/** As the article of "Akkord" asks for them; with -n after a preposition. */
const ORDINALS = 'erste zweite dritte vierte fünfte sechste siebte'.split(' ');

/** 3 → "drei"; figures from thirteen on. */
export const count = (number: number): string => COUNTS[number] ?? String(number);

/** 2 → "zweimal" */
export const times = (number: number): string =>
  number === 1 ? 'einmal' : number < COUNTS.length ? `${count(number)}mal` : `${number}-mal`;

/** 1 → "einer", 2 → "zwei": standing alone */
export const some = (number: number): string => (number === 1 ? 'einer' : count(number));

/** 12.3 → "12,3" */
export const figure = (value: number, digits: number): string => value.toFixed(digits).replace('.', ',');

/** ["E", "G", "C"] → "E, G und C" */
export function list(words: readonly string[]): string {
  if (words.length < 2) return words[0] ?? '';
  return `${words.slice(0, -1).join(', ')} und ${words.at(-1)!}`;
}

export const hands = (who: Hands): string =>
  ({ left: 'linke Hand', right: 'rechte Hand', together: 'beide Hände' })[who];

/** "linke Hand allein" */
const alone = (who: Hands): string => hands(who) + (who === 'together' ? '' : ' allein');

export const WAYS = { up: 'aufwärts', down: 'abwärts' } as const;

/** Positions of a triad and degrees of the key are feminine; the adjective is written without its ending. */
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
    case 'V7':
      return { feminine: false, adjective, noun: `V7${way}` };
    default:
      return { feminine: true, adjective, noun: `${label.toUpperCase()}. Stufe${way}` };
  }
}

/** "die letzte I. Stufe", "die erste Umkehrung aufwärts" */
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

/** "in der letzten I. Stufe", "zur ersten Umkehrung aufwärts" */
export function chordAfter(preposition: Preposition, one: ChordPlace): string {
  const { feminine, adjective, noun } = parts(one);
  const article = WITH_ARTICLE[preposition][feminine ? 1 : 0];
  return `${article} ${adjective === '' ? '' : `${adjective}en `}${noun}`;
}

const goesDown = ({ which }: ChordPlace): boolean => which === 'down';

/** Which of them, the stretch itself says. */
const withoutWay = (one: ChordPlace): ChordPlace =>
  one.which === 'up' || one.which === 'down' ? { ...one, which: 'only' } : one;

const OCTAVES = { lower: 'unteren', middle: 'mittleren', upper: 'oberen' } as const;

/** "in der oberen Oktave" */
const inOctave = (octave: Octave | undefined): string =>
  octave === undefined ? '' : `in der ${OCTAVES[octave]} Oktave`;

const inBar = (bar: number): string => (bar === 0 ? 'im Auftakt' : `in Takt ${bar}`);

/** "aufwärts", "oben", "in Takt 3", or in the chord: "im V7" */
export function where(place: StepPlace): string {
  switch (place.kind) {
    case 'chord':
      return chordAfter('in', place.chord);
    case 'up':
    case 'down':
      return joined(WAYS[place.kind], inOctave(place.octave));
    case 'start':
      return 'am Anfang';
    case 'end':
      return 'am Ende';
    case 'top':
      return 'oben';
    case 'bar':
      return inBar(place.bar);
    case 'anywhere':
      return inOctave(place.octave);
  }
}

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

/** A pulse slower than this is said in longer values. */
const LEAST_BPM = 40;

/** "♩ = 60, zwei Töne auf jeden Schlag" */
export function tempo({
  tempoBpm,
  notesABeat,
  stretch,
}: Pick<Task, 'tempoBpm' | 'notesABeat' | 'stretch'>): string {
  if (notesABeat === null) return `♩ = ${tempoBpm}`;
  const [one, many] = ofChords({ stretch }) ? ['Akkord', 'Akkorde'] : ['Ton', 'Töne'];
  if (tempoBpm >= LEAST_BPM)
    return `♩ = ${tempoBpm}, ${notesABeat === 1 ? `ein ${one}` : `${count(notesABeat)} ${many}`} auf jeden Schlag`;
  return notesABeat === 1
    ? `♩ = ${2 * tempoBpm}, ein ${one} auf zwei Schläge`
    : `♩ = ${notesABeat * tempoBpm}, ein ${one} auf jeden Schlag`;
}

/** All that is said of notes, with what they are called. */
export function notesIn(naming: NoteNaming) {
  const name = (plain: string): string => noteName(plain, naming);

  /** "nach Es aufwärts", "nach dem V7" */
  const spotAfter = (preposition: Preposition, { note, place }: NamedStep): string =>
    place.kind === 'chord'
      ? chordAfter(preposition, place.chord)
      : joined(preposition, name(note), where(place));

  /** "Es aufwärts", "der V7" */
  const spot = ({ note, place }: NamedStep): string =>
    place.kind === 'chord' ? theChord(place.chord) : joined(name(note), where(place));

  /** "As–C–Es", "von der Grundstellung aufwärts bis zur oberen Grundstellung", "von As aufwärts bis As" */
  function stretch(one: NamedStretch): string {
    switch (one.kind) {
      case 'notes':
        return one.names.map(name).join('–');
      case 'numerals':
        return one.names.join('–');
      case 'chords': {
        const [from, to] = [withoutWay(one.from), withoutWay(one.to)];
        if (goesDown(one.to) && !goesDown(one.from) && one.from.which !== 'top')
          return `${chordAfter('von', from)} über die obere Grundstellung ${chordAfter('zu', to)}`;
        return `${chordAfter('von', from)} ${goesDown(one.to) ? 'hinunter' : 'hinauf'} ${chordAfter('zu', to)}`;
      }
      case 'whole':
        return 'das Ganze';
      case 'ends': {
        const way = { up: 'aufwärts', down: 'abwärts', 'up-and-down': 'hinauf und hinunter' }[one.way];
        const many = one.notes === undefined ? '' : ` (${one.notes} Töne)`;
        return `von ${name(one.from)} ${way} bis ${name(one.to)}${many}`;
      }
      case 'bars': {
        const from = one.fromBar === one.toBar ? '' : inBar(one.fromBar);
        return joined(`von ${name(one.from)}`, from, `bis ${name(one.to)}`, inBar(one.toBar));
      }
    }
  }

  /** "C ohne Vorzeichen" beside C♯, where both are called C; in German names C and Cis need no more. */
  const beside = (struck: string, wanted: string): string =>
    naming !== 'german' && struck.length === 1 && wanted.length > 1 && wanted.startsWith(struck)
      ? `${name(struck)} ohne Vorzeichen`
      : name(struck);

  /** "F statt E", "E fehlt" */
  function fault({ wanted, struck }: Pick<FaultFacts, 'wanted' | 'struck'>): string {
    const right = name(wanted);
    if (struck === null) return `${right} fehlt`;
    if (struck === 'octave-high') return `${right} eine Oktave zu hoch`;
    if (struck === 'octave-low') return `${right} eine Oktave zu tief`;
    return `${beside(struck, wanted)} statt ${right}`;
  }

  const ofHand = (hand: FaultFacts['hand']): string => (hand === null ? '' : `(${hands(hand)})`);

  /** "aufwärts", and with both hands the hand: "aufwärts (linke Hand)" */
  const faultPlace = ({ place, hand }: Pick<FaultFacts, 'place' | 'hand'>): string =>
    joined(where(place), ofHand(hand));

  /** "F statt E aufwärts" */
  const placed = (one: FaultFacts): string => joined(fault(one), faultPlace(one));

  /** "der Untersatz aufwärts zu A" */
  const crossing = ({ kind, direction, to, octave, hand }: CrossingFacts): string =>
    joined(movement(kind), WAYS[direction], `zu ${name(to)}`, inOctave(octave), ofHand(hand));

  /** "linke Hand allein, nur E–Fis–Gis, ♩ = 60, zwei Töne auf jeden Schlag" */
  const only = (task: Task): string => {
    const who = task.hands === null ? '' : `${alone(task.hands)}, `;
    return `${who}${task.stretch.kind === 'whole' ? '' : 'nur '}${stretch(task.stretch)}, ${tempo(task)}`;
  };

  return { name, spot, spotAfter, stretch, beside, fault, faultPlace, placed, crossing, ofHand, only };
}

/** The thumb passes under, or a finger over it. */
export const movement = (kind: CrossingFacts['kind']): string =>
  kind === 'thumb-under' ? 'der Untersatz' : 'der Übersatz';

export type Notes = ReturnType<typeof notesIn>;
