import {
  exerciseId,
  exerciseOf as exerciseOfReport,
  exerciseTitle,
  likelyReadings,
  tellKept,
  tellWords,
} from '../../engine/index.ts';
import { plainName } from '../../io/check/index.ts';
import type { Change, Language } from '../../engine/index.ts';
import { MESSAGES, REPORTS, localeOf } from '../language/index.ts';
import { fastestOf } from './fastest.ts';
import type { PileAttempt } from './types.ts';

/** Readings that are told where recognition cannot tell. */
const MOST_READINGS = 3;

/** 754.2 → "12:34" */
export function clock(timeSec: number): string {
  const sec = Math.floor(Math.max(0, timeSec));
  return `${Math.floor(sec / 60)}:${String(sec % 60).padStart(2, '0')}`;
}

/** ms since 1970 → "1 Nov 2026", the day where the command runs. */
export function day(whenMs: number, language: Language): string {
  const { dateLocale } = MESSAGES[language];
  return new Date(whenMs).toLocaleDateString(dateLocale, {
    day: 'numeric',
    month: 'short',
    year: 'numeric',
  });
}

/** When it was recorded, and where in which file it lies. */
export function placeOf({ recording, found }: PileAttempt, language: Language): string {
  const when = recording.whenMs === null ? '' : `${day(recording.whenMs, language)}, `;
  return `${when}${plainName(recording.name)} ${clock(found.startSec)}–${clock(found.endSec)}`;
}

/** The exercise as it was recognised, or that it cannot be told. */
export function exerciseOf({ found }: PileAttempt, language: Language): string {
  const t = MESSAGES[language].desk;
  const told = exerciseIn(found, language);
  return told ?? (readingsOf(found, language).length > 0 ? t.cannotTell : t.otherPlaying);
}

function exerciseIn({ report }: PileAttempt['found'], language: Language): string | null {
  const choice = report === null ? null : exerciseOfReport(report.exercise)?.choice;
  if (!choice) return report?.exercise.title ?? null;
  return exerciseTitle(choice, localeOf(language));
}

/** What it may be, likeliest first; nothing where it was measured, or is other playing. */
export function readingsOf(
  { report, recognition }: PileAttempt['found'],
  language: Language,
): readonly string[] {
  if (report !== null) return [];
  return likelyReadings(recognition)
    .slice(0, MOST_READINGS)
    .map((choice) => exerciseTitle(choice, localeOf(language)));
}

/** The verdict, or why there is none. */
export function verdictOf({ found }: PileAttempt, language: Language = 'en'): string {
  if (found.report !== null) return tellWords(found.report.words, localeOf(language)).verdict;
  const readings = readingsOf(found, language);
  return readings.length > 0
    ? MESSAGES[language].desk.likeliest(readings)
    : tellKept(found.reason, localeOf(language));
}

/** Beats a minute; null where it was not measured. */
export function tempoOf({ found }: PileAttempt): number | null {
  const tempo = found.report?.measures.tempoBpm;
  return tempo !== undefined && 'value' in tempo ? tempo.value : null;
}

/** "C major · scale, …, right hand: about 92 ± 4 beats a minute", of each exercise that came more than once. */
export function fastestWords(attempts: readonly PileAttempt[], language: Language): readonly string[] {
  const t = MESSAGES[language];
  const played = attempts.flatMap(({ found }) =>
    found.report === null ? [] : [exerciseId(found.report.exercise)],
  );
  return fastestOf(attempts)
    .filter(({ exercise }) => played.filter((id) => id === exerciseId(exercise)).length > 1)
    .map(({ exercise, bpm, plusMinus }) => {
      const about = plusMinus === null ? '' : ` ± ${Math.max(1, plusMinus).toFixed(0)}`;
      const tempo = t.beatsAMinute(bpm.toFixed(0) + about);
      const choice = exerciseOfReport(exercise)?.choice;
      const title = choice === undefined ? '' : exerciseTitle(choice, localeOf(language));
      return t.desk.fastest(title, tempo, plusMinus === null);
    });
}

const UNITS: Readonly<Record<Change['kind'], { readonly unit: string; readonly decimals: number }>> = {
  mistakes: { unit: '', decimals: 0 },
  evenness: { unit: ' %', decimals: 1 },
  crossings: { unit: '', decimals: 0 },
  spread: { unit: ' ms', decimals: 0 },
  loudness: { unit: ' dB', decimals: 1 },
  tempo: { unit: '', decimals: 0 },
};

/** "Since 1 Nov 2026: more even, 6.1 % (before 9.0 %)."; '' for the first attempt at an exercise. */
export function changedWords({ since, recording }: PileAttempt, language: Language): string {
  if (since === null) return '';
  const t = MESSAGES[language].desk;
  const { decimalSign } = REPORTS[language];
  const sameTime = since.whenMs === null || since.whenMs === recording.whenMs;
  const when = sameTime ? t.sinceBefore : t.since(day(since.whenMs!, language));
  const told = since.changes.map(({ kind, before, now, better }) => {
    const { unit, decimals } = UNITS[kind];
    const say = (value: number): string => `${value.toFixed(decimals).replace('.', decimalSign)}${unit}`;
    const words = t.changes[kind];
    const what = (better ?? now > before) ? words.better : words.worse;
    return t.change(what, say(now), say(before));
  });
  return `${when}: ${told.length === 0 ? t.asBefore : told.join('; ')}.`;
}
