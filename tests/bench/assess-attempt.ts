import { assessHeard, buildExercise, listenAndKeep, recogniseFrom } from '../../src/engine/index.ts';
import type { Assessment, ExerciseChoice, Heard, PianoProfile, Report } from '../../src/engine/index.ts';
import type { Rendered, TrueNote, Truth } from '../support/render.ts';
import { DB_PER_VELOCITY } from '../support/student/perform.ts';
import type { Attempt, AttemptSet } from './attempts.ts';
import { looksOf } from './bound-tables.ts';
import type { LookRecord } from './bound-tables.ts';
import { faultsOf } from './fault-kinds.ts';
import type { FaultRecord } from './fault-kinds.ts';
import { labelsOf } from './labels.ts';
import type { Labels } from './labels.ts';
import { levelResidualsDb, measureErrors } from './measure-score.ts';
import type { MeasureErrors } from './measure-score.ts';
import { bestSemitone, matchToTruth } from './note-score.ts';
import type { NoteCounts, Timed } from './note-score.ts';
import { scorePlaces } from './place-score.ts';
import type { PlaceRecord } from './place-score.ts';
import { heardAsPlayed, playedTuningCents } from './truth-report.ts';
import { tallyVerdicts } from './verdict-score.ts';
import type { VerdictTally } from './verdict-score.ts';

type Recognition = 'yes' | 'a semitone off' | 'no';

/** Everything that the tables need of one attempt; plain data, so that workers can send it. */
export interface AttemptRecord {
  readonly set: AttemptSet;
  readonly index: number;
  readonly labels: Labels;
  /** listening alone, one common semitone forgiven */
  readonly within: Readonly<Record<10 | 25 | 50, NoteCounts>>;
  /** the same at ±50 ms, nothing forgiven */
  readonly plain: NoteCounts;
  /** true notes, with the error of the onset that was heard for them within ±50 ms */
  readonly notes: readonly { readonly midi: number; readonly errorMs: number | null }[];
  /** keys heard for nothing (±50 ms) */
  readonly ghosts: readonly number[];
  /** heard level − true level of the note as it arrived, straight line over pitch taken out */
  readonly levelsDb: readonly number[];
  /** heard level − strength of the blow: what room and strings add is in it */
  readonly blowsDb: readonly number[];
  readonly verdicts: VerdictTally;
  /** notes of the report, those found again among them, against truth: nothing forgiven */
  readonly final: Readonly<Record<25 | 50, NoteCounts>>;
  /** their onset errors within ±50 ms */
  readonly finalErrorsMs: readonly number[];
  /** every expected note by itself; empty where another exercise was asked for */
  readonly places: readonly PlaceRecord[];
  /** every fault of the student; empty where another exercise was asked for */
  readonly faults: readonly FaultRecord[];
  /** written keys that the closer look was asked about */
  readonly looks: readonly LookRecord[];
  /** how far apart the student meant the notes of a step to fall: a chord's spread or the hands' distance, the greater */
  readonly spreadMs: number;
  readonly measures: MeasureErrors | null;
  /** reported − true, folded into ±50 cents */
  readonly tuningCents: number | null;
  /** the exercise found without being told */
  readonly recognised: Recognition;
  readonly octaveRight: boolean;
  /** set course: the breaking off was remarked within a step, or the exercise really played was named; null elsewhere */
  readonly courseRight: boolean | null;
  /** kinds of what the listener says about the sound */
  readonly findings: readonly string[];
  readonly soundSec: number;
  readonly engineSec: number;
  readonly crash: string | null;
}

/**
 * `ideal`: the strokes themselves are handed on as if listening had been without error, to see matching and reporting alone.
 * `piano`: what is known of it before.
 */
