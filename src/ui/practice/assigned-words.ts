import { isWhole, type AssignedExercise, type Assignment } from '../../engine/index.ts';
import { beatSign } from '../attempt/plan.svelte.ts';
import { shown, withUnit } from '../kit/figures.ts';
import { intentionWords, strings } from '../language/index.ts';
import { otherwiseWords } from '../names/otherwise.ts';
import { standingWords } from './standing-words.ts';

/** What a teacher asks of an exercise: "♩ = 80, three times in a row, evenness 6 % at most". */
export function askedWords({
  exercise,
  targetBpm,
  inARow,
  evennessPercent,
  intention,
}: Omit<AssignedExercise, 'note' | 'sinceMs'>): string {
  const t = strings().fromTeacher.asked;
  const otherwise = otherwiseWords(exercise);
  const parts = [
    ...(otherwise === '' ? [] : [otherwise]),
    ...(intention === undefined || isWhole(intention) ? [] : [intentionWords(exercise, intention)]),
    ...(targetBpm === null ? [] : [`${beatSign(exercise)} = ${shown(targetBpm)}`]),
    ...(inARow === null ? [] : [t.inARow(inARow)]),
    ...(evennessPercent === null
      ? []
      : [t.evenness(withUnit(shown(evennessPercent, evennessPercent % 1 === 0 ? 0 : 1), '%'))]),
  ];
  return parts.length === 0 ? t.asUsual : parts.join(', ');
}

/** How far it is, where it is not met yet. */
export function progressWords({ standing }: Assignment): string {
  const t = strings().fromTeacher;
  if (standing.attempts === 0) return t.notPlayed;
  if (standing.inARow > 0) return t.soFar(standing.inARow, standing.wanted);
  return standingWords(standing).reason;
}
