import type { Exercise, ExpectedNote } from '../../exercise/index.ts';
import type { ExpectedPlace, IndexedNote } from './notes.ts';
import type { BeatSec } from './tempo.ts';
import { COSTS, costAtEnd, weightOf } from '../costs/index.ts';

/** Fetched once, since every way of every note asks for them. */
const { missed, goingBack, covered } = COSTS;

/**
 * What time has to say of it, which only an alignment knows, in the same units; tried on the simulated students of tests/engine/match.
 */
const TIME = {
  /** an interval x times the expected one costs `late · ln²x` or `early · ln²x`, and at most `lateAtMost` or `earlyAtMost`:
   *  a pause is human and cheap, two steps in one instant are a slip of the hand or of the ear */
  late: 0.35,
  lateAtMost: 0.7,
  early: 0.5,
  earlyAtMost: 2.5,
  /** going back costs this much more where it comes in time, without the pause in which one thinks better of it … */
  goingBackInTime: 0.3,
  /** … of this many steps at least */
  pauseSteps: 1.3,
  /** a chord's note may come this share of a step after the chord's first before it begins to cost */
  chordShare: 0.2,
  chordLate: 2.5,
  chordLateAtMost: 2,
  /** ways that cost so much more than the cheapest are given up; going back and going on costs less than half of it */
  givenUp: 10,
} as const;

/** A struck note that answers an expected one. */
export interface Answer {
  /** index into the struck notes */
  readonly struck: number;
  readonly place: ExpectedPlace;
  /** counts up each time the player goes back */
  readonly leg: number;
}

/** Where the player stands: the step last entered, which of its notes have sounded (bits, in the step's order), what the others cost. */
interface PathState {
  readonly step: number;
  readonly sounded: number;
  readonly missingCost: number;
}

/** An expected note as what a struck one may answer, with all that hangs on it alone. */
interface Goal {
  readonly place: number;
  readonly step: number;
  readonly beat: number;
  /** of its step's notes, as in `sounded` */
  readonly bit: number;
  /** the standing in which it is the first of its step's notes */
  readonly afresh: number;
  /** its step's other notes may come after it */
  readonly inChord: boolean;
  /** how long its step lasts */
  readonly beats: number;
  /** what it costs to begin with it */
  readonly asFirst: number;
}

/**
 * Struck notes and exercise (with its `placesOf`) → the cheapest way through the exercise that the notes can have taken.
 *
 * Dynamic programming over struck notes (in order of time) and standings. Each note either answers an expected note of its
 * own pitch (a further note of the chord in hand, a note of the next step, of a later one at the cost of those left out, or
 * of an earlier one at the cost of going back) or answers nothing at the cost of an extra note. Entering a step costs
 * the more the further its time lies from where the local beat would put it. Wrong keys are not looked for here: they
 * stay behind as a missed and an unanswered note and are put together afterwards, where time says so.
 *
 * A standing's own time is that of the cheapest way that leads to it, which makes the search very slightly less than exact.
 * Work: notes × standings × (expected notes of that pitch).
 */
export function cheapestPath(
  struck: readonly IndexedNote[],
  exercise: Exercise,
  places: readonly ExpectedPlace[],
  beatSec: BeatSec,
): readonly Answer[] {
  const standings = standingsOf(exercise);
  const stateOf = standings.first;
  const states = standings.all;
  const steps = exercise.steps;
  const notesBefore = cumulative(steps.map((step) => step.notes.length));
  const keysAStep = places.length / steps.length;
  const byPitch = new Map<number, Goal[]>();
  for (const { place, step, beat, note } of places) {
    const bit = 1 << (place - notesBefore[step]!);
    const goal: Goal = {
      place,
      step,
      beat,
      bit,
      afresh: stateOf[step]! + bit - 1,
      inChord: steps[step]!.notes.length > 1,
      beats: beatsAround(exercise, step),
      asFirst: costAtEnd(notesBefore[step]!, keysAStep),
    };
    const alike = byPitch.get(note.midi);
    if (alike === undefined) byPitch.set(note.midi, [goal]);
    else alike.push(goal);
  }

  const size = states.length;
  const cameFrom = struck.map(() => new Int32Array(size).fill(-1));
  const answered = struck.map(() => new Int32Array(size).fill(-1));
  let cost = new Float64Array(size).fill(Infinity);
  let enteredSec = new Float64Array(size);
  cost[0] = 0;

  struck.forEach((note, index) => {
    const nextCost = new Float64Array(size).fill(Infinity);
    const nextEntered = new Float64Array(size);
    const beat = beatSec(note.timeSec);
    const extra = COSTS.extra * weightOf(note.confidence);
    const hopeless = cost.reduce((least, one) => Math.min(least, one)) + TIME.givenUp;
    const goals = byPitch.get(note.midi) ?? [];
    const cameFromHere = cameFrom[index]!;
    const answeredHere = answered[index]!;
    const take = (from: number, to: number, total: number, entered: number, place: number): void => {
      if (total >= nextCost[to]!) return;
      nextCost[to] = total;
      nextEntered[to] = entered;
      cameFromHere[to] = from;
      answeredHere[to] = place;
    };
    for (let from = 0; from < size; from++) {
      const soFar = cost[from]!;
      if (soFar > hopeless) continue;
      const entered = enteredSec[from]!;
      const { step, sounded, missingCost: missing } = states[from]!;
      const sinceSec = note.timeSec - entered;
      // Time adds to a cost and never takes from it: where a way is too dear without, it is not asked.
      for (const goal of goals) {
        const { afresh } = goal;
        if (from === 0) {
          take(from, afresh, soFar + goal.asFirst, note.timeSec, goal.place);
        } else if (goal.step === step && (sounded & goal.bit) === 0) {
          const together = stateOf[step]! + (sounded | goal.bit) - 1;
          if (soFar >= nextCost[together]!) continue;
          const stepSec = beat * goal.beats;
          take(from, together, soFar + chordCost(sinceSec / stepSec), entered, goal.place);
        } else if (goal.step > step) {
          const leftOut = missed * (notesBefore[goal.step]! - notesBefore[step + 1]!);
          const untimed = soFar + missing + leftOut;
          if (untimed >= nextCost[afresh]!) continue;
          const expectedSec = beat * (goal.beat - steps[step]!.beat);
          take(from, afresh, untimed + intervalCost(sinceSec / expectedSec), note.timeSec, goal.place);
        } else if (goal.step < step || goal.inChord) {
          const back = missing + goingBack;
          if (soFar + back >= nextCost[afresh]!) continue;
          const stepSec = beat * goal.beats;
          take(from, afresh, soFar + (back + goingBackCost(sinceSec / stepSec)), note.timeSec, goal.place);
        }
      }
      take(from, from, soFar + extra, entered, -1);
    }
    cost = nextCost;
    enteredSec = nextEntered;
  });

  let best = 0;
  let bestCost = Infinity;
  for (let state = 0; state < size; state++) {
    const { step, missingCost: missing } = states[state]!;
    const left = state === 0 ? places.length : missing / missed + places.length - notesBefore[step + 1]!;
    const total = cost[state]! + (state === 0 ? missed * left : costAtEnd(left, keysAStep));
    if (total < bestCost) [best, bestCost] = [state, total];
  }
  return withLegs(walkBack(best, struck.length, cameFrom, answered), places);
}

