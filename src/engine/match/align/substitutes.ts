import type { ExpectedPlace, IndexedNote } from './notes.ts';
import type { ExpectedNote } from '../../exercise/index.ts';
import { BOUNDS } from '../costs/index.ts';

/** A place and the struck note that stands in it, right or wrong. */
export interface Filled {
  readonly place: ExpectedPlace;
  readonly struck: number;
}

/** When a step was played or should have been, and how long a step lasts there. */
interface Due {
  readonly timeSec: number;
  readonly stepSec: number;
  /** the step itself was played, by other notes of its chord */
  readonly known: boolean;
}

/**
 * The missed ones of all places and the unanswered notes → the pairs of which time says that the one was struck in place of the other.
 * A step's time is that of its other notes, else where it falls between its played neighbours, else on from them at the
 * local beat. The nearest pair in time and pitch goes first. The same pitch at the right time is the note itself, come out of
 * order (one hand ahead of the other).
 */
export function substitutesFor(
  places: readonly ExpectedPlace[],
  missed: readonly ExpectedPlace[],
  leftover: readonly number[],
  struck: readonly IndexedNote[],
  answers: readonly Filled[],
  beatSecAt: (timeSec: number) => number,
  beatsPerStep: number,
): readonly Filled[] {
  const onsets = stepOnsets(answers, struck);
  const pairs = missed
    .flatMap((place) => {
      const due = dueTime(place, onsets, beatSecAt, beatsPerStep);
      if (due === undefined) return [];
      return leftover.flatMap((index) => {
        const note = struck[index]!;
        const apart = Math.abs(note.midi - place.note.midi);
        if (apart > BOUNDS.wrongSemitones && apart !== 12) return [];
        const step = places.flatMap((other) => (other.step === place.step ? [other.note] : []));
        if (crossesFingers(note.midi, place.note, step)) return [];
        const share = Math.abs(note.timeSec - due.timeSec) / due.stepSec;
        return share <= allowedShare(due, apart)
          ? [{ place, struck: index, cost: share + 0.05 * apart }]
          : [];
      });
    })
    .sort((a, b) => a.cost - b.cost);
  const filled: Filled[] = [];
  for (const pair of pairs) {
    const taken = filled.some((done) => done.place === pair.place || done.struck === pair.struck);
    if (!taken) filled.push({ place: pair.place, struck: pair.struck });
  }
  return filled;
}

/**
 * How far from its time a key may be struck and still stand for the note, share of a step. The note itself answers wherever it falls
 * between its neighbours: much too soon or too late it is uneven, but not missing.
 */
function allowedShare({ known }: Due, apart: number): number {
  if (apart === 0) return known ? BOUNDS.wrongShareOfStep : 1;
  return known ? BOUNDS.wrongShareOfStep / 2 : BOUNDS.wrongShareOfStep;
}

/**
 * Fingers of a chord do not cross, nor do hands: a key struck in place of another lies above the next lower key of its step
 * and below the next higher one. `step`: all notes of the step.
 */
export function crossesFingers(midi: number, note: ExpectedNote, step: readonly ExpectedNote[]): boolean {
  return step.some((other) =>
    other.midi < note.midi ? midi <= other.midi : other.midi > note.midi && midi >= other.midi,
  );
}

interface StepOnset {
  readonly step: number;
  readonly beat: number;
  readonly timeSec: number;
}

/** Mean onset of each step's answered notes, in order of step. */
export function stepOnsets(answers: readonly Filled[], struck: readonly IndexedNote[]): readonly StepOnset[] {
  const byStep = new Map<number, { beat: number; times: number[] }>();
  for (const { place, struck: index } of answers) {
    const entry = byStep.get(place.step) ?? { beat: place.beat, times: [] };
    entry.times.push(struck[index]!.timeSec);
    byStep.set(place.step, entry);
  }
  return [...byStep]
    .map(([step, { beat, times }]) => ({
      step,
      beat,
      timeSec: times.reduce((sum, time) => sum + time, 0) / times.length,
    }))
    .sort((a, b) => a.step - b.step);
}

function dueTime(
  place: ExpectedPlace,
  onsets: readonly StepOnset[],
  beatSecAt: (timeSec: number) => number,
  beatsPerStep: number,
): Due | undefined {
  const same = onsets.find((onset) => onset.step === place.step);
  const before = onsets.findLast((onset) => onset.step < place.step);
  const after = onsets.find((onset) => onset.step > place.step);
  const near = same ?? before ?? after;
  if (near === undefined) return undefined;
  const beatSec = beatSecAt(near.timeSec);
  const stepSec = beatSec * beatsPerStep;
  if (same !== undefined) return { timeSec: same.timeSec, stepSec, known: true };
  if (before !== undefined && after !== undefined) {
    const share = (place.beat - before.beat) / (after.beat - before.beat);
    const spanSec = after.timeSec - before.timeSec;
    return {
      timeSec: before.timeSec + share * spanSec,
      stepSec: (spanSec * beatsPerStep) / (after.beat - before.beat),
      known: false,
    };
  }
  return { timeSec: near.timeSec + (place.beat - near.beat) * beatSec, stepSec, known: false };
}
