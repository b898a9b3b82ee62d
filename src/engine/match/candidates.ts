import { ALL_KEYS, allChoices, buildExercise } from '../exercise/index.ts';
import type { Exercise, ExerciseChoice } from '../exercise/index.ts';
import type { Heard } from '../listen/index.ts';

/** An exercise of the set and the octave where the notes would have it. */
export interface Candidate {
  readonly exercise: Exercise;
  readonly octaves: number;
}

const MIDI_NUMBERS = 128;
/** The lowest note may be missing: a pattern may begin so many semitones below what was heard. */
const BELOW_HEARD = 24;
/** Less agreement than this is never recognised and not worth aligning. */
const LEAST_AGREEMENT = 0.3;

/** The keys that a form uses, whatever the tonic: how often each sounds, by MIDI number in C. */
interface Pattern {
  readonly choice: ExerciseChoice;
  /** its keys, and how often each comes */
  readonly keys: readonly { readonly midi: number; readonly count: number }[];
  readonly size: number;
  readonly lowest: number;
}

/**
 * Heard notes (moved by `semitonesOff`) → the `most` exercises whose keys, counted, agree best with the keys heard, best first, one a hand.
 *
 * Forms look alike in all keys but for the tonic, so the forms of C major and C minor are slid along the keyboard:
 * agreement is 2·Σ min(heard, expected) / (heard + expected) over keys. It knows no order and no time; it only picks those
 * that are worth aligning.
 */
export function likelyCandidates(heard: Heard, semitonesOff: number, most: number): readonly Candidate[] {
  const counts = new Float64Array(MIDI_NUMBERS);
  const midis = heard.notes.map((note) => note.midi + semitonesOff);
  for (const midi of midis) counts[midi] = (counts[midi] ?? 0) + 1;
  const lowest = Math.min(...midis);
  const highest = Math.max(...midis);
  const scored: { pattern: Pattern; semitones: number; agreement: number }[] = [];
  for (const pattern of patterns()) {
    const from = lowest - pattern.lowest - BELOW_HEARD;
    for (let semitones = from; semitones <= highest - pattern.lowest; semitones++) {
      let shared = 0;
      for (const { midi, count } of pattern.keys) shared += Math.min(count, counts[midi + semitones] ?? 0);
      const agreement = (2 * shared) / (pattern.size + midis.length);
      if (agreement >= LEAST_AGREEMENT) scored.push({ pattern, semitones, agreement });
    }
  }
  return scored
    .sort((a, b) => b.agreement - a.agreement)
    .slice(0, most)
    .map(({ pattern, semitones }) => candidateOf(pattern, semitones));
}

/** The exercise in the key and hand that the slid pattern stands for. */
function candidateOf(pattern: Pattern, semitones: number): Candidate {
  const { choice } = pattern;
  const mode = choice.key.endsWith('major') ? 'major' : 'minor';
  const tonicClass = ((semitones % 12) + 12) % 12;
  const key = keyAt(mode, tonicClass);
  const lowest = pattern.lowest + semitones;
  const hands = choice.hands === 'together' ? (['together'] as const) : (['right', 'left'] as const);
  const built = hands.map((hand) => {
    const exercise = buildExercise({ ...choice, key, hands: hand });
    return { exercise, octaves: (lowest - lowestKey(exercise)) / 12 };
  });
  // One hand alone cannot be told by ear: the one whose written octave lies nearer, the right where both do.
  return built.reduce((best, other) => (Math.abs(other.octaves) < Math.abs(best.octaves) ? other : best));
}

function lowestKey(exercise: Exercise): number {
  return Math.min(...exercise.steps.flatMap((step) => step.notes.map((note) => note.midi)));
}

/** The key of the set whose tonic lies so many semitones above C. */
function keyAt(mode: 'major' | 'minor', tonicClass: number): string {
  return ALL_KEYS.filter((key) => key.endsWith(mode)).find((key) => tonicClassOf(key) === tonicClass)!;
}

function tonicClassOf(key: string): number {
  const [letter, accidental] = [key[0]!, key[1]];
  const natural = { C: 0, D: 2, E: 4, F: 5, G: 7, A: 9, B: 11 }[letter]!;
  const moved = natural + (accidental === '#' ? 1 : accidental === 'b' ? -1 : 0);
  return (moved + 12) % 12;
}

const built: Pattern[] = [];

/** Every form of C major and C minor; written out on first use, since it takes some ms. */
function patterns(): readonly Pattern[] {
  if (built.length === 0) {
    for (const choice of allChoices()) {
      if (choice.key !== 'C major' && choice.key !== 'C minor') continue;
      if (choice.hands === 'left') continue;
      const midis = buildExercise(choice).steps.flatMap((step) => step.notes.map((note) => note.midi));
      const keys = [...new Set(midis)].map((midi) => ({
        midi,
        count: midis.filter((other) => other === midi).length,
      }));
      built.push({ choice, keys, size: midis.length, lowest: Math.min(...midis) });
    }
  }
  return built;
}
