import { byExercise, exerciseId, offers, standingsOf } from '../../engine/index.ts';
import type { Criteria, ExerciseChoice, Goals } from '../../engine/index.ts';
import type { Assigned } from '../../io/review/index.ts';
import type { Playing } from '../../io/teaching/index.ts';
import { offerWords } from '../practice/words.ts';
import { standingWords } from '../practice/standing-words.ts';

/** Something that may be assigned next, and why. */
export interface Suggestion {
  readonly exercise: ExerciseChoice;
  readonly targetBpm: number | null;
  readonly why: string;
}

/** How many are suggested: what fits a week (common practice, no source). */
const MOST = 4;

/**
 * The attempts of a student → what may come next: what is not ready yet, the newest first, and what may be begun now because
 * something else is ready, by the teacher's own levels. Nothing that is assigned already.
 */
export function suggestionsFor(
  playings: readonly Playing[],
  assigned: readonly Assigned[],
  criteria: Criteria,
  goals: Goals,
): readonly Suggestion[] {
  const practised = playings.flatMap(({ whenMs, summary }) =>
    summary === null ? [] : [{ whenMs: whenMs ?? 0, summary }],
  );
  const stand = standingsOf(byExercise(practised), criteria, [], goals);
  const tempoOf = (exercise: ExerciseChoice): number | null => {
    const last = practised.findLast(({ summary }) => exerciseId(summary.exercise) === exerciseId(exercise));
    const bpm = last?.summary.tempoBpm ?? null;
    return bpm === null ? null : Math.round(bpm);
  };
  const weak = [...stand.values()]
    .filter(({ level }) => level === 'not-yet' || level === 'nearly')
    .toSorted((a, b) => (b.lastMs ?? 0) - (a.lastMs ?? 0))
    .map((standing) => {
      const { reason, missing } = standingWords(standing);
      const { exercise } = standing;
      return { exercise, targetBpm: tempoOf(exercise), why: `${reason} ${missing}`.trim() };
    });
  const begun = offers(stand, criteria, goals).map((offer) => ({
    exercise: offer.exercise,
    targetBpm: offer.targetBpm ?? tempoOf(offer.since),
    why: offerWords(offer),
  }));
  const taken = new Set(assigned.map(({ exercise }) => exerciseId(exercise)));
  return [...begun, ...weak].filter(({ exercise }) => !taken.has(exerciseId(exercise))).slice(0, MOST);
}
