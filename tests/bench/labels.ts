import type { Truth } from '../support/render.ts';
import type { Attempt } from './attempts.ts';

/** Under what conditions an attempt was made, in words to group by. */
export type Labels = Readonly<
  Record<
    | 'piano'
    | 'form'
    | 'hands'
    | 'speed'
    | 'noise level'
    | 'noise kind'
    | 'room'
    | 'microphone'
    | 'tuning'
    | 'touch'
    | 'mistakes'
    | 'hardship',
    string
  >
>;

export function labelsOf({ spec, notesPerSec, hardship }: Attempt, truth: Truth): Labels {
  const { home, student, exercise } = truth;
  const loudest = [...home.noises].sort((a, b) => a.belowDb - b.belowDb)[0];
  const overlap = student.overlapMs / (1000 / notesPerSec);
  const kinds = new Set(
    truth.notes
      .filter((note) => note.verdict !== 'correct')
      .map((note) => note.extraKind ?? note.verdict)
      .concat(truth.missed.length > 0 ? ['missed' as never] : []),
  );
  return {
    piano: spec.piano,
    form: exercise.form,
    hands: exercise.hands,
    speed: band(notesPerSec, [1.5, 3, 5], '/s'),
    'noise level': loudest === undefined ? 'none' : band(loudest.belowDb, [10, 25, 35, 45], ' dB below'),
    'noise kind': loudest?.kind ?? 'none',
    room: home.room === null ? 'none' : band(home.room.decaySec, [0.2, 0.35, 0.5, 0.8], ' s'),
    microphone: home.phone ? 'phone' : 'good',
    tuning: band(home.tuningCents, [-90, -50, -20, 10], ' cents'),
    touch: overlap < -0.15 ? 'detached' : overlap > 0.1 ? 'overlapping' : 'just connected',
    mistakes: kinds.size === 0 ? 'none' : kinds.size === 1 ? [...kinds][0]! : 'several kinds',
    hardship,
  };
}

/** A number → the band that it falls into, named by its lower bound. */
function band(value: number, from: readonly number[], unit: string): string {
  const at = from.findLastIndex((bound) => value >= bound);
  const low = at < 0 ? '' : `${from[at]}`;
  const high = from[at + 1];
  return high === undefined ? `${low}${unit} and more` : `${low} … ${high}${unit}`;
}

/** Registers of the keyboard, A2–C7 being what the targets speak of. */
export function registerOf(midi: number): string {
  if (midi < 45) return '1 below A2';
  if (midi < 60) return '2 A2–B3';
  if (midi < 72) return '3 C4–B4';
  if (midi < 84) return '4 C5–B5';
  return midi <= 96 ? '5 C6–C7' : '6 above C7';
}
