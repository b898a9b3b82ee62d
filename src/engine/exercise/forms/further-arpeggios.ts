import { Note } from 'tonal';
import { isBlack } from '../../base/units.ts';
import type { Hand, Mode } from '../types.ts';
import { begun, fingered } from './places.ts';
import { climb, upAndDown } from './runs.ts';
import type { FormDefinition } from './types.ts';

/** A chord played note by note: its lowest note above the tonic, and all its notes above that. */
interface Chord {
  readonly lowest: string;
  readonly above: readonly string[];
}

const inBothModes = (chord: Chord): Readonly<Record<Mode, Chord>> => ({ major: chord, minor: chord });

const CHORDS = {
  'arpeggio-first-inversion': {
    major: { lowest: '3M', above: ['1P', '3m', '6m'] },
    minor: { lowest: '3m', above: ['1P', '3M', '6M'] },
  },
  'arpeggio-second-inversion': {
    major: { lowest: '5P', above: ['1P', '4P', '6M'] },
    minor: { lowest: '5P', above: ['1P', '4P', '6m'] },
  },
  // On the dominant it is the same in a major key and in the minor one of the same tonic.
  'dominant-seventh': inBothModes({ lowest: '5P', above: ['1P', '3M', '5P', '7m'] }),
  // On the leading note, raised in minor.
  'diminished-seventh': inBothModes({ lowest: '7M', above: ['1P', '3m', '5d', '7d'] }),
} as const satisfies Readonly<Record<string, Readonly<Record<Mode, Chord>>>>;

/** One of these chords note by note from its lowest, up and down, the top note once → what its row says of it. */
export function furtherArpeggio(
  chord: keyof typeof CHORDS,
): Pick<FormDefinition, 'fingeredAs' | 'lowest' | 'places'> {
  const inMode: Readonly<Record<Mode, Chord>> = CHORDS[chord];
  return {
    fingeredAs: 'further-arpeggio',
    lowest: ({ tonic, mode }) => Note.transpose(tonic, inMode[mode].lowest),
    places: ({ key: { mode }, hand, start, octaves, principle }) => {
      const { above } = inMode[mode];
      const names = climb(start, above, octaves);
      const fingers = above.length === TRIAD ? triadFingers(names, hand) : seventhFingers(names, hand);
      const up = fingered(names, begun(fingers, principle));
      return upAndDown(up, up);
    },
  };
}

const TRIAD = 3;
const SEVENTH = 4;
const FOURTH = 5;

/**
 * Where the thumb falls, among so many notes: on the first where that is a white key or there are none, else on the first white key
 * beside a black one which the hand has just left (right hand, going up) or goes on to (left hand). On the tonic's own arpeggios this
 * gives the crossings of the published tables. Common practice, no source.
 */
function thumbAmong(blacks: readonly boolean[], hand: Hand): number {
  if (!blacks[0]! || !blacks.includes(false)) return 0;
  const beside = hand === 'right' ? blacks.length - 1 : 1;
  return blacks.findIndex((black, at) => !black && blacks[(at + beside) % blacks.length]);
}

const blacksIn = (names: readonly string[]): readonly boolean[] =>
  names.map((name) => isBlack(Note.midi(name)!));

/**
 * The fingers beside the thumb are 2 and 4, or 3 where both steps of the hand are thirds, and in the left hand on a black key or where
 * the thumb's neighbour is a third off: common practice, no source. No crossing depends on them.
 */
export function triadFingers(names: readonly string[], hand: Hand): readonly number[] {
  const midis = names.map((name) => Note.midi(name)!);
  const blacks = blacksIn(names.slice(0, TRIAD));
  const thumb = thumbAmong(blacks, hand);
  const semitones = (at: number): number => (midis[at + 1]! - midis[at]!) % 12;
  const far = hand === 'right' ? farInRight(semitones, thumb) : farInLeft(semitones, blacks, thumb);
  const end = hand === 'right' ? names.length - 1 : 0;
  return names.map((_, at) => {
    if (at === end && thumb === 0) return 5;
    const above = (at - thumb + TRIAD) % TRIAD;
    if (above === 0) return 1;
    return above === (hand === 'right' ? 1 : 2) ? 2 : far;
  });
}

/** The finger on the second key above the thumb: 3 where the hand lies over two thirds, 4 over a fourth and a third. */
function farInRight(semitones: (at: number) => number, thumb: number): number {
  return semitones(thumb) < FOURTH && semitones((thumb + 1) % TRIAD) < FOURTH ? 3 : 4;
}

/** The finger on the second key below the thumb. */
function farInLeft(semitones: (at: number) => number, blacks: readonly boolean[], thumb: number): number {
  const [far, near] = [(thumb + 1) % TRIAD, (thumb + 2) % TRIAD];
  const fromThumb = semitones(near);
  const between = semitones(far);
  if (fromThumb < FOURTH && between < FOURTH) return 3;
  if (between >= FOURTH) return 4;
  return blacks[far]! ? 3 : 4;
}

/** Fingers 1 2 3 4 over and over. On a black root books also begin with 2; no crossing depends on it. */
function seventhFingers(names: readonly string[], hand: Hand): readonly number[] {
  const thumb = thumbAmong(blacksIn(names.slice(0, SEVENTH)), hand);
  const end = hand === 'right' ? names.length - 1 : 0;
  return names.map((_, at) => {
    if (at === end && thumb === 0) return 5;
    const above = (at - thumb + SEVENTH) % SEVENTH;
    return hand === 'right' ? above + 1 : ((SEVENTH - above) % SEVENTH) + 1;
  });
}