/** Every standing; number 0 is "not begun"; those of step s with bits b have number first[s] + b − 1. */
function standingsOf(exercise: Exercise): { all: readonly PathState[]; first: readonly number[] } {
  const all: PathState[] = [{ step: -1, sounded: 0, missingCost: 0 }];
  const first: number[] = [];
  exercise.steps.forEach((step, index) => {
    first.push(all.length);
    const full = (1 << step.notes.length) - 1;
    for (let sounded = 1; sounded <= full; sounded++)
      all.push({ step: index, sounded, missingCost: missingCost(step.notes, sounded) });
  });
  return { all, first };
}

/** What the notes of a step cost that have not sounded; less where the octave below has, by the other hand. */
function missingCost(notes: readonly ExpectedNote[], sounded: number): number {
  const heard = notes.filter((_, at) => (sounded & (1 << at)) !== 0);
  return notes
    .filter((note) => !heard.includes(note))
    .reduce((sum, note) => sum + (coveredBy(note, heard) ? covered : missed), 0);
}

function coveredBy(note: ExpectedNote, heard: readonly ExpectedNote[]): boolean {
  return heard.some((other) => other.hand !== note.hand && note.midi - other.midi === 12);
}

/** [a, b, c] → [0, a, a+b, a+b+c] */
function cumulative(values: readonly number[]): readonly number[] {
  const sums = [0];
  for (const value of values) sums.push(sums.at(-1)! + value);
  return sums;
}

function beatsAround(exercise: Exercise, step: number): number {
  const steps = exercise.steps;
  const next = steps[step + 1];
  if (next !== undefined) return next.beat - steps[step]!.beat;
  return step > 0 ? steps[step]!.beat - steps[step - 1]!.beat : 1;
}

/** Cost of an interval that is `ratio` times the expected one. */
function intervalCost(ratio: number): number {
  const off = Math.log(Math.max(ratio, 0.001)) ** 2;
  return ratio > 1
    ? Math.min(TIME.late * off, TIME.lateAtMost)
    : Math.min(TIME.early * off, TIME.earlyAtMost);
}

/** What going back costs beyond itself, `ratio` steps after the step last entered. */
function goingBackCost(ratio: number): number {
  if (ratio >= TIME.pauseSteps) return 0;
  return TIME.goingBackInTime + (ratio < 1 ? intervalCost(ratio) : 0);
}

/** Cost of a chord's note that comes `share` of a step after the chord's first. */
function chordCost(share: number): number {
  const late = Math.max(0, share - TIME.chordShare);
  return Math.min(TIME.chordLate * late, TIME.chordLateAtMost);
}

function walkBack(
  last: number,
  count: number,
  cameFrom: readonly Int32Array[],
  answered: readonly Int32Array[],
): { struck: number; place: number; from: number; to: number }[] {
  const steps = [];
  let state = last;
  for (let index = count - 1; index >= 0; index--) {
    const from = cameFrom[index]![state]!;
    const place = answered[index]![state]!;
    if (place >= 0) steps.push({ struck: index, place, from, to: state });
    state = from;
  }
  return steps.reverse();
}

/** A new leg begins where a step comes again: an earlier one, or the same one with a note that had sounded. */
function withLegs(
  taken: readonly { struck: number; place: number }[],
  places: readonly ExpectedPlace[],
): readonly Answer[] {
  const answers: Answer[] = [];
  let leg = 0;
  const inLeg = new Set<number>();
  let step = -1;
  for (const { struck, place: number } of taken) {
    const place = places[number]!;
    if (place.step < step || inLeg.has(number)) {
      leg++;
      inLeg.clear();
    }
    inLeg.add(number);
    step = place.step;
    answers.push({ struck, place, leg });
  }
  return answers;
}
