import { WHOLE } from '../../engine/index.ts';
import type { Plan } from '../attempt/plan.svelte.ts';
import { intentionWords, strings } from '../language/index.ts';

type Asked = Pick<Plan, 'practice' | 'stretch' | 'intention' | 'targetBpm' | 'choice' | 'beatSign'>;

/** How the next attempt is asked to be: "Only A♭–C–E♭–A♭, long–short, twice in a row, ♩ = 60", "As written". */
export function askedOf({ practice, stretch, intention, targetBpm, choice, beatSign }: Asked): string {
  const part = stretch === null ? {} : { stretch: { fromStep: stretch.fromStep, toStep: stretch.toStep } };
  const how = intentionWords(choice, intention ?? { ...WHOLE, ...part });
  const tempo = practice === null || targetBpm === null ? [] : [`${beatSign} = ${targetBpm.toFixed(0)}`];
  const words = [how === '' ? strings().prepare.asWritten : how, ...tempo].join(', ');
  return words.charAt(0).toUpperCase() + words.slice(1);
}
