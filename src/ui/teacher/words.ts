import { buildExercise, type ExerciseChoice } from '../../engine/index.ts';
import type { RemarkPlace } from '../../io/review/index.ts';
import type { GivenFile, Playing, Student } from '../../io/teaching/index.ts';
import { kindOf, readingsOf } from './state/playings.ts';
import { clock } from '../kit/figures.ts';
import { notice, speaking, strings, troubleWords } from '../language/index.ts';
import type { Spot } from '../plots/pearls/spots.ts';
import type { Stretch } from '../plots/pearls/stretches.ts';
import { exerciseWords, whenWords } from '../practice/words.ts';

/** What a student is called. */
export function studentWords({ name }: Student): string {
  return name === '' ? strings().teacher.noName : name;
}

/** What playing is called: its exercise, that it cannot be told, or that it is none. */
export function playingWords(playing: Playing): string {
  if (playing.summary !== null) return exerciseWords(playing.summary.exercise);
  return kindOf(playing) === 'other' ? strings().teacher.otherPlaying : strings().teacher.cannotTell;
}

/** Why it has no report; '' where it has one. */
export function whyUntold(playing: Playing): string {
  const [first, second] = readingsOf(playing);
  if (first !== undefined && second !== undefined && isNeighbour(first, second))
    return strings().teacher.betweenKeys;
  return notice(playing.reason);
}

/** Why a file gave nothing; '' where it did. What version 0.1 kept is a sentence in English. */
export function failureWords({ reason }: GivenFile): string {
  if (typeof reason !== 'string') return troubleWords(reason);
  return reason === '' || speaking.language === 'en' ? reason : strings().teacher.failedBefore;
}

/** The same exercise a semitone higher or lower. */
function isNeighbour(one: ExerciseChoice, other: ExerciseChoice): boolean {
  if (one.form !== other.form || one.hands !== other.hands || one.octaves !== other.octaves) return false;
  if (one.minorScale !== other.minorScale || one.form === 'passage') return false;
  const [a, b] = [one, other].map((choice) => buildExercise(choice).steps[0]?.notes[0]?.midi ?? 0);
  return [1, 11].includes(Math.abs(a! - b!) % 12);
}

/** Where it comes from: "today 17:40, d-major.m4a, from 1:12" */
export function whereWords({ whenMs, name, startSec }: Playing, nowMs: number): string {
  const t = strings().teacher;
  return [
    ...(whenMs === null ? [] : [whenWords(whenMs, nowMs)]),
    name,
    ...(startSec < 1 ? [] : [t.from(clock(startSec))]),
  ].join(', ');
}

/** How far the teacher is with it. */
export function stateWords({ heardMs, answeredMs, remarks }: Playing): string {
  const t = strings().teacher.state;
  if (answeredMs !== null) return t.answered;
  return [heardMs === null ? t.toHear : t.heard, ...(remarks === 0 ? [] : [t.remarks(remarks)])].join(', ');
}

/** What was touched → the place that a remark about it has; of a chord its lowest note that went otherwise, else its lowest. */
export function placeOfSpot(spot: Spot): RemarkPlace {
  const pearl = spot.pearls.find(({ kind }) => kind !== 'struck') ?? spot.pearls[0]!;
  const silent = pearl.kind === 'missed' || pearl.kind === 'unsure';
  return {
    kind: 'note',
    step: pearl.kind === 'extra' ? null : pearl.step,
    midi: pearl.midi,
    timeSec: silent ? null : pearl.timeSec,
  };
}

export function placeOfStretch({ fromStep, toStep }: Stretch): RemarkPlace {
  return { kind: 'stretch', fromStep, toStep };
}
