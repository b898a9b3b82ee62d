import type { Assessment, Expected } from '../../../engine/index.ts';
import { goesBy } from '../../attempt/goes-by.ts';
import type { Aim } from '../../attempt/journal.svelte.ts';
import type { Plan } from '../../attempt/plan.svelte.ts';
import type { Sound } from '../../attempt/sound.ts';
import type { SittingDevices } from './devices.ts';

export { meantWith } from '../../attempt/goes-by.ts';

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
  devices: SittingDevices,
  sound: Sound,
  aim: Aim,
  id: string,
  asChosen = false,
): Promise<Assessment> {
  const { journal, analyst, piano, fingerings } = devices;
  const options = await goesBy(journal, sound, aim, id, devices);
  return analyst.analyse(sound, aim.choice, {
    ...options,
    asChosen,
    fingerings: fingerings.kept,
    piano: piano.known,
  });
}

/** The tempo of an attempt, beats a minute; null where it has none. */
export function tempoIn(assessment: Assessment): number | null {
  if (assessment.kind !== 'report') return null;
  const { tempoBpm } = assessment.report.measures;
  return 'value' in tempoBpm ? Math.round(tempoBpm.value) : null;
}
