import type { Assessment, Expected, ExerciseChoice, Intention } from '../../../engine/index.ts';
import type { Aim } from '../../attempt/journal.svelte.ts';
import type { Plan } from '../../attempt/plan.svelte.ts';
import { soundLostSec, type Sound } from '../../attempt/sound.ts';
import type { SittingDevices } from './devices.ts';

/** An attempt that has been told. */
export interface FinishedAttempt {
  readonly sound: Sound;
  readonly assessment: Assessment;
  /** its name in the journal */
  readonly id: string;
  /** which attempt of this sitting, from 1 */
  readonly number: number;
}

/** What the screen shows: at rest, a string that grows, an attempt being worked out, or what it came to. */
export type Face = 'waiting' | 'listening' | 'working' | 'told';

/** What the live ear is to expect: where a stretch is set up to be practised, a part is played. */
export function expectedOf({
  recognise,
  practice,
  choice,
}: Pick<Plan, 'recognise' | 'practice' | 'choice'>): Expected {
  if (practice !== null) return 'part';
  return recognise ? 'any' : choice;
}

/** What was meant with an attempt, where it is told again as the same exercise; null: the whole. */
export function meantWith(assessment: Assessment, plan: Plan, choice: ExerciseChoice): Intention | null {
  const meant = assessment.kind === 'report' ? assessment.report.practised?.intention : undefined;
  return plan.intentionFor(choice) === null ? null : (meant ?? null);
}

/** What was told changes what is planned: what was recognised is played from now on, and a ladder is climbed → its next tempo, or null. */
export function planAfter(plan: Plan, assessment: Assessment): number | null {
  if (assessment.kind !== 'report') return null;
  const { report, alignment } = assessment;
  if (plan.recognise) plan.adopt(alignment.exercise.choice);
  const { practice } = report.words;
  if (report.practised?.intention.ladderBpm === undefined || practice === undefined) return null;
  plan.setUp(practice);
  return plan.targetBpm;
}

/** An attempt that is kept in the journal → what it came to, beside what is known of the player and the piano. */
export async function analyseAttempt(
  { journal, analyst, piano, locale }: SittingDevices,
  sound: Sound,
  { choice, targetBpm, intention = null }: Aim,
  id: string,
  asChosen = false,
): Promise<Assessment> {
  const past = await journal.past(choice, id);
  return analyst.analyse(sound, choice, {
    targetBpm,
    ...past,
    soundLostSec: soundLostSec(sound),
    criteria: journal.standards.criteriaFor(choice),
    asChosen,
    intention,
    piano: piano.known,
    learnHands: true,
    ...(locale !== undefined && { locale: locale() }),
  });
}
