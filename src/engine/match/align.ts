import { mean } from '../base/statistics.ts';
import type { Exercise } from '../exercise/index.ts';
import type { Heard } from '../listen/index.ts';
import { courseRemarks } from './course.ts';
import { extraKind, isExplained, looksLikeGhost } from './extras.ts';
import { fillFromLeftovers } from './leftovers.ts';
import type { Filled } from './leftovers.ts';
import { readApart } from './hands.ts';
import { readTogether } from './reading.ts';
import type { Reading } from './reading.ts';
import { exerciseAt, placesOf, sharedOctaves, indexedNotes } from './struck.ts';
import type { ExpectedPlace, Shift, IndexedNote } from './struck.ts';
import { bestRun, surroundings } from './surroundings.ts';
import type { Surroundings } from './surroundings.ts';
import { beatsPerStep } from './tempo.ts';
import type { BeatSec } from './tempo.ts';
import type { Alignment, ExtraNote, MatchedNote } from './types.ts';
import { verdictOn } from './verdicts.ts';
import { BOUNDS } from './weights.ts';

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
  const substitutes = fillFromLeftovers(
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
 * How well the exercise explains what was heard: 2 · right / (expected + played), 0..1. Played are all notes but those of other
 * runs, those played again, and findings too weak to be notes: what is not reported as an extra still speaks against the
 * exercise. Scattered chords count as not right.
 */
function fitOf(
  matched: readonly MatchedNote[],
  filled: readonly Filled[],
  struck: readonly IndexedNote[],
  around: Surroundings,
  scattered: number,
): number {
  const right = matched.filter((note) => note.verdict === 'correct').length;
  const explained = new Set([...filled, ...around.again].map((note) => note.struck));
  const unexplained = struck.filter(
    (note, index) =>
      !explained.has(index) &&
      note.confidence >= BOUNDS.extraConfidence &&
      (note.confidence >= BOUNDS.ghostConfidence || !looksLikeGhost(note, struck, filled)) &&
      !around.others.some(({ startSec, endSec }) => note.timeSec >= startSec && note.timeSec <= endSec),
  ).length;
  return Math.max(0, 2 * right - scattered) / (matched.length + filled.length + unexplained);
}

/** Notes of chords that come so late after the first of their hand that no chord was struck, as in a broken triad. */
function scatteredNotes(
  filled: readonly Filled[],
  struck: readonly IndexedNote[],
  beatSec: BeatSec,
  beatsAStep: number,
): number {
  return filled.filter(({ place, struck: index }) => {
    const chord = filled.filter(
      (other) => other.place.step === place.step && other.place.note.hand === place.note.hand,
    );
    const firstSec = Math.min(...chord.map((other) => struck[other.struck]!.timeSec));
    const stepSec = beatSec(firstSec) * beatsAStep;
    return struck[index]!.timeSec - firstSec > BOUNDS.scatteredShareOfStep * stepSec;
  }).length;
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
