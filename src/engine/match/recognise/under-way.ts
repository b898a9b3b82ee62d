import { buildExercise, passageId } from '../../exercise/index.ts';
import type { ExerciseChoice } from '../../exercise/index.ts';
import type { Passage, PlayedNote } from '../../listen/index.ts';
import { follow } from './follow.ts';
import { ownTemplates } from './own.ts';
import type { Misreading } from './priors.ts';
import { momentsOf } from './moments.ts';
import { shortlist } from './shortlist.ts';
import { passagesOf } from './stretches.ts';
import { templateOf } from './templates.ts';
import type { Slid, Template } from './templates.ts';

/** What an exercise explains, from first to last note. */
export interface ExerciseStretch extends Passage {
  readonly isChosen: boolean;
  /** its last step has been struck */
  readonly isWhole: boolean;
}

/** Playing so far, as exercises. */
export interface UnderWay {
  /** were nothing to follow, in order of time */
  readonly stretches: readonly ExerciseStretch[];
  /** the same of all that lies before `standing` */
  readonly before: readonly ExerciseStretch[];
  /** the exercise that the last notes belong to; null: they belong to none */
  readonly standing: {
    /** of its first note */
    readonly startSec: number;
    /** of its faults, and of what is no part of it, in units of one missed note */
    readonly cost: number;
    /** moments since then */
    readonly moments: number;
    readonly isChosen: boolean;
    /** its last step has been struck */
    readonly isWhole: boolean;
  } | null;
}

/** What is no dearer than this beside the cheapest may be what is played, in units of one missed note. */
const AS_LIKELY = 0.5;
/** Octaves about the written one, and semitones of a piano far from its pitch, at which the chosen exercise is looked for … */
const OCTAVES = [-3, -2, -1, 0, 1, 2, 3] as const;
const MISREAD = [0, -1, 1] as const;
/** … and followed at so many, those that have most keys in common with what was struck. */
const PLACES = 3;
/** Passages are looked for at the pitch that was read: while somebody plays, the piano's tuning is known. */
const AS_READ: Misreading = { semitones: 0, chance: 1, otherwise: 0 };

/**
 * Notes so far, in order of time, and what was chosen (null: any exercise of the set, or of one's `own` passages) → the exercises gone
 * through, and the one under way. The same account as of a whole recording (`exerciseStretches`), asked for while it is not over; the chosen exercise is followed
 * from its first notes on, others from when they have enough keys in common.
 */
export function underWay(
  notes: readonly PlayedNote[],
  chosen: ExerciseChoice | null,
  own: readonly ExerciseChoice[] = [],
): UnderWay {
  const moments = momentsOf(notes);
  const reach = { from: 0, to: moments.length };
  const places = chosen === null ? [] : placesOf(notes, chosen);
  const others = notes.length === 0 ? [] : shortlist(notes, ownTemplates(besides(chosen, own), AS_READ));
  const runners = [...places, ...others.filter((one) => !places.some((place) => isSame(one, place)))].map(
    ({ template, semitones }) => ({ template, semitones, ...reach }),
  );
  const isChosen = (runner: Slid): boolean => places.some((place) => isSame(place, runner));
  const account = (count: number) => {
    const heard = moments.slice(0, count);
    const followed = follow(heard, runners);
    const passages = passagesOf(followed.stretches, heard);
    const stretches = followed.stretches.map((stretch, at) => ({
      ...passages[at]!,
      isChosen: isChosen(stretch.runner),
      isWhole: isLast(stretch),
    }));
    return { ...followed, stretches };
  };
  const { stretches, standing: ways, cost } = account(moments.length);
  const likely = ways.filter((way) => way.cost <= Math.min(cost, ways[0]!.cost + AS_LIKELY));
  const stands = likely.find(({ runner }) => isChosen(runner)) ?? likely[0];
  if (stands === undefined) return { stretches, before: stretches, standing: null };
  const chosenStands = isChosen(stands.runner);
  return {
    stretches,
    before: stands.from === 0 ? [] : account(stands.from).stretches,
    standing: {
      startSec: moments[stands.from]!.timeSec,
      cost: stands.cost,
      moments: moments.length - stands.from,
      isChosen: chosenStands,
      isWhole: chosenStands ? isLast(stands) : likely.every(isLast),
    },
  };
}

/** Passages but the one that was chosen. */
function besides(chosen: ExerciseChoice | null, own: readonly ExerciseChoice[]): readonly ExerciseChoice[] {
  const { passage } = chosen ?? {};
  if (passage === undefined) return own;
  return own.filter((one) => one.passage === undefined || passageId(one.passage) !== passageId(passage));
}

/** Where the chosen exercise may lie. */
function placesOf(notes: readonly PlayedNote[], chosen: ExerciseChoice): readonly Slid[] {
  const { template, tonicClass } = templateOf(buildExercise(chosen).choice);
  const struck = new Int16Array(256);
  for (const { midi } of notes) struck[midi + 128]! += 1;
  return MISREAD.flatMap((off) => OCTAVES.map((octave) => tonicClass + 12 * octave + off))
    .map((semitones) => ({ template, semitones, shared: sharedKeys(struck, template, semitones) }))
    .filter(({ shared }) => shared > 0)
    .sort((a, b) => b.shared - a.shared)
    .slice(0, PLACES);
}

function sharedKeys(struck: Int16Array, { keys, times }: Template, semitones: number): number {
  let shared = 0;
  keys.forEach((midi, at) => (shared += Math.min(times[at]!, struck[midi + semitones + 128] ?? 0)));
  return shared;
}

function isLast({ runner, step }: { readonly runner: Slid; readonly step: number }): boolean {
  return step === runner.template.steps.length - 1;
}

function isSame(one: Slid, other: Slid): boolean {
  return one.template === other.template && one.semitones === other.semitones;
}
