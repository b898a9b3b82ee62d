import * as v from 'valibot';
import { SECONDS, TEXT, told, type Shape } from '../base/shapes.ts';
import { SOUND_NOTICE } from '../notices/types.ts';

/** Sound as it was decoded or recorded: one or more channels of equal length, −1..1. */
export interface AudioInput {
  readonly channels: readonly Float32Array[];
  readonly sampleRateHz: number;
}

/** A key heard being struck. */
export interface PlayedNote {
  /** onset, seconds from the start of the recording */
  readonly timeSec: number;
  readonly midi: number;
  /** distance of this string from the piano's own tuning, cents */
  readonly cents: number;
  /** power of the note's own partials over its first 100 ms, dB (0 dB = full-scale sine) */
  readonly levelDb: number;
  /** 0..1 */
  readonly confidence: number;
  /** when the tone was damped, seconds from the start; null where it cannot be heard */
  readonly releaseSec: number | null;
  /** inharmonicity B of its string; absent where its partials could not be read */
  readonly stiffness?: number;
}

/** The piano's own tuning. */
export interface Tuning {
  /** whole-piano offset from A4 = 440 Hz, cents */
  readonly cents: number;
  readonly a4Hz: number;
  /** ± of `cents`, one standard deviation */
  readonly sdCents: number;
  /** keys that stray from the rest by more than 8 cents */
  readonly strays: readonly { readonly midi: number; readonly cents: number }[];
}

export const FINDING = v.object({
  kind: v.picklist([
    'silence',
    'too-short',
    'too-quiet',
    'clipping',
    'noise',
    'hum',
    'speech',
    'not-a-piano',
    'channels',
    'processing',
  ]),
  detail: told('one plain sentence with its figure, and what to change', TEXT),
  notice: v.exactOptional(SOUND_NOTICE),
});
/** Something about the sound that a listener should know; poor audio is a finding, never an error. */
export type AudioFinding = Shape<typeof FINDING>;
/** What may be said of the sound itself; `processing`: the device set the level or took noise away by itself. */
export type FindingKind = AudioFinding['kind'];

export const PASSAGE = v.object({ startSec: SECONDS, endSec: SECONDS });
/** Playing between two pauses, seconds. */
export type Passage = Shape<typeof PASSAGE>;

/** A key that may have been struck, as the blind ear heard it. */
export interface Candidate {
  readonly timeSec: number;
  readonly midi: number;
  /** the ear's first belief in it, before it was judged among its neighbours, 0..1 */
  readonly probability: number;
  /** the ear's reading of its loudness, dB about the middle of what it was trained on */
  readonly loudnessDb: number;
  /** 0..1: the ear's belief that the key sounds a moment later */
  readonly sounding: number;
  /** the note that it is if it was struck; null where it was too improbable for a closer look */
  readonly note: PlayedNote | null;
}

/** All that one listening found. Knows nothing of any exercise. */
export interface Heard {
  /** in order of time */
  readonly notes: readonly PlayedNote[];
  readonly tuning: Tuning;
  readonly findings: readonly AudioFinding[];
  readonly passages: readonly Passage[];
  readonly durationSec: number;
  readonly sampleRateHz: number;
  /** the listener's own timing noise, one standard deviation of an onset, ms */
  readonly onsetSdMs: number;
  /** the same of the level of a note alone, dB; left out: nothing is known of it */
  readonly levelSdDb?: number;
  /** all that may have been struck, notes among it, in order of time: for a second listening that needs no sound */
  readonly candidates?: readonly Candidate[];
}

/** The sound that was listened to, kept for a second, closer listening. */
export interface KeptSound {
  /** one channel at 22 050 Hz; sample k lies at k / 22 050 s */
  readonly samples: Float32Array;
  /** a part of them, from one sample to before another, without bringing all of a long sound together */
  readonly between?: (fromSample: number, toSample: number) => Float32Array;
  /** what the samples around a moment are multiplied by, so that the playing has an active RMS of 0.1 */
  readonly gainAt: (timeSec: number) => number;
}
