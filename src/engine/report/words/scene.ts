import type { Exercise, ExpectedNote, Hand, KeyFacts, Practising } from '../../exercise/index.ts';
import { isSolid, keyFacts, pitchClassName } from '../../exercise/index.ts';
import type { Heard } from '../../listen/index.ts';
import type { Alignment } from '../../match/index.ts';
import type { Criteria } from '../criteria/index.ts';
import type { Measured } from '../measures/index.ts';
import type { Report, Words } from '../types.ts';
import type { Advice, SituationName, Statement } from './said/index.ts';

export type Practice = NonNullable<Words['practice']>;

/** Everything that a situation may look at. */
export interface Scene {
  readonly heard: Heard;
  readonly alignment: Alignment;
  readonly exercise: Exercise;
  readonly facts: KeyFacts;
  readonly measured: Measured;
  readonly criteria: Criteria;
  /** seconds of its sound that were lost on the way; 0: none */
  readonly soundLostSec: number;
  /** which hand played is known: it was chosen, for it cannot be heard */
  readonly handKnown: boolean;
  /** this attempt's report, without its words */
  readonly report: Omit<Report, 'words'>;
  /** earlier reports of the same exercise, oldest first */
  readonly earlier: readonly Report[];
  /** the last of them that were played in this sitting */
  readonly inSitting: readonly Report[];
  /** earlier reports of the same exercise by one hand alone, oldest first; this hand's own are in `earlier` */
  readonly alone: Readonly<Record<Hand, readonly Report[]>>;
  /** how many days of the calendar before this attempt each of them was played; 0 where it is not known */
  readonly daysBefore: ReadonlyMap<Omit<Report, 'words'>, number>;
}

/** A situation that holds: what is said of it, how grave it is among its like, and what to do about it. */
export interface Found {
  readonly statement: Statement;
  /** among situations of one rank: the number of notes, or how many times over its bound; absent: 1 */
  readonly gravity?: number;
  readonly advice: Advice;
  readonly practice?: Practice;
}

/** One row of the table: what is found where it holds. Which rank it has, why and whence, rules.ts says. */
export type Situation = (scene: Scene) => Found | null;

/** Rows by their names, in the order in which they are tried: the first that holds speaks. */
export type Situations = Readonly<Partial<Record<SituationName, Situation>>>;

export function sceneFacts(exercise: Exercise): KeyFacts {
  return keyFacts(exercise.choice.key);
}

/** Its steps are chords: by its form, or because hand positions were to be struck as chords. */
export function isChordForm({ choice: { form }, practised }: Exercise): boolean {
  return isSolid(form) || isBlocked(practised);
}

function isBlocked(practised: Practising | undefined): boolean {
  return practised !== undefined && practised.repeats > 0 && practised.intention.blocked === true;
}

/** Said only where both hands play: whose note it is. */
export function handIfBoth({ exercise }: Scene, hand: Hand): Hand | null {
  return exercise.choice.hands === 'together' ? hand : null;
}

/** Whether a note of a hand's chord is that which was played, in whatever octave. */
export function isSameVoice(written: ExpectedNote, note: ExpectedNote): boolean {
  return written.finger === null ? nameOf(written) === nameOf(note) : written.finger === note.finger;
}

/** A note by its plain name. */
export function nameOf(note: ExpectedNote): string {
  return pitchClassName(note.name);
}
