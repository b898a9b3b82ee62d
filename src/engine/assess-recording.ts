import { assessHeard } from './assess.ts';
import type { Assessment } from './assess.ts';
import { RATE_HZ } from './listen/audio/rate.ts';
import type { Heard, KeptSound } from './listen/index.ts';
import type { Recognition } from './match/index.ts';
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

/** A recording of any length that has been listened to → its attempts at the pauses, each recognised and measured. */
export function assessRecording(
  heard: Heard,
  sound: KeptSound | null,
  options: Partial<ReportOptions> = {},
): readonly FoundAttempt[] {
  return sortPassages(heard).map(({ startSec, endSec, recognition }) => ({
    startSec,
    endSec,
    recognition,
    assessment: assessHeard(
      heardIn(heard, { startSec, endSec }),
      recognition.choice,
      options,
      sound === null ? null : soundIn(sound, startSec, endSec),
    ),
  }));
}

function soundIn(sound: KeptSound, startSec: number, endSec: number): KeptSound {
  return {
    samples: sound.samples.subarray(Math.round(startSec * RATE_HZ), Math.round(endSec * RATE_HZ)),
    gainAt: (timeSec) => sound.gainAt(timeSec + startSec),
  };
}
