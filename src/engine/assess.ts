import { buildExercise, isWhole, withKeptFingers } from './exercise/index.ts';
import type { Exercise, ExerciseChoice, Intention } from './exercise/index.ts';
import { matchIntention } from './intention/index.ts';
import { listenAndKeep, pedalHeld } from './listen/index.ts';
import type {
  AudioInput,
  FindingKind,
  HandsAlone,
  Heard,
  KeptSound,
  ListenOptions,
  PlayedNote,
} from './listen/index.ts';
import { handSaid, heldOver, matchNotes, nearestReadings, recogniseFrom } from './match/index.ts';
import type { Alignment, Recognition, RecogniseOptions } from './match/index.ts';
import type { Notice } from './notices/index.ts';
import { handsAloneIn, recheck } from './recheck/index.ts';
import type { Recheck } from './recheck/index.ts';
import { handsPlayedIn, writeReport } from './report/index.ts';
import type { Report, ReportOptions } from './report/index.ts';
import { withSoftHand } from './soft-hand.ts';

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
  | { readonly kind: 'no-playing'; readonly heard: Heard; readonly reason: Notice }
  | {
      readonly kind: 'not-recognised';
      readonly heard: Heard;
      readonly reason: Notice;
      /** what it comes nearest to, three at most, likeliest first */
      readonly nearest: readonly ExerciseChoice[];
    };

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

/** What attempts of one hand teach about attempts of both. */
interface HandsOptions {
  /** to tell what the steps of one hand sounded like (`handsAlone`); it costs two looks more for each note */
  readonly learnHands: boolean;
  /** what hands alone sounded like, in place of what the `piano` knows of them; of another piano or place it is let go */
  readonly alone: HandsAlone | null;
}

/** All that may be known besides the sound and the exercise. */
export type AssessOptions = ListenOptions &
  ReportOptions &
  RecogniseOptions &
  HandsOptions & {
    /** measure the exercise that was chosen, even where it was surely another that was played */
    readonly asChosen: boolean;
    /** what of the exercise chosen was to be practised, and how; null: all of it, once, even */
    readonly intention: Intention | null;
    /** exercises whose fingers the player has chosen, newest first: by them it is measured wherever it is chosen or recognised without any */
    readonly fingerings: readonly ExerciseChoice[];
  };

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
  if (choice !== null) return assessAs(heard, choice, options, sound);
  const handsPlayed = options.handsPlayed ?? handsPlayedIn(options.earlier ?? []);
  const pianoCents = knownCents(options);
  const blind = recogniseFrom(heard, { ...options, handsPlayed, pianoCents });
  return assessRecognised(heard, withSoftHand(heard, blind, sound, knownHands(options)), options, sound);
}

/** The piano's tuning, as far as somebody settled it. */
export function knownCents({ pianoCents, piano }: Partial<AssessOptions>): number | null {
  return pianoCents ?? piano?.settledCents ?? null;
}

/** What hands alone sounded like, as far as it is known. */
export function knownHands({ alone, piano }: Partial<AssessOptions>): HandsAlone | null {
  return alone ?? piano?.alone ?? null;
}

/** The same where recognition has been tried: it may be unable to tell, and which hand played is not known. */
export function assessRecognised(
  heard: Heard,
  recognition: Recognition,
  options: Partial<AssessOptions>,
  sound: KeptSound | null,
): Assessment {
  if (isTooLittle(heard)) return noPlaying(heard);
  if (recognition.choice === null) return notRecognised(heard, recognition);
  const blind = matchNotes(heard, fingeredExercise(recognition.choice, options));
  const { handLikelihood } = recognition;
  return assessBlind(heard, { ...blind, ...(handLikelihood && { handLikelihood }) }, options, sound);
}

/**
 * The same for an exercise that somebody chose. Where it was surely another that was played, that one is measured, since figures of
 * the wrong one say nothing; with `asChosen` the one that was chosen is.
 */
