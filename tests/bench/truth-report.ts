import { buildExercise, writeReport } from '../../src/engine/index.ts';
import type {
  Alignment,
  Exercise,
  Heard,
  MatchedNote,
  Measures,
  PlayedNote,
} from '../../src/engine/index.ts';
import { median } from '../../src/engine/base/statistics.ts';
import type { Truth } from '../support/render.ts';

/**
 * The measures that a listener without error would report: the report's own formulas over the true strokes. For figures
 * whose formula the report's tests check against closed forms; evenness is computed apart (measure-score.ts).
 */
export function trueMeasures(truth: Truth): Measures {
  const exercise = buildExercise(truth.exercise);
  const heard = heardAsPlayed(truth);
  return writeReport(heard, alignmentAsPlayed(truth, exercise)).measures;
}

/** What a listener without error would hear. */
export function heardAsPlayed(truth: Truth): Heard {
  const cents = playedTuningCents(truth);
  const notes = truth.notes.map(({ timeSec, midi, cents: own, levelDb, releaseSec }): PlayedNote => ({
    timeSec,
    midi,
    cents: own,
    levelDb,
    confidence: 1,
    releaseSec,
  }));
  return {
    notes,
    tuning: {
      cents,
      a4Hz: 440 * 2 ** (cents / 1200),
      sdCents: 0,
      strays: [],
    },
    findings: [],
    passages: [runOf(truth)],
    durationSec: runOf(truth).endSec + 1,
    sampleRateHz: 44_100,
    onsetSdMs: 0,
  };
}

/** The piano's tuning as far as the attempt shows it: that of the middle one of the keys played. */
export function playedTuningCents({ tuningCents, notes }: Truth): number {
  const keys = new Map(notes.map(({ midi, cents }) => [midi, cents]));
  return tuningCents + (median([...keys.values()]) ?? 0);
}

function runOf(truth: Truth): { startSec: number; endSec: number } {
  return { startSec: (truth.notes[0]?.timeSec ?? 0) - 0.1, endSec: (truth.notes.at(-1)?.timeSec ?? 0) + 1 };
}

function alignmentAsPlayed(truth: Truth, exercise: Exercise): Alignment {
  const octaveShift = truth.student.octaveShift;
  const matched = exercise.steps.flatMap(({ step, notes }) =>
    notes.map((note): MatchedNote => {
      const expected = { ...note, midi: note.midi + 12 * octaveShift };
      const played = truth.notes.findIndex(
        (stroke) =>
          stroke.step === step &&
          stroke.hand === note.hand &&
          stroke.verdict !== 'extra' &&
          (stroke.wantedMidi ?? stroke.midi) === expected.midi,
      );
      const verdict = truth.notes[played]?.verdict;
      return verdict === 'correct' || verdict === 'wrong'
        ? { step, expected, verdict, played }
        : { step, expected, verdict: 'missed' };
    }),
  );
  const extras = truth.notes.flatMap((stroke, played) =>
    stroke.verdict === 'extra' ? [{ played, kind: stroke.extraKind ?? 'other', step: stroke.step ?? 0 }] : [],
  );
  return {
    exercise,
    octaveShift,
    semitoneShift: 0,
    matched,
    extras,
    remarks: [],
    run: runOf(truth),
    fit: 1,
  };
}
