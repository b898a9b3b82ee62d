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
  'no',
  'one',
  'two',
  'three',
  'four',
  'five',
  'six',
  'seven',
  'eight',
  'nine',
  'ten',
  'eleven',
  'twelve',
];
const ORDINALS = ['first', 'second', 'third', 'fourth', 'fifth', 'sixth', 'seventh'];

/** 3 → "three"; figures from thirteen on. */
export const count = (number: number): string => COUNTS[number] ?? String(number);

/** First letter as at the head of a sentence. */
export const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);

/** ["E", "G", "C"] → "E, G and C" */
export function list(words: readonly string[]): string {
  if (words.length < 2) return words[0] ?? '';
  return `${words.slice(0, -1).join(', ')} and ${words.at(-1)!}`;
}

export const hands = (who: Hands): string => (who === 'together' ? 'both hands' : `${who} hand`);

/** "the thumb", "finger 3" */
export const finger = (number: number): string => (number === 1 ? 'the thumb' : `finger ${number}`);

/** "the thumb"; of both hands together "the thumb of the left hand" */
export const fingerOf = (one: FingerOf): string =>
  one.hand === null ? finger(one.finger) : `${finger(one.finger)} of the ${one.hand} hand`;

/** "V7", "last I", "first inversion going up" */
export function chord({ label, number, which }: ChordPlace): string {
  const name = label ?? `${ORDINALS[number - 1] ?? `${number}th`} chord`;
  if (which === 'only') return name;
  if (which === 'up' || which === 'down') return `${name} ${WAYS[which]}`;
  return `${which} ${name}`;
}

const WAYS = { up: 'going up', down: 'coming down' } as const;

/** "going up", "at the top", or the chord's name: "in the V7" */
export function where(place: StepPlace): string {
  switch (place.kind) {
    case 'chord':
      return `in the ${chord(place.chord)}`;
    case 'up':
    case 'down':
      return WAYS[place.kind];
    case 'anywhere':
      return '';
    default:
      return `at the ${place.kind}`;
  }
}

/** "E♭ going up", "the V7" */
export function spot({ note, place }: NamedStep): string {
  return place.kind === 'chord' ? `the ${chord(place.chord)}` : `${note} ${where(place)}`.trim();
}

/** "A♭–C–E♭", "from the root position going up to the top root position", "from A♭ up to A♭" */
export function stretch(one: NamedStretch): string {
  switch (one.kind) {
    case 'all':
      return one.names.join('–');
    case 'chords':
      return `from the ${chord(one.from)} to the ${chord(one.to)}`;
    case 'ends': {
      const way = { up: 'up to', down: 'down to', 'up-and-down': 'up and down to' }[one.way];
      return `from ${one.from} ${way} ${one.to}`;
    }
  }
}

/** "F for E", "E missing" */
export function fault({ wanted, struck }: FaultFacts): string {
  if (struck === null) return `${wanted} missing`;
  if (struck === 'octave too high') return `${wanted} an octave too high`;
  if (struck === 'octave too low') return `${wanted} an octave too low`;
  return `${struck} for ${wanted}`;
}

/** "going up", and with both hands the hand: "going up (left hand)" */
export function faultPlace({ place, hand }: FaultFacts): string {
  return hand === null ? where(place) : `${where(place)} (${hand} hand)`;
}

/** "F for E going up" */
export const placed = (one: FaultFacts): string => `${fault(one)} ${faultPlace(one)}`.trim();

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
