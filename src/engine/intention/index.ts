import { MOST_COPIES, practisedExercise } from '../exercise/index.ts';
import type { Exercise, ExerciseChoice, Intention } from '../exercise/index.ts';
import type { Heard } from '../listen/index.ts';
import { bestShift } from '../match/index.ts';
import type { Alignment } from '../match/index.ts';
import { asPlayed } from './rhythm.ts';

/** Repeats that are tried, more and fewer than the number of notes makes likely. */
const AROUND = 1;
/** Less sure findings are as likely ghosts. */
const SURE_NOTE = 0.5;
/** Another number of repeats must explain the notes better by this much, or the fewer are meant. */
const BETTER = 0.005;
/** The whole was played where it explains the notes better by this much: as another exercise of the set would have to. */
const WHOLE_BETTER = 0.2;

/**
 * Played notes + what was to be practised → what answers each note of it, the stretch as often as it was played. Of the stretch
 * alone notes can be missing, and of a last copy that was begun; where clearly the whole was played, it is that which is aligned
 * (`repeats` 0). The steps carry the rhythm with the ratio that was played, so that what is measured is measured about it.
 */
export function matchIntention(heard: Heard, choice: ExerciseChoice, intention: Intention): Alignment {
  const once = practisedExercise(choice, { intention, repeats: 1 });
  if (intention.stretch === undefined && intention.times === 1 && intention.rhythm !== 'one-note-more')
    return withoutPauses(asPlayed(heard, bestShift(heard, once)));
  const likely = likelyCopies(practisedExercise(choice, { intention, repeats: MOST_COPIES }), heard);
  const tried = Array.from({ length: 2 * AROUND + 1 }, (_, at) => likely - AROUND + at)
    .filter((repeats) => repeats >= 1 && repeats <= MOST_COPIES)
    .map((repeats) => bestShift(heard, practisedExercise(choice, { intention, repeats })));
  const first = tried[0] ?? bestShift(heard, once);
  const best = tried.reduce((a, b) => (explained(heard, b) > explained(heard, a) + BETTER ? b : a), first);
  // Of the whole there is nothing more to be played.
  if (intention.stretch === undefined) return withoutPauses(asPlayed(heard, best));
  const whole = bestShift(heard, practisedExercise(choice, { intention, repeats: 0 }));
  return explained(heard, whole) >= explained(heard, best) + WHOLE_BETTER
    ? whole
    : withoutPauses(asPlayed(heard, best));
}

/** After how many copies about as many keys are struck as were heard. */
function likelyCopies({ steps }: Exercise, { notes }: Heard): number {
  let keys = 0;
  const after = new Map<number, number>();
  for (const step of steps) {
    keys += step.notes.length;
    after.set(step.copy!.number + 1, Math.abs(keys - notes.length));
  }
  return [...after].reduce((a, b) => (b[1] < a[1] ? b : a))[0];
}

/** 0..1: of all that was struck and all that was to be, how much belongs together. The alignment's own fit leaves out other runs. */
function explained({ notes }: Heard, { matched }: Alignment): number {
  const right = matched.filter(({ verdict }) => verdict === 'correct').length;
  return (2 * right) / (matched.length + notes.filter(({ confidence }) => confidence >= SURE_NOTE).length);
}

/** A pause that was meant is no stop. */
function withoutPauses(alignment: Alignment): Alignment {
  const { steps } = alignment.exercise;
  const meant = (step: number): boolean => steps[step + 1]?.pauseBefore === true;
  return {
    ...alignment,
    remarks: alignment.remarks.filter((remark) => remark.kind !== 'stopped' || !meant(remark.atStep)),
  };
}
