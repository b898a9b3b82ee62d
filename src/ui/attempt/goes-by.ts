import { handsPlayedIn } from '../../engine/index.ts';
import type { AssessOptions, ExerciseChoice, Intention, Report } from '../../engine/index.ts';
import type { Devices } from './devices.ts';
import type { Aim, Journal } from './journal.svelte.ts';
import type { Plan } from './plan.svelte.ts';
import type { Reported } from './phases.ts';
import { soundLostSec, type Sound } from './sound.ts';

/** The attempt that is part of the page, by its name in the address. */
export const EXAMPLE = 'example';

/**
 * Where each hand of who plays here is known to have played, for a file that is to be recognised: in the journal, and in what was opened
 * and set right since (`here`). It settles nothing, but makes one hand the likelier.
 */
export async function habit(
  journal: Pick<Journal, 'earlier' | 'shown'>,
  choice: ExerciseChoice | null,
  here: readonly Reported[],
): Promise<Partial<AssessOptions>> {
  if (choice !== null) return {};
  const kept = await journal.earlier(null);
  const names = new Set([EXAMPLE, ...journal.shown.map(({ id }) => id)]);
  const opened = here.filter(({ id }) => !names.has(id)).map(({ report }) => report);
  return { handsPlayed: handsPlayedIn([...kept, ...opened]) };
}

/** An attempt, what it was to be and its name in the journal (null: it does not lie there) → what its analysis goes by. */
export async function goesBy(
  journal: Pick<Journal, 'past' | 'standards'>,
  sound: Sound,
  { choice, targetBpm, intention = null }: Aim,
  kept: string | null,
  { locale, own }: Pick<Devices, 'locale' | 'own'>,
): Promise<Partial<AssessOptions>> {
  return {
    targetBpm,
    ...(kept === null ? {} : await journal.past(choice, kept)),
    soundLostSec: soundLostSec(sound),
    criteria: journal.standards.criteriaFor(choice),
    intention,
    learnHands: true,
    ...(locale !== undefined && { locale: locale() }),
    ...(choice === null && own !== undefined && { own: own() }),
  };
}

/** What was meant with an attempt that is told again as an exercise: it stays meant, whatever is planned since. Null: the whole. */
export function meantWith(
  told: { readonly kind: string; readonly report?: Report },
  plan: Plan,
  choice: ExerciseChoice | null,
): Intention | null {
  return plan.intentionFor(choice) === null ? null : (told.report?.practised?.intention ?? null);
}
