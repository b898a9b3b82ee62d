import { mean } from '../../base/statistics.ts';
import type { Exercise } from '../../exercise/index.ts';
import type { Heard } from '../../listen/index.ts';
import { courseRemarks } from './course.ts';
import { fitOf, scatteredNotes } from './fit.ts';
import { substitutesFor } from './substitutes.ts';
import type { Filled } from './substitutes.ts';
import { readApart, readTogether } from './reading.ts';
import type { Reading } from './reading.ts';
import { exerciseAt, placesOf, sharedOctaves, indexedNotes } from './notes.ts';
import type { ExpectedPlace, Shift, IndexedNote } from './notes.ts';
import { bestRun } from './runs.ts';
import { surroundings } from './surroundings.ts';
import type { Surroundings } from './surroundings.ts';
import { beatsPerStep } from './tempo.ts';
import type { Alignment, ExtraNote } from '../types.ts';
import { extraKind, isExplained, verdictOn } from './verdicts.ts';
import { BOUNDS } from '../costs/index.ts';

/**
 * Played notes against one exercise at one shift: the best whole run in them, note by note. Both hands are followed together;
 * where that explains little, each by itself, which is kept if it explains more.
 */
export function alignAt(heard: Heard, exercise: Exercise, shift: Shift): Alignment {
  const struck = indexedNotes(heard, shift.semitones);
  const played = exerciseAt(exercise, shift);
  const places = placesOf(played);
  const told = (reading: Reading): Alignment => ({
    ...alignmentOf(reading, heard, played, struck, places, shift),
    exercise,
  });
  const together = told(readTogether(struck, played, places));
  if (exercise.choice.hands !== 'together' || together.fit >= BOUNDS.handsApartUnderFit) return together;
  const apart = told(readApart(struck, played, places));
  return apart.fit >= together.fit + BOUNDS.handsApartFit ? apart : together;
}

function alignmentOf(
  { runs, beatSec }: Reading,
  heard: Heard,
  exercise: Exercise,
  struck: readonly IndexedNote[],
  places: readonly ExpectedPlace[],
  shift: Shift,
): Alignment {
  const chosen = bestRun(runs);
  const around = surroundings(runs, chosen, exercise, struck, beatSec, heard.durationSec);

  const answers: readonly Filled[] = (chosen?.answers ?? []).map(({ place, struck: index }) => ({
    place,
    struck: index,
  }));
  const spoken = new Set([
    ...answers.map((answer) => answer.struck),
    ...around.again.map((note) => note.struck),
  ]);
  const leftover = around.within.filter(
    (index) => !spoken.has(index) && !isExplained(struck[index]!, struck, answers),
  );
  const missed = places.filter((place) => !answers.some((answer) => answer.place === place));
  const substitutes = substitutesFor(
    places,
    missed,
    leftover,
    struck,
    answers,
    beatSec,
    beatsPerStep(exercise),
  );
  const filled = firstOfRepeated([...answers, ...substitutes], leftover, struck);

  const matched = places.map((place) => verdictOn(place, filled, struck));
  const extras = extrasOf(around, filled, struck);
  const fit = fitOf(
    matched,
    filled,
    struck,
    around,
    scatteredNotes(filled, struck, beatSec, beatsPerStep(exercise)),
  );
  return {
    exercise,
    octaveShift: sharedOctaves(shift, exercise.choice.hands),
    semitoneShift: shift.semitones,
    matched,
    extras,
    remarks:
      chosen === undefined
        ? []
        : courseRemarks({
            exercise,
            struck,
            filled,
            run: chosen,
            abandoned: around.abandoned,
            others: around.others,
            shift,
            tuningCents: heard.tuning.cents,
            beatSec,
          }),
    run: around.run,
    fit,
  };
}

/**
 * Of a key struck twice in one place the first stroke is the note and the second the repeat; in a chord, the stroke nearer
 * to the chord's other notes.
 */
function firstOfRepeated(
  filled: readonly Filled[],
  leftover: readonly number[],
  struck: readonly IndexedNote[],
): readonly Filled[] {
  const taken = new Set(filled.map((entry) => entry.struck));
  return filled.map((entry) => {
    const note = struck[entry.struck]!;
    const others = filled.filter((other) => other.place.step < entry.place.step);
    const sinceSec = Math.max(-Infinity, ...others.map((other) => struck[other.struck]!.timeSec));
    const chord = filled.filter((other) => other.place.step === entry.place.step && other !== entry);
    const chordSec = mean(chord.map((other) => struck[other.struck]!.timeSec));
    const earlier = leftover.find((index) => {
      const other = struck[index]!;
      const nearer =
        chordSec === undefined || Math.abs(other.timeSec - chordSec) < Math.abs(note.timeSec - chordSec);
      return (
        nearer &&
        !taken.has(index) &&
        other.midi === note.midi &&
        other.timeSec < note.timeSec &&
        other.timeSec > sinceSec &&
        other.confidence >= BOUNDS.extraConfidence
      );
    });
    if (earlier === undefined) return entry;
    taken.delete(entry.struck);
    taken.add(earlier);
    return { place: entry.place, struck: earlier };
  });
}

function extrasOf(
  around: Surroundings,
  filled: readonly Filled[],
  struck: readonly IndexedNote[],
): readonly ExtraNote[] {
  const inPlace = new Set(filled.map((entry) => entry.struck));
  const again = around.again.filter((note) => !inPlace.has(note.struck));
  const saidAgain = new Set(again.map((note) => note.struck));
  const rest = around.within.filter((index) => !inPlace.has(index) && !saidAgain.has(index));
  return [
    ...again.map(({ struck: index, kind, step }) => ({ index, kind, step })),
    ...rest.flatMap((index) => {
      const extra = extraKind(index, struck, filled);
      return extra === null ? [] : [{ index, ...extra }];
    }),
  ]
    .sort((a, b) => a.index - b.index)
    .map(({ index, kind, step }) => ({ played: struck[index]!.played, kind, step }));
}
