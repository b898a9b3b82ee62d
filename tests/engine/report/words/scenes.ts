import type { Exercise, ExerciseChoice, Hand } from '../../../../src/engine/exercise/index.ts';
import { buildExercise } from '../../../../src/engine/exercise/index.ts';
import type { Heard, PlayedNote } from '../../../../src/engine/listen/index.ts';
import { matchNotes } from '../../../../src/engine/match/index.ts';
import type { Report, ReportOptions } from '../../../../src/engine/report/index.ts';
import { writeReport } from '../../../../src/engine/report/index.ts';
import { heardOf, played } from '../../match/simulated.ts';

/** What is changed in one step of an otherwise perfect attempt. */
export interface Change {
  /** another key, in place of the step's key with this index (0 = lowest) */
  readonly wrong?: { readonly note?: number; readonly midi: number };
  readonly missed?: { readonly note?: number };
  readonly caught?: number;
  readonly twice?: true;
  /** later, and all after it too, ms */
  readonly lateMs?: number;
  /** louder (+) or softer, dB */
  readonly louderDb?: number;
  readonly overlapMs?: number;
}

export interface Playing {
  readonly choice: ExerciseChoice;
  readonly bpm?: number;
  readonly change?: (step: number, finger: number) => Change;
  /** onset of the chord's nth note after its first, ms */
  readonly spreadMs?: (note: number, finger: number, step: number) => number;
  /** louder (+) or softer, by note of the chord, dB */
  readonly noteDb?: (note: number, finger: number) => number;
  /** a hand later (+) or earlier, ms */
  readonly handMs?: (step: number, hand: Hand) => number;
  /** broken off after this step */
  readonly until?: number;
  readonly heard?: Partial<Heard>;
  /** false: nobody said which hand it was */
  readonly handKnown?: false;
}

const exercises = new WeakMap<ExerciseChoice, Exercise>();

/** One exercise is played in many ways. */
function exerciseOf(choice: ExerciseChoice): Exercise {
  const built = exercises.get(choice) ?? buildExercise(choice);
  exercises.set(choice, built);
  return built;
}

export function playNotes({
  choice,
  bpm = 80,
  change,
  spreadMs,
  noteDb,
  handMs,
  until,
}: Playing): PlayedNote[] {
  const beatSec = 60 / bpm;
  const { steps } = exerciseOf(choice);
  const notes: PlayedNote[] = [];
  let timeSec = 1;
  steps.forEach(({ beat, notes: keys }, step) => {
    if (step > (until ?? Infinity)) return;
    const changed = change?.(step, keys[0]!.finger!) ?? {};
    if (step > 0) timeSec += (beat - steps[step - 1]!.beat) * beatSec;
    timeSec += (changed.lateMs ?? 0) / 1000;
    const next = steps[step + 1];
    const holdSec = (next === undefined ? 1 : next.beat - beat) * beatSec + (changed.overlapMs ?? 20) / 1000;
    keys.forEach((key, index) => {
      if (changed.missed !== undefined && (changed.missed.note ?? 0) === index) return;
      const wrong = changed.wrong !== undefined && (changed.wrong.note ?? 0) === index;
      const onset =
        timeSec + ((spreadMs?.(index, key.finger!, step) ?? 0) + (handMs?.(step, key.hand) ?? 0)) / 1000;
      notes.push(
        played(onset, wrong ? changed.wrong.midi : key.midi, {
          levelDb: -20 + (changed.louderDb ?? 0) + (noteDb?.(index, key.finger!) ?? 0),
          releaseSec: onset + holdSec,
          ...(wrong && { confidence: 0.998 }),
        }),
      );
    });
    if (changed.caught !== undefined)
      notes.push(played(timeSec + 0.03, changed.caught, { levelDb: -28, confidence: 0.998 }));
    if (changed.twice) {
      timeSec += 0.2;
      notes.push(...keys.map((key) => played(timeSec, key.midi)));
    }
  });
  return notes;
}

/** A playing (judged as `as`, by default as what it is) → its report. */
export function tell(
  playing: Playing & { readonly as?: ExerciseChoice },
  options: Partial<ReportOptions> = {},
): Report {
  const heard = heardOf(playNotes(playing), { onsetSdMs: 1, ...playing.heard });
  const alignment = matchNotes(heard, exerciseOf(playing.as ?? playing.choice));
  const unknown = playing.handKnown === false && { handLikelihood: { left: 0.4, right: 0.6 } };
  return writeReport(heard, { ...alignment, ...unknown }, options);
}
