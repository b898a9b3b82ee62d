import { logOddsOf } from '../base/odds.ts';
import { mean } from '../base/statistics.ts';
import type { Hand } from '../exercise/index.ts';
import type { Candidate, Heard } from '../listen/index.ts';
import type { Alignment } from '../match/index.ts';
import { RECHECK_BOUNDS } from './bounds.ts';
import type { Usual } from './look/index.ts';

/** What the first listening knows of one step. */
export interface StepHeard {
  readonly step: number;
  /** written keys, as the listener numbers them */
  readonly written: readonly number[];
  /** mean onset of its notes that were heard right, s; null where none was */
  readonly timeSec: number | null;
  /** its notes one by one; `timeSec` null: not heard right */
  readonly notes: readonly {
    readonly midi: number;
    readonly hand: Hand;
    readonly timeSec: number | null;
  }[];
}

/** When and among which keys to look for one key of a step. */
export interface Moment {
  readonly timeSec: number;
  readonly written: readonly number[];
}

/**
 * Where to look for a key: in the middle of its step; but where hands are apart or a chord is rolled so wide that nothing sounds
 * in the middle, about where it was heard itself (`heardSec`), or else in the middle of its own hand. Null: nothing was heard.
 */
export function momentIn(
  { timeSec, written, notes }: StepHeard,
  hand: Hand,
  heardSec: number | null,
): Moment | null {
  if (timeSec === null) return null;
  const onsets = (some: StepHeard['notes']): number[] => some.flatMap((note) => note.timeSec ?? []);
  const isNear = (a: number, b: number): boolean => Math.abs(a - b) < RECHECK_BOUNDS.nearSec;
  if (heardSec === null || isNear(heardSec, timeSec))
    if (onsets(notes).every((one) => isNear(one, timeSec))) return { timeSec, written };
  const own = onsets(notes.filter((note) => note.hand === hand));
  const about = heardSec ?? mean(own) ?? timeSec;
  const there = notes.filter((note) =>
    note.timeSec === null ? note.hand === hand : isNear(note.timeSec, about),
  );
  return { timeSec: mean(onsets(there)) ?? about, written: there.map(({ midi }) => midi) };
}

/** Steps in order, each with what was heard of it. */
export function stepsHeard(
  heard: Heard,
  { exercise, matched, semitoneShift }: Alignment,
): readonly StepHeard[] {
  return exercise.steps.map(({ step }) => {
    const notes = matched.filter((note) => note.step === step);
    const all = notes.map((note) => ({
      midi: note.expected.midi - semitoneShift,
      hand: note.expected.hand,
      timeSec: note.verdict === 'correct' ? heard.notes[note.played]!.timeSec : null,
    }));
    return {
      step,
      written: notes.map(({ expected }) => expected.midi - semitoneShift),
      timeSec: mean(all.flatMap(({ timeSec }) => timeSec ?? [])) ?? null,
      notes: all,
    };
  });
}

/** The blind ear believed less than this of a note: it says nothing about what is usual. */
const LEAST_BELIEVED = 0.3;
/** notes of a hand that make something usual */
const LEAST_NOTES = 2;

/** What the blind ear says on the whole of the notes of each hand that were heard right, one note left out. */
export class UsualHands {
  readonly #notes: readonly { readonly place: number; readonly hand: Hand; readonly candidate: Candidate }[];

  constructor(heard: Heard, { matched }: Alignment) {
    const byName = new Map((heard.candidates ?? []).map((one) => [nameOf(one), one]));
    this.#notes = matched.flatMap((note, place) => {
      const candidate =
        note.verdict === 'correct' ? byName.get(nameOf(heard.notes[note.played]!)) : undefined;
      return candidate !== undefined && candidate.probability > LEAST_BELIEVED
        ? [{ place, hand: note.expected.hand, candidate }]
        : [];
    });
  }

  of(hand: Hand, without: number | null): Usual | null {
    const notes = this.#notes.filter((note) => note.hand === hand && note.place !== without);
    if (notes.length < LEAST_NOTES) return null;
    return {
      belief: mean(notes.map(({ candidate }) => logOddsOf(Math.min(candidate.probability, MOST_BELIEVED))))!,
      loudnessDb: mean(notes.map(({ candidate }) => candidate.loudnessDb))!,
    };
  }
}

const MOST_BELIEVED = 0.995;

/** A key strikes once at a time: key and moment name a strike, in notes and candidates alike. */
function nameOf({ midi, timeSec }: { readonly midi: number; readonly timeSec: number }): string {
  return `${midi}@${timeSec}`;
}
