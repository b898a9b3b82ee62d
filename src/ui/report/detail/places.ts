import type { Exercise, Hand } from '../../../engine/index.ts';
import { listed } from '../../kit/figures.ts';
import { strings } from '../../language/index.ts';
import { shownName, spokenName } from '../../names/index.ts';
import type { Spot } from '../../plots/pearls/spots.ts';

/** What a step is called in a figure, and which spot of the string it is. */
export interface Places {
  readonly spotOf: (step: number, hand?: Hand) => number | null;
  /** under an axis: the note, or of a chord its numeral or lowest note */
  readonly nameOf: (step: number, hand?: Hand) => string;
  readonly spokenOf: (step: number, hand?: Hand) => string;
}

/** Longest name of a place that fits under an axis. */
const LONGEST_LABEL = 4;

export function placesOf(exercise: Exercise, spots: readonly Spot[]): Places {
  const notesOf = (step: number, hand?: Hand) => {
    const notes = exercise.steps[step]?.notes ?? [];
    const own = notes.filter((note) => hand === undefined || note.hand === hand);
    const one = own.length > 0 ? own[0]!.hand : undefined;
    return own.filter((note) => note.hand === (hand ?? one));
  };
  return {
    spotOf: (step, hand) =>
      spots.find((spot) => !spot.extra && spot.step === step && (hand === undefined || spot.hand === hand))
        ?.index ?? null,
    nameOf: (step, hand) => {
      const label = exercise.steps[step]?.label;
      const notes = notesOf(step, hand);
      if (notes.length > 1 && label !== undefined && label.length <= LONGEST_LABEL) return label;
      return notes[0] === undefined ? '' : shownName(notes[0].name);
    },
    spokenOf: (step, hand) => {
      const label = exercise.steps[step]?.label;
      const names = listed(notesOf(step, hand).map((note) => spokenName(note.name)));
      const place = `${step + 1}. ${label === undefined ? names : `${label}, ${names}`}`;
      const { detail, prepare } = strings();
      return hand === undefined ? place : detail.ofHand(place, prepare[hand]);
    },
  };
}
