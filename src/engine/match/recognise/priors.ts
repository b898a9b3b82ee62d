import type { ExerciseChoice, Hand } from '../../exercise/index.ts';
import type { HandLikelihood, HandPlayed, RecogniseOptions } from '../types.ts';

/**
 * How pianos are tuned, as densities over cents against A4 = 440 Hz. Three kinds, from memory and common practice, no source:
 * kept in tune (most of them at 440 to 443 Hz, 0 to +12, a little sharp in a damp summer); neglected, 10 to 90 flat (a string
 * that is let alone goes flat, never 30 sharp); and anything from 100 flat to 60 sharp (an old pitch, a recording at another speed).
 */
function density(cents: number): number {
  const inTune = Math.exp(-0.5 * ((cents - 3) / 8) ** 2) / (8 * Math.sqrt(2 * Math.PI));
  const neglected = cents > -93 && cents < -10 ? 1 / 83 : 0;
  const anything = cents > -100 && cents < 60 ? 1 / 160 : 0;
  return 0.74 * inTune + 0.21 * neglected + 0.05 * anything;
}

/**
 * How sure a known tuning is of the next recording, cents: that one reading strays by 2.3 and this one as much (bench:piano-known,
 * development piano), and from week to week a piano moves with the damp by some two (common practice, no source). And how often it
 * is a piano that is known and not the school's or a friend's (common practice, no source): without that, one flat piano at home
 * would move what is played elsewhere.
 */
const KNOWN_SD_CENTS = 4;
const KNOWN_SHARE = 0.9;

/** … and over those of the pianos that are known, each as likely as the others. */
function densityKnowing(cents: number, known: readonly number[]): number {
  const its = known.map((one) => Math.exp(-0.5 * ((cents - one) / KNOWN_SD_CENTS) ** 2));
  const share = KNOWN_SHARE / known.length / (KNOWN_SD_CENTS * Math.sqrt(2 * Math.PI));
  return share * its.reduce((sum, one) => sum + one, 0) + (1 - KNOWN_SHARE) * density(cents);
}

/** The semitones by which a listener most likely misread the piano, and the chance that it is so. */
export interface Misreading {
  readonly semitones: number;
  readonly chance: number;
  /** what it is if not that */
  readonly otherwise: number;
}

/**
 * The piano's tuning as it was read without knowing what was played → by how many semitones every key was misread. A piano 80 cents
 * flat and one 20 cents sharp sound alike but for the keys; what is known of how pianos are tuned decides. Where the tunings of the
 * pianos that this player plays are `known`, they decide for all that sounds like one of them.
 */
export function misreading(readCents: number, known: readonly number[] = []): Misreading {
  const likely = (cents: number): number =>
    known.length === 0 ? density(cents) : densityKnowing(cents, known);
  const asRead = likely(readCents);
  const low = likely(readCents - 100);
  const high = likely(readCents + 100);
  const all = asRead + low + high;
  const otherwise = low > high ? 1 : -1;
  if (asRead >= Math.max(low, high)) return { semitones: 0, chance: asRead / all, otherwise };
  return { semitones: otherwise, chance: Math.max(low, high) / all, otherwise: 0 };
}

/** The tunings that are known of the pianos that a player plays. */
export function knownPianos({
  pianoCents = null,
  elsewhereCents = [],
}: Partial<RecogniseOptions>): readonly number[] {
  return pianoCents === null ? elsewhereCents : [pianoCents, ...elsewhereCents];
}

/** Somebody said which hand it was. */
export function handSaid(hand: Hand): HandLikelihood {
  return hand === 'left' ? { left: 1, right: 0 } : { left: 0, right: 1 };
}

/** How far from where it is written a hand plays: at its place, an octave away, two (common practice, no source). */
const BY_OCTAVES = [0.75, 0.11, 0.02] as const;
const FURTHER = 0.005;
/**
 * Two in three books begin the right hand between the G below middle C and the F sharp above it, the others between middle C and the B
 * above it (common practice, no source); the left hand lies an octave lower, and three and four octaves begin an octave lower still.
 */
const REGISTERS = [
  { fromMidi: 55, share: 2 / 3 },
  { fromMidi: 60, share: 1 / 3 },
] as const;
const LONG_OCTAVES = 3;

/** So many attempts of the player's own weigh as much as what is usual among all; those that began within so many semitones count. */
const USUAL_WEIGHS = 2;
const ALIKE_SEMITONES = 6;

/**
 * Which hand played one hand's exercise that begins on `midi`? It cannot be heard: the likelihood follows from where hands usually
 * play, and from where this player's are known to have played the same form. It never reaches certainty.
 */
export function handLikelihood(
  { form, octaves }: Pick<ExerciseChoice, 'form' | 'octaves'>,
  midi: number,
  known: readonly HandPlayed[] = [],
): HandLikelihood {
  const usual = { left: usualAt('left', midi, octaves), right: usualAt('right', midi, octaves) };
  const own = (hand: Hand): number =>
    known.filter(
      (one) => one.hand === hand && one.form === form && Math.abs(one.midi - midi) <= ALIKE_SEMITONES,
    ).length;
  const left = own('left') + (USUAL_WEIGHS * usual.left) / (usual.left + usual.right);
  const right = own('right') + (USUAL_WEIGHS * usual.right) / (usual.left + usual.right);
  return { left: left / (left + right), right: right / (left + right) };
}

function usualAt(hand: Hand, midi: number, octaves: number): number {
  const down = (hand === 'left' ? 12 : 0) + (octaves >= LONG_OCTAVES ? 12 : 0);
  return REGISTERS.reduce((sum, { fromMidi, share }) => {
    const away = Math.abs(Math.floor((midi - fromMidi + down) / 12));
    return sum + share * (BY_OCTAVES[away] ?? FURTHER);
  }, 0);
}
