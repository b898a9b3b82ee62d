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

const COUNTS = 'no one two three four five six seven eight nine ten eleven twelve'.split(' ');
const ORDINALS = 'first second third fourth fifth sixth seventh'.split(' ');

/** 3 → "three"; figures from thirteen on. */
export const count = (number: number): string => COUNTS[number] ?? String(number);

/** 3 → "third" */
export const nth = (number: number): string => ORDINALS[number - 1] ?? `${number}th`;

/** ["E", "G", "C"] → "E, G and C" */
export function list(words: readonly string[]): string {
  if (words.length < 2) return words[0] ?? '';
  return `${words.slice(0, -1).join(', ')} and ${words.at(-1)!}`;
}

export const hands = (who: Hands): string => (who === 'together' ? 'both hands' : `${who} hand`);

export const WAYS = { up: 'going up', down: 'coming down' } as const;

/** "left hand alone" */
const alone = (who: Hands): string => hands(who) + (who === 'together' ? '' : ' alone');

/** "V7", "last I", "first inversion going up" */
export function chord({ label, number, which }: ChordPlace): string {
  const name = label ?? `${nth(number)} chord`;
  if (which === 'only') return name;
  if (which === 'up' || which === 'down') return `${name} ${WAYS[which]}`;
  return `${which} ${name}`;
}

const goesDown = ({ which }: ChordPlace): boolean => which === 'down';

/** "first inversion": which of them, the stretch itself says */
const withoutWay = (one: ChordPlace): string =>
  chord(one.which === 'up' || one.which === 'down' ? { ...one, which: 'only' } : one);

/** "in the upper octave" */
const inOctave = (octave: Octave | undefined): string =>
  octave === undefined ? '' : `in the ${octave} octave`;

const inBar = (bar: number): string => (bar === 0 ? 'in the upbeat' : `in bar ${bar}`);

/** "going up", "at the top", "in bar 3", or the chord's name: "in the V7" */
export function where(place: StepPlace): string {
  switch (place.kind) {
    case 'chord':
      return `in the ${chord(place.chord)}`;
    case 'up':
    case 'down':
      return joined(WAYS[place.kind], inOctave(place.octave));
    case 'bar':
      return inBar(place.bar);
    case 'anywhere':
      return inOctave(place.octave);
    default:
      return `at the ${place.kind}`;
  }
}

export function often(how: HowOften): string {
  switch (how.kind) {
    case 'unsaid':
      return '';
    case 'once':
      return where(how.place);
    case 'both':
      return 'both times';
    case 'each':
      return 'each time';
    case 'some':
      return how.count === 2 ? 'twice' : `${count(how.count)} times`;
  }
}

/** A pulse slower than this is said in longer values. */
const LEAST_BPM = 40;

/** "♩ = 60, two notes a beat"; of chords "♩ = 60, one chord a beat" */
export function tempo({
  tempoBpm,
  notesABeat,
  stretch,
}: Pick<Task, 'tempoBpm' | 'notesABeat' | 'stretch'>): string {
  if (notesABeat === null) return `♩ = ${tempoBpm}`;
  const what = ofChords({ stretch }) ? 'chord' : 'note';
  if (tempoBpm >= LEAST_BPM)
    return `♩ = ${tempoBpm}, ${notesABeat === 1 ? `one ${what}` : `${count(notesABeat)} ${what}s`} a beat`;
  return notesABeat === 1
    ? `♩ = ${2 * tempoBpm}, one ${what} every two beats`
    : `♩ = ${notesABeat * tempoBpm}, one ${what} a beat`;
}

/** All that is said of notes, with what they are called. */
export function notesIn(naming: NoteNaming) {
  const name = (plain: string): string => noteName(plain, naming);

  /** "E♭ going up", "the V7" */
  const spot = ({ note, place }: NamedStep): string =>
    place.kind === 'chord' ? `the ${chord(place.chord)}` : joined(name(note), where(place));

  /** "A♭–C–E♭", "from the root position going up to the top root position", "from A♭ up to A♭" */
  function stretch(one: NamedStretch): string {
    switch (one.kind) {
      case 'notes':
        return one.names.map(name).join('–');
      case 'numerals':
        return one.names.join('–');
      case 'chords': {
        const [from, to] = [one.from, one.to].map(withoutWay) as [string, string];
        if (goesDown(one.to) && !goesDown(one.from) && one.from.which !== 'top')
          return `from the ${from} over the top to the ${to}`;
        return `from the ${from} ${goesDown(one.to) ? 'down' : 'up'} to the ${to}`;
      }
      case 'whole':
        return 'the whole';
      case 'ends': {
        const way = { up: 'up to', down: 'down to', 'up-and-down': 'up and down to' }[one.way];
        const many = one.notes === undefined ? '' : ` (${one.notes} notes)`;
        return `from ${name(one.from)} ${way} ${name(one.to)}${many}`;
      }
      case 'bars': {
        const from = one.fromBar === one.toBar ? '' : inBar(one.fromBar);
        return joined(`from ${name(one.from)}`, from, `to ${name(one.to)}`, inBar(one.toBar));
      }
    }
  }

  /** "C natural" beside C♯, where both are called C; in German names C and Cis need no more. */
  const beside = (struck: string, wanted: string): string =>
    naming !== 'german' && struck.length === 1 && wanted.length > 1 && wanted.startsWith(struck)
      ? `${name(struck)} natural`
      : name(struck);

  /** "F instead of E", "E missing" */
  function fault({ wanted, struck }: Pick<FaultFacts, 'wanted' | 'struck'>): string {
    const right = name(wanted);
    if (struck === null) return `${right} missing`;
    if (struck === 'octave-high') return `${right} an octave too high`;
    if (struck === 'octave-low') return `${right} an octave too low`;
    return `${beside(struck, wanted)} instead of ${right}`;
  }

  /** "going up", and with both hands the hand: "going up (left hand)" */
  const faultPlace = ({ place, hand }: Pick<FaultFacts, 'place' | 'hand'>): string =>
    joined(where(place), hand === null ? '' : `(${hand} hand)`);

  /** "F instead of E going up" */
  const placed = (one: FaultFacts): string => joined(fault(one), faultPlace(one));

  /** "going up to A" */
  const crossing = ({ direction, to, octave, hand }: CrossingFacts): string =>
    joined(`${WAYS[direction]} to ${name(to)}`, inOctave(octave), hand === null ? '' : `(${hand} hand)`);

  /** "left hand alone, only E–F♯–G♯, ♩ = 60, two notes a beat" */
  const only = (task: Task): string => {
    const who = task.hands === null ? '' : `${alone(task.hands)}, `;
    return `${who}${task.stretch.kind === 'whole' ? '' : 'only '}${stretch(task.stretch)}, ${tempo(task)}`;
  };

  return { name, spot, stretch, beside, fault, faultPlace, placed, crossing, only };
}

export type Notes = ReturnType<typeof notesIn>;
