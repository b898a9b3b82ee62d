import { buildExercise } from './exercise/index.ts';
import type { ExerciseChoice } from './exercise/index.ts';
import { listenAndKeep } from './listen/index.ts';
import type { AudioInput, FindingKind, HandsAlone, Heard, KeptSound, ListenOptions } from './listen/index.ts';
import { heldOver, matchNotes, recogniseFrom } from './match/index.ts';
import type { Alignment, RecogniseOptions } from './match/index.ts';
import { handsAloneIn, recheck } from './recheck/index.ts';
import type { Recheck } from './recheck/index.ts';
import { writeReport } from './report/index.ts';
import type { Report, ReportOptions } from './report/index.ts';

/** What one recording came to. Each stage's own finding is kept beside the report. */
export type Assessment =
  | {
      readonly kind: 'report';
      /** what the blind ear heard, and in `rechecks` what was listened for again; alignment and report stand on both */
      readonly heard: Heard;
      readonly rechecks: readonly Recheck[];
      /** the notes heard with those found again, on which alignment and report stand; left out where they are those of `heard` */
      readonly heardAgain?: Heard;
      /** `played` counts in the notes heard and those found again */
      readonly alignment: Alignment;
      readonly report: Report;
      /** what the steps of one hand sounded like, for attempts of both that follow; only where it was asked for */
      readonly handsAlone?: HandsAlone;
    }
  | { readonly kind: 'no-playing'; readonly heard: Heard; readonly reason: string }
  | { readonly kind: 'not-recognised'; readonly heard: Heard; readonly reason: string };

/** Fewer notes than this are no playing. */
const LEAST_NOTES = 2;
/** Fewer right notes than this, in a sound that is not a piano's, are chance and no playing. */
const LEAST_RIGHT = 3;

/** What tells best why there is no playing, first; the rest of the findings does not. */
const WHY_NO_PLAYING: readonly FindingKind[] = [
  'silence',
  'too-short',
  'not-a-piano',
  'speech',
  'too-quiet',
  'noise',
  'hum',
  'clipping',
];

/** What an attempt of one hand teaches about attempts of both. */
interface LearningOptions {
  /** to tell what the steps of one hand sounded like (`handsAlone`); it costs a twentieth of the time */
  readonly learnHands: boolean;
}

/** All that may be known besides the sound and the exercise. */
export type AssessOptions = ListenOptions & ReportOptions & RecogniseOptions & LearningOptions;

/**
 * Sound in, report out: the whole path, one line a stage.
 *
 * `audio` holds one Float32Array a channel, all of one length, −1..1. `choice` null: the exercise is recognised from the
 * sound. Poor sound is no error: it is a finding of the report, or the reason why there is none. One minute takes about a
 * second, so on a page call it in a worker.
 *
 * @throws UsageError where `choice` is no exercise, or the sample rate lies outside 4000 to 768 000 Hz.
 * @example
 * const result = assess(sound, { key: 'D major', form: 'scale', hands: 'right', octaves: 2 }, { targetBpm: 80 });
 * if (result.kind === 'report') console.log(result.report.words.verdict);
 */
export function assess(
  audio: AudioInput,
  choice: ExerciseChoice | null,
  options: Partial<AssessOptions> = {},
): Assessment {
  const { heard, sound } = listenAndKeep(audio, options);
  return assessHeard(heard, choice, options, sound);
}

/**
 * The same path for sound that has been listened to already, as a stream or before. Without the `sound` there is no second
 * listening: what blind listening left in doubt stays in doubt.
 */
export function assessHeard(
  heard: Heard,
  choice: ExerciseChoice | null,
  options: Partial<AssessOptions> = {},
  sound: KeptSound | null = null,
): Assessment {
  return assessAs(heard, choice ?? recogniseFrom(heard, options).choice, options, sound);
}

/** The same where recognition has been tried; `choice` null: it cannot tell. */
export function assessAs(
  heard: Heard,
  choice: ExerciseChoice | null,
  options: Partial<AssessOptions>,
  sound: KeptSound | null,
): Assessment {
  if (heard.notes.length < LEAST_NOTES) return { kind: 'no-playing', heard, reason: whyNoPlaying(heard) };
  if (choice === null) return notRecognised(heard);
  const blind = matchNotes(heard, buildExercise(choice));
  if (isChance(heard, blind)) return { kind: 'no-playing', heard, reason: whyNoPlaying(heard) };
  const again =
    sound === null
      ? { heard, alignment: blind, rechecks: [] }
      : recheck(heard, blind, sound, options.piano?.alone ?? null);
  const { heard: heardAgain, rechecks } = again;
  const alignment = heldOver(heardAgain, again.alignment);
  const report = writeReport(heardAgain, alignment, options);
  return {
    kind: 'report',
    heard,
    rechecks,
    ...(sound !== null && { heardAgain }),
    alignment,
    report,
    ...(sound !== null &&
      options.learnHands === true && { handsAlone: handsAloneIn(heardAgain, alignment, sound) }),
  };
}

function whyNoPlaying(heard: Heard): string {
  const found = WHY_NO_PLAYING.map((kind) => heard.findings.find((finding) => finding.kind === kind));
  const why = found.find((finding) => finding !== undefined);
  return why?.detail ?? 'No piano notes were heard in it.';
}

function notRecognised(heard: Heard): Assessment {
  if (soundsLikeNoPiano(heard)) return { kind: 'no-playing', heard, reason: whyNoPlaying(heard) };
  const reason =
    'The notes fit no exercise of the set well enough to say which. Choose the exercise and its key.';
  return { kind: 'not-recognised', heard, reason };
}

/** A few notes that fit, in a sound of which the listener itself says that it is no piano. */
function isChance(heard: Heard, alignment: Alignment): boolean {
  const right = alignment.matched.filter((note) => note.verdict === 'correct').length;
  return right < LEAST_RIGHT && soundsLikeNoPiano(heard);
}

function soundsLikeNoPiano(heard: Heard): boolean {
  return heard.findings.some(({ kind }) => kind === 'not-a-piano' || kind === 'speech' || kind === 'silence');
}