function assessAs(
  heard: Heard,
  choice: ExerciseChoice,
  { asChosen = false, intention = null, ...options }: Partial<AssessOptions>,
  sound: KeptSound | null,
): Assessment {
  if (isTooLittle(heard)) return noPlaying(heard);
  if (intention !== null)
    return assessBlind(
      heard,
      asMeant(heard, withKeptFingers(choice, options.fingerings ?? []), intention),
      options,
      sound,
    );
  const chosen = matchNotes(heard, fingeredExercise(choice, options));
  const { betterFit } = chosen;
  const played =
    betterFit?.sure === true && !asChosen
      ? { ...matchNotes(heard, fingeredExercise(betterFit.choice, options)), chosen: chosen.exercise.choice }
      : chosen;
  return assessBlind(heard, withHandSaid(played, choice), options, sound);
}

/** An exercise under the fingers that the player has chosen for it. */
function fingeredExercise(choice: ExerciseChoice, { fingerings = [] }: Partial<AssessOptions>): Exercise {
  return buildExercise(withKeptFingers(choice, fingerings));
}

/** What was to be practised, and nothing else is looked for. */
function asMeant(heard: Heard, choice: ExerciseChoice, intention: Intention): Alignment {
  return withHandSaid(matchIntention(heard, choice, intention), choice);
}

function withHandSaid(alignment: Alignment, { hands }: ExerciseChoice): Alignment {
  return hands === 'together' ? alignment : { ...alignment, handLikelihood: handSaid(hands) };
}

const isWholeIn = ({ exercise: { practised } }: Alignment): boolean =>
  practised === undefined || isWhole(practised.intention);

/** From the first alignment on. */
function assessBlind(
  heard: Heard,
  blind: Alignment,
  options: Partial<AssessOptions>,
  sound: KeptSound | null,
): Assessment {
  if (isChance(heard, blind)) return noPlaying(heard);
  const again =
    sound === null
      ? { heard, alignment: blind, rechecks: [] }
      : recheck(heard, blind, sound, knownHands(options));
  const { heard: heardAgain, rechecks } = again;
  const alignment = heldOver(heardAgain, again.alignment);
  const report = writeReport(heardAgain, alignment, {
    ...options,
    // What somebody wrote holds keys while others are struck: there a string that rings on says nothing of the pedal.
    ...(sound !== null &&
      alignment.exercise.choice.passage === undefined && {
        pedalHeld: pedalHeld(playedIn(heardAgain, alignment), sound, heard.tuning.cents),
      }),
  });
  return {
    kind: 'report',
    heard,
    rechecks,
    ...(sound !== null && { heardAgain }),
    alignment,
    report,
    ...(sound !== null &&
      options.learnHands === true &&
      isWholeIn(alignment) && {
        handsAlone: handsAloneIn(heardAgain, alignment, sound),
      }),
  };
}

function playedIn({ notes }: Heard, { run }: Alignment): readonly PlayedNote[] {
  return notes.filter(({ timeSec }) => timeSec >= run.startSec && timeSec <= run.endSec);
}

function isTooLittle(heard: Heard): boolean {
  return heard.notes.length < LEAST_NOTES;
}

function noPlaying(heard: Heard): Assessment {
  return { kind: 'no-playing', heard, reason: whyNoPlaying(heard) };
}

function whyNoPlaying(heard: Heard): Notice {
  const found = WHY_NO_PLAYING.map((kind) => heard.findings.find((finding) => finding.kind === kind));
  const why = found.find((finding) => finding !== undefined);
  return why?.notice ?? { notice: 'no-notes' };
}

function notRecognised(heard: Heard, recognition: Recognition): Assessment {
  if (soundsLikeNoPiano(heard)) return noPlaying(heard);
  const nearest = nearestReadings(recognition);
  return { kind: 'not-recognised', heard, reason: { notice: 'not-recognised' }, nearest };
}

/** A few notes that fit, in a sound of which the listener itself says that it is no piano. */
function isChance(heard: Heard, alignment: Alignment): boolean {
  const right = alignment.matched.filter((note) => note.verdict === 'correct').length;
  return right < LEAST_RIGHT && soundsLikeNoPiano(heard);
}

function soundsLikeNoPiano(heard: Heard): boolean {
  return heard.findings.some(({ kind }) => kind === 'not-a-piano' || kind === 'speech' || kind === 'silence');
}