export function assessAttempt(
  attempt: Attempt,
  index: number,
  rendered: Rendered,
  ideal = false,
  piano: PianoProfile | null = null,
): AttemptRecord {
  const { truth } = rendered;
  const startMs = performance.now();
  let heard: Heard | null = null;
  let assessment: Assessment | null = null;
  let crash: string | null = null;
  try {
    const kept = ideal ? null : listenAndKeep(rendered);
    heard = kept?.heard ?? heardAsPlayed(truth);
    assessment = assessHeard(
      heard,
      attempt.asked ?? truth.exercise,
      { piano, asChosen: attempt.set === 'one-of-two' },
      kept?.sound,
    );
  } catch (error) {
    crash =
      error instanceof Error
        ? (error.stack ?? error.message).split('\n').slice(0, 3).join(' ')
        : String(error);
  }
  const engineSec = (performance.now() - startMs) / 1000;
  const report = assessment?.kind === 'report' ? assessment.report : null;

  const notes = heard?.notes ?? [];
  const reported = report?.notes ?? [];
  const moved = bestSemitone(notes, truth.notes).notes;
  const count = (windowMs: number, of: readonly Timed[]): NoteCounts => ({
    matched: matchToTruth(of, truth.notes, windowMs).length,
    heard: of.length,
    truth: truth.notes.length,
  });
  const pairs = matchToTruth(moved, truth.notes, 50);
  const against = (trueDb: (note: TrueNote) => number): readonly number[] =>
    levelResidualsDb(
      pairs.map((pair) => {
        const note = truth.notes[pair.truth]!;
        return { midi: note.midi, errorDb: notes[pair.heard]!.levelDb - trueDb(note) };
      }),
    );
  const cents = report ? report.tuning.cents - playedTuningCents(truth) : null;
  return {
    set: attempt.set,
    index,
    labels: labelsOf(attempt, truth),
    within: { 10: count(10, moved), 25: count(25, moved), 50: count(50, moved) },
    plain: count(50, notes),
    notes: truth.notes.map(({ midi }, at) => ({
      midi,
      errorMs: pairs.find((pair) => pair.truth === at)?.errorMs ?? null,
    })),
    ghosts: moved.filter((_, at) => !pairs.some((pair) => pair.heard === at)).map(({ midi }) => midi),
    levelsDb: against(({ levelDb }) => levelDb),
    blowsDb: against(({ velocity }) => velocity * DB_PER_VELOCITY),
    verdicts: tallyVerdicts(report, truth),
    final: { 25: count(25, reported), 50: count(50, reported) },
    finalErrorsMs: matchToTruth(reported, truth.notes, 50).map(({ errorMs }) => errorMs),
    spreadMs: meantSpreadMs(truth),
    places: attempt.asked === undefined ? scorePlaces(report, truth) : [],
    faults: attempt.asked === undefined ? faultsOf(report, truth) : [],
    looks: looksOf(assessment?.kind === 'report' ? assessment.rechecks : [], report, truth),
    measures: report && attempt.asked === undefined ? measureErrors(report, truth) : null,
    tuningCents: cents === null ? null : cents - 100 * Math.round(cents / 100),
    recognised: comparedWithPlayed(heard && recogniseFrom(heard).choice, truth),
    octaveRight: report !== null && report.exercise.octaveShift === truth.student.octaveShift,
    courseRight: attempt.set === 'course' ? isCourseRight(attempt, report, truth) : null,
    findings: heard?.findings.map(({ kind }) => kind) ?? [],
    soundSec: rendered.channels[0]!.length / rendered.sampleRateHz,
    engineSec,
    crash,
  };
}

function meantSpreadMs({ student, exercise }: Truth): number {
  const chords = exercise.form === 'triads' || exercise.form === 'progression';
  const apartMs = exercise.hands === 'together' ? Math.abs(student.handsApartMs.mean) : 0;
  return Math.max(chords ? student.chordSpreadMs : 0, apartMs);
}

function isCourseRight({ asked }: Attempt, report: Report | null, truth: Truth): boolean {
  if (report === null) return false;
  if (asked !== undefined) return comparedWithPlayed(report.betterFit ?? null, truth) === 'yes';
  const lastStep = Math.max(...truth.notes.map(({ step }) => step ?? 0));
  return report.remarks.some(
    (remark) => remark.kind === 'broken-off' && Math.abs(remark.lastStep - lastStep) <= 1,
  );
}

/**
 * Which of two hands alone played, the notes do not tell once the octave is free; nor which of two keys a semitone apart,
 * where the piano may be as flat as it may be sharp.
 */
function comparedWithPlayed(found: ExerciseChoice | null, { exercise }: Truth): Recognition {
  if (
    found === null ||
    found.form !== exercise.form ||
    found.octaves !== exercise.octaves ||
    (found.hands === 'together') !== (exercise.hands === 'together')
  )
    return 'no';
  if (found.key === exercise.key) return 'yes';
  const tonic = (choice: ExerciseChoice): number => buildExercise(choice).steps[0]!.notes[0]!.midi;
  const sameMode = found.key.split(' ')[1] === exercise.key.split(' ')[1];
  const apart = (((tonic(found) - tonic({ ...exercise, hands: found.hands })) % 12) + 12) % 12;
  return sameMode && (apart === 1 || apart === 11) ? 'a semitone off' : 'no';
}
