import { buildExercise, likelyReadings, tellWords } from '../../engine/index.ts';
import type { Change, Language } from '../../engine/index.ts';
import { localeOf } from '../language/index.ts';
import type { PileAttempt } from './types.ts';

/** Readings that are told where recognition cannot tell. */
const MOST_READINGS = 3;

/** 754.2 → "12:34" */
export function clock(timeSec: number): string {
  const sec = Math.floor(Math.max(0, timeSec));
  return `${Math.floor(sec / 60)}:${String(sec % 60).padStart(2, '0')}`;
}

/** ms since 1970 → "1 Nov 2026", the day where the command runs. */
export function day(whenMs: number): string {
  return new Date(whenMs).toLocaleDateString('en-GB', { day: 'numeric', month: 'short', year: 'numeric' });
}

/** When it was recorded, and where in which file it lies. */
export function placeOf({ recording, found }: PileAttempt): string {
  const when = recording.whenMs === null ? '' : `${day(recording.whenMs)}, `;
  return `${when}${recording.name} ${clock(found.startSec)}–${clock(found.endSec)}`;
}

/** The exercise as it was recognised, or that it cannot be told. */
export function exerciseOf({ found }: PileAttempt): string {
  if (found.report !== null) return found.report.exercise.title;
  return readingsOf(found).length > 0 ? 'cannot tell which exercise' : 'other playing';
}

/** What it may be, likeliest first; nothing where it was measured, or is other playing. */
export function readingsOf({ report, recognition }: PileAttempt['found']): readonly string[] {
  if (report !== null) return [];
  return likelyReadings(recognition)
    .slice(0, MOST_READINGS)
    .map((choice) => buildExercise(choice).title);
}

/** The verdict, or why there is none. */
export function verdictOf({ found }: PileAttempt, language: Language = 'en'): string {
  if (found.report !== null) return tellWords(found.report.words, localeOf(language)).verdict;
  const readings = readingsOf(found);
  return readings.length > 0 ? `Likeliest: ${readings.join('; or ')}.` : found.reason;
}

/** Beats a minute; null where it was not measured. */
export function tempoOf({ found }: PileAttempt): number | null {
  const tempo = found.report?.measures.tempoBpm;
  return tempo !== undefined && 'value' in tempo ? tempo.value : null;
}

interface ChangeWords {
  readonly better: string;
  readonly worse: string;
  readonly unit: string;
  readonly decimals: number;
}

const CHANGES: Readonly<Record<Change['kind'], ChangeWords>> = {
  mistakes: { better: 'fewer mistakes', worse: 'more mistakes', unit: '', decimals: 0 },
  evenness: { better: 'more even', worse: 'less even', unit: ' %', decimals: 1 },
  crossings: { better: 'fewer late crossings', worse: 'more late crossings', unit: '', decimals: 0 },
  spread: { better: 'chords more as one', worse: 'chords more spread', unit: ' ms', decimals: 0 },
  loudness: { better: 'loudness more even', worse: 'loudness less even', unit: ' dB', decimals: 1 },
  tempo: { better: 'faster', worse: 'slower', unit: '', decimals: 0 },
};

/** "Since 1 Nov 2026: more even, 6.1 % (before 9.0 %)."; '' for the first attempt at an exercise. */
export function changedWords({ since, recording }: PileAttempt): string {
  if (since === null) return '';
  const sameTime = since.whenMs === null || since.whenMs === recording.whenMs;
  const when = sameTime ? 'Since the attempt before' : `Since ${day(since.whenMs)}`;
  const told = since.changes.map(({ kind, before, now, better }) => {
    const { unit, decimals, ...words } = CHANGES[kind];
    const say = (value: number): string => `${value.toFixed(decimals)}${unit}`;
    const what = (better ?? now > before) ? words.better : words.worse;
    return `${what}, ${say(now)} (before ${say(before)})`;
  });
  return `${when}: ${told.length === 0 ? 'as before' : told.join('; ')}.`;
}

/** Somebody whom neither folder nor file name tells. */
export const NO_NAME = 'no name';
