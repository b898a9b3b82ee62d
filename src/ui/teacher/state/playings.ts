import { choiceIn, likelyReadings, type ExerciseChoice, type Report } from '../../../engine/index.ts';
import type { SortedAttempt } from '../../../io/sorting/index.ts';
import type { SentAttempt } from '../../../io/review/index.ts';
import { toldBy, type GivenFile, type NewPlaying, type Playing } from '../../../io/teaching/index.ts';

/** An attempt; playing that cannot be told, with its likeliest readings; other playing, as between attempts. */
export type PlayingKind = 'attempt' | 'cannot-tell' | 'other';

export function kindOf(playing: Playing): PlayingKind {
  if (playing.summary !== null) return 'attempt';
  return readingsOf(playing).length > 0 ? 'cannot-tell' : 'other';
}

/** What it may be where it has no report, likeliest first; nothing where it is other playing. */
export function readingsOf({ summary, recognition }: Playing): readonly ExerciseChoice[] {
  return summary === null ? likelyReadings(recognition) : [];
}

/** The exercise of a report. */
export function choiceOf({ exercise }: Report): ExerciseChoice {
  return choiceIn(exercise);
}

/** The last part of a path. */
export const nameIn = (path: string): string => path.split('/').at(-1) ?? path;

/** What was found in a recording → what is kept of it. */
export function foundIn(file: GivenFile, attempt: SortedAttempt, id: string, addedMs: number): NewPlaying {
  const { startSec, endSec, recognition, report, reason, sound, alone, taught } = attempt;
  return {
    playing: {
      ...NEW,
      id,
      fileId: file.id,
      studentId: file.studentId,
      addedMs,
      whenMs: file.writtenMs === null ? null : momentIn(file.writtenMs, startSec),
      name: nameIn(file.path),
      startSec,
      endSec,
      recognition,
      reason,
      soundBytes: sound.bytes.byteLength,
      ...toldBy(report),
    },
    reports: {
      own: report,
      chosen: null,
      ...(alone !== undefined && { alone }),
      ...(taught !== undefined && { taught }),
    },
    sound,
  };
}

/** A moment in a recording, ms since 1970; where only its day is known, that. */
function momentIn(writtenMs: number, startSec: number): number {
  const isDay = new Date(writtenMs).setHours(0, 0, 0, 0) === writtenMs;
  return isDay ? writtenMs : Math.round(writtenMs + startSec * 1000);
}

/** An attempt that a student sent → what is kept of it. */
export function sentBy(
  studentId: string,
  { id, whenMs, name, report, sound }: SentAttempt,
  addedMs: number,
): NewPlaying {
  return {
    playing: {
      ...NEW,
      id,
      fileId: '',
      studentId,
      addedMs,
      whenMs,
      name,
      startSec: 0,
      endSec: report.audio.durationSec,
      recognition: {
        choice: choiceOf(report),
        confidence: 1,
        octaveShift: report.exercise.octaveShift,
        alternatives: [],
      },
      reason: '',
      soundBytes: sound?.bytes.byteLength ?? 0,
      ...toldBy(report),
    },
    reports: { own: report, chosen: null },
    sound,
  };
}

const NEW = {
  chosen: null,
  heardMs: null,
  answeredMs: null,
  remarks: 0,
  soundBytes: 0,
  deletedMs: null,
} as const;
