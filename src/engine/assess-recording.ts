import { assessRecognised, knownCents, knownHands } from './assess.ts';
import type { AssessOptions, Assessment } from './assess.ts';
import { RATE_HZ } from './listen/audio/rate.ts';
import { learnPiano, mergeHands, mergePianos } from './listen/index.ts';
import type { FindingKind, Heard, KeptSound, Passage, PianoProfile } from './listen/index.ts';
import type { Recognition } from './match/index.ts';
import { writeReport } from './report/index.ts';
import type { Report } from './report/index.ts';
import { withSoftHand } from './soft-hand.ts';
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
 * Attempts of both hands are compared with those of one hand alone, and the loudness of each with what the others teach of the piano.
 * `alone`: what other recordings taught of them. `pianoCents`, where the piano's tuning is known, settles which of two keys a
 * semitone apart was played in all of them. Nothing throws: what cannot be recognised says so.
 *
 * @example
 * const { heard, sound: kept } = listenAndKeep(sound);
 * for (const { startSec, assessment } of assessRecording(heard, kept)) console.log(startSec, assessment.kind);
 */
export function assessRecording(
  heard: Heard,
  sound: KeptSound | null,
  options: Partial<AssessOptions> = {},
): readonly FoundAttempt[] {
  // Cut out anew whenever it is asked for: the attempts of two hours all at once would be their whole sound once more.
  const ownOf = ({ startSec, endSec }: Passage) => ({
    own: heardIn(heard, { startSec, endSec }),
    ownSound: sound === null ? null : soundIn(sound, startSec, endSec),
  });
  const passages = sortPassages(heard, { ...options, pianoCents: knownCents(options) }).map((passage) => {
    const { own, ownSound } = ownOf(passage);
    return {
      ...passage,
      recognition: withSoftHand(own, passage.recognition, ownSound, knownHands(options)),
    };
  });
  const together = passages.filter(isTogether);
  const learnHands = sound !== null && (options.learnHands === true || together.length > 0);
  const assessed = (passage: Sorted, more: Partial<AssessOptions>): FoundAttempt => {
    const { startSec, endSec, recognition } = passage;
    const { own, ownSound } = ownOf(passage);
    const findings = own.findings.filter(({ kind }) => OF_THE_RECORDING.includes(kind));
    const recognised = recognition.choice !== null;
    return {
      startSec,
      endSec,
      recognition,
      assessment: assessRecognised(
        recognised ? { ...own, findings } : own,
        recognition,
        { ...options, ...more },
        ownSound,
      ),
    };
  };
  // Hands alone come first, whenever they were played: both together are compared with them.
  const alone = passages
    .filter((passage) => !isTogether(passage))
    .map((one) => assessed(one, { learnHands }));
  const piano = alone.reduce<PianoProfile | null>(
    (known, { assessment }) => pianoAfter(known, assessment),
    options.piano ?? null,
  );
  const hands = mergeHands(options.alone ?? null, piano?.alone ?? null);
  const both = together.map((one) => assessed(one, { piano, alone: hands }));
  const all = [...alone, ...both].sort((a, b) => a.startSec - b.startSec);
  return all.map((one) => ({ ...one, assessment: toldByTheOthers(one, all, options) }));
}

/** The loudness of an attempt is told against what all others of the recording, and never itself, teach of the keys. */
function toldByTheOthers(
  one: FoundAttempt,
  all: readonly FoundAttempt[],
  options: Partial<AssessOptions>,
): Assessment {
  const { assessment } = one;
  if (assessment.kind !== 'report') return assessment;
  const piano = all
    .filter((other) => other !== one)
    .reduce<PianoProfile | null>(
      (known, other) => pianoAfter(known, withoutHands(other.assessment)),
      options.piano ?? null,
    );
  if (piano === null) return assessment;
  const { heard, heardAgain = heard, alignment } = assessment;
  return { ...assessment, report: writeReport(heardAgain, alignment, { ...options, piano }) };
}

/** Only the levels of keys are asked for. */
function withoutHands(assessment: Assessment): Assessment {
  if (assessment.kind !== 'report') return assessment;
  const { handsAlone: _, ...rest } = assessment;
  return rest;
}

type Sorted = ReturnType<typeof sortPassages>[number];

function isTogether({ recognition }: Sorted): boolean {
  return recognition.choice?.hands === 'together';
}

/** What is known of a piano, and an attempt more at it; an attempt that was not understood teaches nothing. */
export function pianoAfter(known: PianoProfile | null, assessment: Assessment): PianoProfile | null {
  if (assessment.kind !== 'report') return known;
  const taught = learnPiano(assessment.heard, assessment.handsAlone);
  return taught === null ? known : mergePianos(known, taught);
}

/** So much of what was asked for must have been struck that a report speaks for the piano's tuning. */
const SETTLES = 0.8;

/**
 * The report of an exercise that somebody said it was → the piano's tuning, since it tells which keys were struck; null where too
 * little of that exercise was played to speak for it.
 */
export function settledTuning({ notes, missed, tuning, chosen }: Report): number | null {
  const right = notes.filter(({ verdict }) => verdict === 'correct').length;
  const asked = right + missed.length + notes.filter(({ verdict }) => verdict === 'wrong').length;
  return chosen === undefined && asked > 0 && right >= SETTLES * asked ? tuning.cents : null;
}

function soundIn(sound: KeptSound, startSec: number, endSec: number): KeptSound {
  const [from, to] = [Math.round(startSec * RATE_HZ), Math.round(endSec * RATE_HZ)];
  return {
    samples: sound.between?.(from, to) ?? sound.samples.subarray(from, to),
    gainAt: (timeSec) => sound.gainAt(timeSec + startSec),
  };
}
