import { untrack } from 'svelte';
import { EXAMPLE, type Bundled, type CurrentAttempt } from './attempt/current-attempt.svelte.ts';
import type { Plan } from './attempt/plan.svelte.ts';
import { exerciseAddress, exerciseAt } from './names/address.ts';
import type { Views } from './views.svelte.ts';

const ATTEMPT = 'attempt/';

interface Play {
  readonly views: Views;
  readonly currentAttempt: CurrentAttempt;
  readonly plan: Plan;
  readonly bundled: Bundled;
}

/** The place of the page for playing as it stands: an attempt, or the exercise. */
export function playPlace({ currentAttempt, plan }: Pick<Play, 'currentAttempt' | 'plan'>): string {
  return currentAttempt.front === null ? exercisePlace(plan) : ATTEMPT + currentAttempt.front;
}

/** The place of an exercise that somebody chose; '' where nobody has. */
export function exercisePlace(plan: Plan): string {
  return plan.isOwn && !plan.recognise ? exerciseAddress(plan.choice) : '';
}

/** At the piano an address names the exercise; another one in the same place is no step for Back. In a component. */
export function keepStandAddress({ views, plan }: Pick<Play, 'views' | 'plan'>): void {
  $effect(() => {
    const choice = views.current === 'stand' ? exerciseAt(views.place) : null;
    if (choice !== null) untrack(() => plan.choose(choice));
  });
  $effect(() => {
    const place = exercisePlace(plan);
    if (views.current === 'stand') untrack(() => views.stay(place));
  });
}

/** Whatever the address says of the page for playing is shown there, and the address says what is shown. In a component. */
export function keepPlayAddress(play: Play): void {
  const { views, currentAttempt } = play;
  $effect(() => {
    const { current, place } = views;
    if (current === 'play') untrack(() => lead(play, place));
  });
  $effect(() => {
    const place = playPlace(play);
    if (views.current !== 'play' || views.place === place) return;
    // From and to an attempt is a step; another exercise in the same place is none, and what led to no attempt is not come back to.
    const isStep = (place + views.place).includes(ATTEMPT) && currentAttempt.trouble === null;
    untrack(() => (isStep ? views.go('play', place) : views.stay(place)));
  });
}

function lead({ currentAttempt, plan, bundled }: Play, place: string): void {
  if (place.startsWith(ATTEMPT)) {
    const id = place.slice(ATTEMPT.length);
    if (id === currentAttempt.front) return;
    if (id === EXAMPLE && currentAttempt.attempt?.id !== EXAMPLE) void currentAttempt.openBundled(bundled);
    else void currentAttempt.show(id);
    return;
  }
  const choice = exerciseAt(place);
  if (choice !== null) plan.choose(choice);
  if (currentAttempt.front !== null && !currentAttempt.busy) currentAttempt.fold();
}
