import { exerciseOf } from '../exercise/index.ts';
import type { Exercise, ExpectedNote, Locale } from '../exercise/index.ts';
import type { Heard } from '../listen/index.ts';
import type { Alignment, MatchedNote } from '../match/index.ts';
import { onlySure } from './criteria/evidence.ts';
import { DEFAULT_CRITERIA } from './criteria/index.ts';
import { writeSure } from './index.ts';
import type { Report } from './types.ts';
import { tellWords } from './words/index.ts';
import type { ToldWords } from './words/index.ts';

/**
 * A report → its words in a language. One of version 0.1 holds sentences of the language that it was made in, some of which accused
 * without evidence: it is told anew, by the rules of today, from the notes that it holds. Which hand played it does not say for sure.
 */
export function tellReport(report: Report, locale: Locale): ToldWords {
  if (report.words.said !== undefined) return tellWords(report.words, locale);
  const exercise = exerciseOf(report.exercise);
  const alignment = exercise === null ? null : alignmentIn(report, exercise);
  if (alignment === null) return tellWords(report.words, locale);
  const { targetBpm, perhapsAgainSec = [] } = report;
  const heard = heardIn(report);
  const sure = onlySure(heard, alignment, DEFAULT_CRITERIA, {});
  const all = { ...sure, perhapsAgainSec: [...sure.perhapsAgainSec, ...perhapsAgainSec] };
  return tellWords(writeSure(heard, all, { targetBpm }).words, locale);
}

/** The ear of version 0.1 placed an onset alone within so much, ms, one standard deviation. */
const ONSET_SD_MS = 2;

function heardIn({ notes, audio, tuning }: Report): Heard {
  const { durationSec, sampleRateHz, findings } = audio;
  return {
    notes: notes.map(({ timeSec, releaseSec, midi, levelDb, confidence }) => ({
      timeSec,
      releaseSec,
      midi,
      levelDb,
      confidence,
      cents: 0,
    })),
    tuning: { ...tuning, strays: [] },
    findings,
    passages: [{ startSec: 0, endSec: durationSec }],
    durationSec,
    sampleRateHz,
    onsetSdMs: ONSET_SD_MS,
  };
}

/** What answers every written note; null where the report leaves one out. */
function alignmentIn(report: Report, exercise: Exercise): Alignment | null {
  const { octaveShift, hands } = report.exercise;
  const matched = exercise.steps.flatMap(({ step, notes }) =>
    notes.map((note) => matchedIn(report, step, note)),
  );
  if (matched.includes(null)) return null;
  return {
    exercise,
    octaveShift,
    semitoneShift: 0,
    matched: matched as MatchedNote[],
    extras: report.notes.flatMap((note, played) =>
      note.verdict === 'extra' ? [{ played, kind: note.extraKind, step: note.step ?? 0 }] : [],
    ),
    remarks: report.remarks,
    run: { startSec: 0, endSec: report.audio.durationSec },
    fit: 1,
    ...(report.betterFit !== undefined && {
      betterFit: { choice: report.betterFit, fit: 1, sure: false },
    }),
    ...(hands !== 'together' && { handLikelihood: { left: 0.5, right: 0.5 } }),
  };
}

function matchedIn(report: Report, step: number, note: ExpectedNote): MatchedNote | null {
  // Whatever octave the hand lies in: no hand has the same note twice in a chord.
  const isIt = (one: { readonly step: number | null; readonly hand: string | null }, midi: number): boolean =>
    one.step === step && one.hand === note.hand && (midi - note.midi) % 12 === 0;
  // Its name keeps the octave that is written: sentences name none.
  const moved = (midi: number): ExpectedNote => ({ ...note, midi });
  const played = report.notes.findIndex(
    (one) => one.verdict !== 'extra' && isIt(one, one.wantedMidi ?? one.midi),
  );
  const answer = report.notes[played];
  if (answer !== undefined && answer.verdict !== 'extra')
    return { step, expected: moved(answer.wantedMidi ?? answer.midi), verdict: answer.verdict, played };
  const missed = report.missed.find((one) => isIt(one, one.midi));
  if (missed !== undefined) return { step, expected: moved(missed.midi), verdict: 'missed' };
  const unsure = report.unsure.find((one) => isIt(one, one.midi));
  if (unsure === undefined) return null;
  const expected = moved(unsure.midi);
  const reason = unsure.notice ?? ({ notice: 'too-faint', name: expected.name } as const);
  return { step, expected, verdict: 'unsure', reason, ...(unsure.heldOver && { heldOver: true }) };
}
