import { summarise } from '../../engine/index.ts';
import type { ExerciseChoice, Report } from '../../engine/index.ts';
import type { SortedAttempt } from '../../io/sorting/index.ts';
import type { SentAttempt } from '../../io/review/index.ts';
import type { GivenFile, NewPlaying, Playing } from '../../io/teaching/index.ts';

/** An attempt; playing that cannot be told, with its likeliest readings; other playing, as between attempts. */
export type PlayingKind = 'attempt' | 'cannot-tell' | 'other';

/** Readings less likely than this are not offered: it is other playing (the same bound by which the engine takes it for such). */
const LEAST_LIKELY = 0.3;

export function kindOf({ summary, recognition: { alternatives, confidence } }: Playing): PlayingKind {
  if (summary !== null) return 'attempt';
  const [likeliest] = alternatives;
  return likeliest !== undefined && likeliest.fit > 0 && confidence >= LEAST_LIKELY ? 'cannot-tell' : 'other';
}

/** What of a report is kept with the list. */
export function toldBy(report: Report | null): Pick<Playing, 'summary' | 'evennessPlusMinus' | 'verdict'> {
  if (report === null) return { summary: null, evennessPlusMinus: null, verdict: '' };
  const { evennessPercent } = report.measures;
  return {
    summary: summarise(report),
    evennessPlusMinus: 'value' in evennessPercent ? (evennessPercent.plusMinus ?? null) : null,
    verdict: report.words.verdict,
  };
}

/** The exercise of a report. */
export function choiceOf({ exercise }: Report): ExerciseChoice {
  const { key, form, hands, octaves, minorScale } = exercise;
  return { key, form, hands, octaves, ...(minorScale !== undefined && { minorScale }) };
}

/** The last part of a path. */
export const nameIn = (path: string): string => path.split('/').at(-1) ?? path;

/** What was found in a recording → what is kept of it. */
export function foundIn(file: GivenFile, attempt: SortedAttempt, id: string): NewPlaying {
  const { startSec, endSec, recognition, report, reason, sound } = attempt;
  return {
    playing: {
      ...NEW,
      id,
      fileId: file.id,
      studentId: file.studentId,
      whenMs: file.writtenMs === null ? null : Math.round(file.writtenMs + startSec * 1000),
      name: nameIn(file.path),
      startSec,
      endSec,
      recognition,
      reason,
      soundBytes: sound.bytes.byteLength,
      ...toldBy(report),
    },
    reports: { own: report, chosen: null },
    sound,
  };
}

/** An attempt that a student sent → what is kept of it. */
export function sentBy(studentId: string, { id, whenMs, name, report, sound }: SentAttempt): NewPlaying {
  return {
    playing: {
      ...NEW,
      id,
      fileId: '',
      studentId,
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
