import { assessAs } from './assess.ts';
import type { Assessment } from './assess.ts';
import { RATE_HZ } from './listen/audio/rate.ts';
import type { FindingKind, Heard, KeptSound } from './listen/index.ts';
import type { Recognition, RecogniseOptions } from './match/index.ts';
import type { ReportOptions } from './report/index.ts';
import { heardIn, sortPassages } from './sorting/index.ts';

/** One attempt (or other playing) in a recording. */
export interface FoundAttempt {
  /** where it is to be cut out of the recording, seconds: a little before its first note to a little after its last */
  readonly startSec: number;
  readonly endSec: number;
  readonly recognition: Recognition;
  /** on a clock of its own that begins at `startSec`; "not-recognised" where recognition cannot tell */
  readonly assessment: Assessment;
}

/** Findings about all that was recorded; the others tell what else sounds in it, such as talk between two attempts. */
const OF_THE_RECORDING: readonly FindingKind[] = [
  'too-quiet',
  'clipping',
  'noise',
  'hum',
  'channels',
  'processing',
];

/**
 * A recording of any length that has been listened to → its attempts and its other playing, each recognised and measured, in order
 * of time. It was listened to once, as a whole; with the `sound` (null: without) each attempt gets its second listening.
 * `pianoCents`, where the piano's tuning is known, settles which of two keys a semitone apart was played in all of them. Nothing
 * throws: what cannot be recognised says so.
 *
 * @example
 * const { heard, sound: kept } = listenAndKeep(sound);
 * for (const { startSec, assessment } of assessRecording(heard, kept)) console.log(startSec, assessment.kind);
 */
export function assessRecording(
  heard: Heard,
  sound: KeptSound | null,
  options: Partial<ReportOptions & RecogniseOptions> = {},
): readonly FoundAttempt[] {
  return sortPassages(heard, options).map(({ startSec, endSec, recognition }) => {
    const own = heardIn(heard, { startSec, endSec });
    const findings = own.findings.filter(({ kind }) => OF_THE_RECORDING.includes(kind));
    const recognised = recognition.choice !== null;
    return {
      startSec,
      endSec,
      recognition,
      assessment: assessAs(
        recognised ? { ...own, findings } : own,
        recognition.choice,
        options,
        sound === null ? null : soundIn(sound, startSec, endSec),
      ),
    };
  });
}

function soundIn(sound: KeptSound, startSec: number, endSec: number): KeptSound {
  const [from, to] = [Math.round(startSec * RATE_HZ), Math.round(endSec * RATE_HZ)];
  return {
    samples: sound.between?.(from, to) ?? sound.samples.subarray(from, to),
    gainAt: (timeSec) => sound.gainAt(timeSec + startSec),
  };
}
