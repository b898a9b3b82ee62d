import type { Exercise, Report } from '../../../engine/index.ts';
import type { Correction } from '../../../io/review/index.ts';
import { strings } from '../../language/index.ts';
import { shownNameWithOctave } from '../../names/index.ts';
import { describeSpot } from '../../plots/pearls/describe.ts';
import type { Pin } from '../../plots/pearls/pins.ts';
import type { Mark } from './marks.ts';

/** What a mark speaks of: "note 5, C5", "from E♭4 to C5, notes 3 to 6". */
export function placeWords({ place, spot }: Pick<Mark, 'place' | 'spot'>, exercise: Exercise): string {
  const t = strings().review;
  switch (place.kind) {
    case 'attempt':
      return t.attempt;
    case 'stretch':
      return t.stretch(
        writtenName(exercise, place.fromStep),
        writtenName(exercise, place.toStep),
        place.fromStep + 1,
        place.toStep + 1,
      );
    case 'note': {
      if (place.step !== null) return t.note(writtenName(exercise, place.step, place.midi), place.step + 1);
      return t.extraNote(shownNameWithOctave(spot?.pearls[0]?.name ?? ''));
    }
  }
}

/** What the pin of a mark is called. */
export function pinWords({ id, number }: Pin, marks: readonly Mark[], exercise: Exercise): string {
  const mark = marks.find((one) => one.id === id);
  return mark === undefined ? '' : strings().review.pin(number, placeWords(mark, exercise));
}

/** The name of a step's note of that key, else of its lowest. */
function writtenName(exercise: Exercise, step: number, midi?: number): string {
  const notes = exercise.steps[step]?.notes ?? [];
  const own = notes.find((note) => midi !== undefined && (note.midi - midi) % 12 === 0) ?? notes[0];
  return own === undefined ? '' : shownNameWithOctave(own.name);
}

/** What the tool heard at a mark, in its own words; '' where it says nothing of it. */
export function heardWords({ spot }: Pick<Mark, 'spot'>, report: Report): string {
  return spot === null ? '' : strings().review.heardAs(describeSpot(spot, report, false));
}

/** What the teacher says instead. */
export function correctionWords({ verdict }: Correction): string {
  const t = strings().review;
  return t.says(t.VERDICTS[verdict]);
}
