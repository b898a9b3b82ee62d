export type * from './types.ts';
export type { ReportOptions } from './options.ts';
export { REPORT } from './types.ts';
export type { Criteria } from './criteria/index.ts';
export { crossingsOf, handsPlayedIn, isHandKnown, lateCrossings } from './hands.ts';
export { DEFAULT_CRITERIA, evenAt, justNoticeableMs, touchOutcome } from './criteria/index.ts';
export { isMeasured } from './measures/estimate.ts';
export { sideOf } from './measures/sure.ts';
export { touchHeard } from './measures/touch.ts';
export { spellWithOctave } from './words/spelling.ts';
export { lineThrough } from './measures/line.ts';
export { tellIntention } from './words/asked.ts';
export { faultCount } from './words/standing.ts';
export { tellWords } from './words/telling/index.ts';
export type { ToldWords } from './words/telling/index.ts';
import { choiceIn, notesABeat, sameIntention, samePassage, stepMs, WHOLE } from '../exercise/index.ts';
import type { Hands, Practising } from '../exercise/index.ts';
import type { Heard } from '../listen/index.ts';
import { handSaid } from '../match/index.ts';
import type { Alignment } from '../match/index.ts';
import { evenAt } from './criteria/index.ts';
import { onlySure } from './criteria/evidence.ts';
import type { Sure } from './criteria/evidence.ts';
import { measure } from './measures/index.ts';
import { isHandKnown } from './hands.ts';
import { reportNotes } from './notes.ts';
import { REPORT_DEFAULTS } from './options.ts';
import type { ReportOptions } from './options.ts';
import type { Report } from './types.ts';
import { sceneFacts, speak } from './words/index.ts';

/** What was heard and how it answers the exercise → every figure and the words. */
export function writeReport(heard: Heard, matched: Alignment, options: Partial<ReportOptions> = {}): Report {
  const { criteria, soundLostSec, pedalHeld } = { ...REPORT_DEFAULTS, ...options };
  const sure = onlySure(heard, matched, criteria, { soundLost: soundLostSec > 0, pedalHeld });
  return writeSure(heard, sure, options);
}

/** The same of what is sure. */
export function writeSure(
  heard: Heard,
  { alignment, perhapsAgainSec }: Sure,
  options: Partial<ReportOptions>,
): Report {
  const {
    targetBpm,
    earlier,
    sitting,
    daysBefore,
    soundLostSec,
    pedalHeld,
    criteria: asked,
    locale,
    piano,
  } = { ...REPORT_DEFAULTS, ...options };
  const soundLost = soundLostSec > 0;
  const { exercise, octaveShift, semitoneShift, betterFit, chosen } = alignment;
  const { key, form, hands, octaves, minorScale } = exercise.choice;
  // Only where nobody said which hand it is a likelihood.
  const handLikelihood = hands === 'together' ? undefined : (alignment.handLikelihood ?? handSaid(hands));
  const facts = sceneFacts(exercise);
  const handKnown = isHandKnown({
    exercise: { hands, ...(handLikelihood !== undefined && { handLikelihood }) },
  });
  const measured = measure(heard, alignment, asked, {
    piano,
    soundLost,
    handKnown,
    pedalHeld,
    perhapsAgainSec,
  });
  const { tempoBpm } = measured.measures;
  const criteria = evenAt(asked, 'value' in tempoBpm ? stepMs(exercise.choice, tempoBpm.value) : null);
  const report: Omit<Report, 'words'> = {
    format: 'evenfall-report',
    version: 1,
    exercise: {
      ...choiceIn(exercise.choice),
      octaveShift,
      ...(handLikelihood !== undefined && { handLikelihood }),
      title: exercise.title,
    },
    audio: {
      durationSec: heard.durationSec,
      sampleRateHz: heard.sampleRateHz,
      findings: heard.findings,
    },
    tuning: {
      a4Hz: heard.tuning.a4Hz * 2 ** (-semitoneShift / 12),
      cents: heard.tuning.cents - 100 * semitoneShift,
      sdCents: heard.tuning.sdCents,
    },
    ...reportNotes(heard, alignment),
    ...(perhapsAgainSec.length > 0 && { perhapsAgainSec }),
    remarks: alignment.remarks,
    ...(betterFit !== undefined && { betterFit: betterFit.choice }),
    ...(chosen !== undefined && { chosen }),
    ...(exercise.practised !== undefined && { practised: exercise.practised }),
    targetBpm,
    measures: {
      ...measured.measures,
      ...('value' in tempoBpm && { evenUpToPercent: criteria.evennessPercent }),
    },
  };
  const sameNotes = earlier.filter(
    (other) =>
      other.exercise.key === key &&
      other.exercise.form === form &&
      other.exercise.octaves === octaves &&
      other.exercise.minorScale === minorScale &&
      notesABeat(other.exercise) === notesABeat(exercise.choice) &&
      samePassage(other.exercise.passage, exercise.choice.passage) &&
      sameWork(other.practised, exercise.practised),
  );
  const by = (who: Hands): readonly Report[] => sameNotes.filter((other) => other.exercise.hands === who);
  const scene = {
    heard,
    alignment,
    exercise,
    facts,
    measured,
    criteria,
    soundLostSec,
    handKnown,
    report,
    earlier: by(hands),
    inSitting: sitting === 0 ? [] : by(hands).filter((one) => earlier.slice(-sitting).includes(one)),
    alone: { left: by('left'), right: by('right') },
    daysBefore: new Map(earlier.map((other, at) => [other, daysBefore[at] ?? 0])),
  };
  return { ...report, words: speak(scene, locale) };
}

/** Both are the whole, or both the same practice of it: nothing else is compared. */
function sameWork(a: Practising | undefined, b: Practising | undefined): boolean {
  const [one, other] = [a, b].map((practised) => practised?.intention ?? WHOLE);
  return sameIntention(one!, other!);
}
